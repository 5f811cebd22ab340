"""Shows where the Python core answers otherwise than the vectors say; with `--renew` writes its answers into them.

    python -m tests.vectors [--renew] [ROOM or FILE ...]

What a person worked out is never overwritten: either the core is wrong there, or the person. Ends with 1 where that is
so, or where something would change. A new case needs no outcome, or the paths of its `leaves` with anything behind.
"""

import argparse
import json
import sys
from math import ceil, log10
from pathlib import Path
from typing import Any

from tests.vectors import FILES, OUTCOME, Claim, Difference, changes, claims, is_number, load, outcome, unlike
from tests.vectors.written import written


def main(words: list[str]) -> int:
    reader = argparse.ArgumentParser(prog="python -m tests.vectors", description=str(__doc__).partition("\n")[0])
    reader.add_argument("--renew", action="store_true", help="write what the core answers")
    reader.add_argument("names", nargs="*", metavar="ROOM or FILE", help="standing, or standing.fusion; all if none")
    asked = reader.parse_args(words)
    names = {Path(name).name.removesuffix(".json") for name in asked.names}
    chosen = [path for path in FILES if not names or names & {path.stem, path.stem.split(".")[0]}]
    if not chosen:
        reader.error("no such room or file")
    return max([renew(path, claims(), asked.renew) for path in chosen])


def renew(path: Path, runs: dict[str, Claim], write: bool) -> int:
    """Prints what differs in a file, and writes it if asked to; 1 if something that differs stays as it is."""
    vector = json.loads(path.read_text(encoding="utf-8"))
    stays = 0
    for case, whole in zip(vector["cases"], load(path)["cases"], strict=True):
        new = outcome(runs[vector["function"]], whole)
        different = changes(whole, new)
        kept = not write or "by_hand" in whole
        if different:
            print(f"{path.stem}: {case['name']}", *(line(each) for each in different), sep="\n  ")
            stays |= kept
        if different and "by_hand" in whole:
            print(f"  Refused: worked by hand ({whole['by_hand']}).")
        if different and not kept:
            kept_of = {name: case.pop(name) for name in OUTCOME if name in case}
            case |= _settled(new, kept_of, whole.get("close", 0.0))
    text = written(vector) + "\n"
    if write and text != path.read_text(encoding="utf-8"):
        path.write_text(text, encoding="utf-8")
    return int(stays)


def line(difference: Difference) -> str:
    """Where, old and new, and by what part of it a number moved."""
    place, new, old = difference
    told = f"{place}: {_short(old)} → {_short(new)}"
    if not (is_number(new) and is_number(old)):
        return told
    return f"{told}, {abs(new - old) / max(abs(new), abs(old)):.1g} of it"


def _short(value: Any) -> str:
    text = json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 160 else f"{text[:160]}…"


def _settled(new: Any, old: Any, close: float) -> Any:
    """What is new, and what is kept wherever the two are alike; a new number with two digits more than are compared."""
    if not any(unlike(new, old, close)):
        return old
    if isinstance(new, dict):
        named = old if isinstance(old, dict) else {}
        return {name: _settled(part, named.get(name), close) for name, part in new.items()}
    if isinstance(new, list | tuple):
        listed = old if isinstance(old, list) and len(old) == len(new) else [None] * len(new)
        return [_settled(item, listed[at], close) for at, item in enumerate(new)]
    return float(f"{new:.{ceil(-log10(close)) + 2}g}") if close and isinstance(new, float) else new


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
