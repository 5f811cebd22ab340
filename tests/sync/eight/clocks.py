"""No clock decides: the same history by phones whose clocks are ten years off either way gives the same state."""

from __future__ import annotations

import json
from pathlib import Path
from random import Random
from typing import Any

from tests.home import Home
from tests.sync.eight import Outcome
from tests.sync.eight.healing import records
from tests.sync.model_phone import ModelPhone
from tests.sync.simulation.truth import Truth

CLOCKS = ((2026, 2026, 2026), (2016, 2036, 2026), (2036, 2016, 2026), (2036, 2026, 2016))
"""The years three phones believe to be in, one history after the other."""

JOBS = 4
"""Few, so that phones that have not seen each other meet in the same field."""


def history(home: Home, clocks: tuple[int, ...], chance: Random, steps: int) -> tuple[dict[str, Any], Outcome]:
    """Phones make, edit and delete jobs and settle conflicts, in sync or not; what the server has in the end."""
    phones = [ModelPhone(home.pair(), clock=clock) for clock in clocks]
    for number in range(steps):
        phone = chance.choice(phones)
        jobs = phone.fold().records
        what = chance.choice(("new", *["edit"] * 6, "delete", "sync", "sync")) if jobs else "new"
        if what == "new" and len(jobs) >= JOBS:
            what = "edit"
        value = str(chance.randrange(99))
        field = chance.choice(("hours", "money", "note"))
        job = chance.choice(sorted(jobs)) if jobs else ""
        if what == "sync":
            phone.sync(home)
        elif what == "new":
            phone.save("job", f"j{number}", {"name": f"Job {number}", "hours": value})
        else:
            phone.save("job", job, {"deleted": True} if what == "delete" else {field: value})
    for phone in (*phones, *phones):
        phone.sync(home)
    truth = Truth()
    for phone in phones:
        truth.save(phone.held)
    for text in truth.saved:
        truth.accept(text)
    truth.heard.update(truth.accepted)
    figures = records(home)
    here = {row["text"] for row in phones[0].rows}
    lost = [text for text in truth.saved if text not in here]
    home.close()
    return figures, Outcome(lost=lost, missing=truth.missing(figures))


def run(folder: Path, seed: int, times: int, steps: int = 40) -> Outcome:
    """So many histories, each by all clocks."""
    found = Outcome()
    for number in range(times):
        states = set()
        for clocks in CLOCKS:
            home = Home(folder / f"{number}-{'-'.join(map(str, clocks))}")
            state, outcome = history(home, clocks, Random(f"{seed} {number}"), steps)
            states.add(json.dumps(state, sort_keys=True))
            found.add(outcome)
            found.did["open conflicts"] += sum("conflicts" in record for record in state.values())
        found.did.update({"histories": 1, f"steps by {len(CLOCKS)} sets of clocks": steps})
        assert len(states) == 1, f"history {number}: the clocks decide"
    return found
