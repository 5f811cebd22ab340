"""Arrows run one way: a screen takes nothing from inside another; what screens share lies in parts/."""

import re
from pathlib import Path

from tests.house.tree import ROOT, tracked

PHONE = ROOT / "webapp" / "src"
IMPORTED = re.compile(r"""(?:from|import)\s*\(?\s*["'](\.[^"']+)["']""")


def phone_arrows() -> list[tuple[Path, Path]]:
    """Every import of the phone's code, type-only and late ones included: who imports, and what."""
    files = [path.relative_to("webapp/src") for path in tracked() if path.is_relative_to("webapp/src")]
    return [
        (file, Path((PHONE / file.parent / name).resolve()).relative_to(PHONE))
        for file in files
        if file.suffix in (".ts", ".tsx")
        for name in IMPORTED.findall((PHONE / file).read_text(encoding="utf-8"))
    ]


def screen_of(path: Path) -> str | None:
    """The screen whose folder a file lies in; None outside of every screen."""
    return path.parts[1] if path.parts[0] == "screens" and len(path.parts) > 2 else None


def test_a_screen_takes_nothing_from_inside_another():
    arrows = [(one, other) for one, other in phone_arrows() if screen_of(one) and other.parts[0] == "screens"]
    assert arrows  # a screen's own files
    assert [f"{one} -> {other}" for one, other in arrows if screen_of(other) != screen_of(one)] == []
