"""`python -m tests.mutants`: how many slips of a hand in the core the tests find, by room and language.

Slips are drawn by seed from all there are. One is found by the tests when a vector or a test of its language fails, and
by the comparison when only the two languages' answers to the same questions tell it. `equivalent.tsv` names those that
nobody could find, with the reason. It is no part of `python -m tests`: it takes about twenty minutes.
"""

import argparse
import sys
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from tests.mutants import python_slips
from tests.mutants.run import find, typescript_slips
from tests.mutants.slip import CORES, SUFFIX, Slip, equivalent, sample

OUTCOMES = ("tests", "comparison", "survived", "equivalent")


def slips(languages: list[str]) -> Iterator[Slip]:
    """Every slip of the languages, file by file."""
    for language in languages:
        files = sorted(
            str(path) for path in CORES[language].rglob(f"*{SUFFIX[language]}") if "generated" not in path.parts
        )
        yield from python_slips.slips(files) if language == "python" else typescript_slips(files)


def table(tried: list[Slip]) -> Iterator[str]:
    """A line for each room, and one for each language."""
    yield f"{'':<11} {'room':<10} {'tried':>6}" + "".join(f"{name:>11}" for name in OUTCOMES) + f"{'found':>8}"
    known = equivalent()
    for language in sorted({slip.language for slip in tried}):
        mine = [slip for slip in tried if slip.language == language]
        for room in [*sorted({slip.room for slip in mine}), "all"]:
            told = Counter(outcome(slip, known) for slip in mine if room in ("all", slip.room))
            found, all_ = told["tests"] + told["comparison"], told.total()
            share = found / max(all_ - told["equivalent"], 1)
            counts = "".join(f"{told[name]:>11}" for name in OUTCOMES)
            yield f"{language:<11} {room:<10} {all_:>6}{counts}{share:>8.1%}"


def outcome(slip: Slip, known: dict[tuple[str, str, str], str]) -> str:
    return slip.by or ("equivalent" if slip.name in known else "survived")


def main() -> int:
    """Draw, run, and print; 1 when the table of the equivalent names one that a test finds."""
    parser = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--each", type=int, default=30, metavar="N", help="slips drawn of a room, at the most")
    parser.add_argument("--room", action="append", help="only this room of core/; may be given again")
    parser.add_argument("--language", choices=list(CORES), action="append")
    parser.add_argument("--tests", action="append", type=Path, help="only this file of tests; may be given again")
    parser.add_argument("--list", choices=OUTCOMES, action="append", default=[], help="print these too")
    asked = parser.parse_args()
    started, known = time.monotonic(), equivalent()
    every = [slip for slip in slips(asked.language or list(CORES)) if not asked.room or slip.room in asked.room]
    tried: list[Slip] = []
    for slip in find(sample(every, asked.each, asked.seed), asked.tests):
        tried.append(slip)
        if outcome(slip, known) in (asked.list or ["survived"]):
            print(f"{outcome(slip, known)} {slip.sentence}\n    {slip.test}", flush=True)
    print(*table(tried), sep="\n")
    print(f"seed {asked.seed}, {len(tried)} of {len(every)} slips, {(time.monotonic() - started) / 60:.1f} minutes")
    wrong = [slip for slip in tried if slip.by and slip.name in known]
    print(*(f"named equivalent, but found by {slip.test}: {slip.sentence}" for slip in wrong), sep="\n")
    return int(bool(wrong))


if __name__ == "__main__":
    sys.exit(main())
