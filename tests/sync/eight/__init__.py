"""Eight tests that would convince a sceptic that nothing saved is lost and nothing accepted is forgotten.

Each module has `run`, a function of a folder, a seed and its sizes: `python -m tests.sync` asks for the stated
ones, `tests/sync/test_eight.py` for small ones. `lost` are texts that a phone has called saved, or a server accepted,
and that are nowhere; `missing` are accepted edits that the figures do not show. What else is wrong raises.

    histories  random histories of the real phones and the real server (`tests/sync/simulation`)
    numbering  8 writers and readers that follow; the same with an identity column must fail
    healing    a backup brought back, told or untold, past the old head
    kills      the server killed at any step, over SQLite and PostgreSQL, and a real Chromium killed while it saves
    tabs       two tabs, a new version and a blocked upgrade in the middle of saving, a copied profile
    hostile    a proxy that breaks every exchange, and a disk that is really full
    old_phone  an app two versions old with poison in its queue, then taken off the list; its export
    clocks     ten years off either way
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field


@dataclass
class Outcome:
    """What one test did, counted, and what it found."""

    did: Counter[str] = field(default_factory=Counter)
    lost: list[str] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)

    def add(self, other: Outcome) -> None:
        self.did.update(other.did)
        self.lost += other.lost
        self.missing += other.missing

    def __str__(self) -> str:
        did = ", ".join(f"{count:,} {what}" for what, count in self.did.items())
        return f"{did}; {len(self.lost)} lost, {len(self.missing)} missing from the figures"
