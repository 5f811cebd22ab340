"""`python -m tests.simulated_build`: how often the standing is right about thousands of cars that are known truly.

Truths are drawn from the spreads the product states for scales, displays, fuel and guesses, and weighed as a garage
would. `--runs N` of each scenario, `--seed N`, `--only SCENARIO` (again for more; `'walk-*'` for all of a kind); with
`--run N` that one run is printed in full: what was true, what was written down, what was answered. `--least-step`: the
least unlogged change that is named, for clean garages of four, six and twelve weigh-ins, or for those asked for.
"""

from __future__ import annotations

import argparse
import fnmatch
import functools
import json
import multiprocessing
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import asdict
from itertools import chain
from typing import Any, TypeVar

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.standing import standing
from tests.plain import plain
from tests.simulated_build import least_step
from tests.simulated_build.blamed import calibration, score
from tests.simulated_build.garage import records
from tests.simulated_build.least_step import names_of
from tests.simulated_build.run import outcome, world_of
from tests.simulated_build.scenarios import SCENARIOS, Scenario
from tests.simulated_build.tally import Tally, table

SEED, CORES = 20261125, 2
RUNS, RUNS_WITHOUT_AIMS = 10_000, 1_000
LEAST_STEPS = ("plain-4", "plain-6", "plain")
T = TypeVar("T")
_ONLY = "this scenario only, or all that match; may be given again"


def main() -> int:
    options = _options()
    scenarios = [SCENARIOS[name] for name in dict.fromkeys(chain(*options.only or [SCENARIOS]))]
    if options.run is not None:
        for scenario in scenarios:
            print(json.dumps(one(scenario, options.seed, options.run), indent=1, default=_listed, ensure_ascii=False))
        return 0
    if options.least_step:
        scenarios = scenarios if options.only else [SCENARIOS[name] for name in LEAST_STEPS]
        runs = options.runs or RUNS_WITHOUT_AIMS
        with multiprocessing.Pool(CORES) as pool:
            print(
                least_step.table([(each, list(_all(pool, names_of, each, options.seed, runs))) for each in scenarios])
            )
        return 0
    with multiprocessing.Pool(CORES) as pool:
        tallies = [
            Tally(each, list(_all(pool, outcome, each, options.seed, options.runs or _runs(each))))
            for each in scenarios
        ]
    print(table(tallies))
    for tally in tallies:
        blamed = [each.blamed for each in tally.outcomes if each.blamed]
        if blamed:
            print(f"\n{tally.scenario.name}\n{score(blamed)}\n\n{calibration(blamed)}\n")
    for scenario in scenarios:
        print(f"{scenario.name}: {scenario.about}")
    print(f"Seed {options.seed}. Shares ± 2 √(p(1 − p)/n). Half-widths (2 u): the median, and the range it lies in.")
    return 0


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.simulated_build", description="Simulate builds; count.")
    parser.add_argument(
        "--runs", type=int, metavar="N", help=f"of each scenario ({RUNS}, {RUNS_WITHOUT_AIMS} without aims)"
    )
    parser.add_argument("--seed", type=int, default=SEED, metavar="N", help=f"of all runs (default: {SEED})")
    parser.add_argument("--only", action="append", type=_matching, metavar="SCENARIO", help=_ONLY)
    parser.add_argument("--least-step", action="store_true", help="the least change that is named, in kilograms")
    parser.add_argument("--run", type=int, metavar="N", help="print this one run: its truth, its garage, its answer")
    return parser.parse_args()


def _runs(scenario: Scenario) -> int:
    return RUNS if scenario.aims.aimed else RUNS_WITHOUT_AIMS


def _matching(pattern: str) -> list[str]:
    found = fnmatch.filter(SCENARIOS, pattern)
    if not found:
        raise argparse.ArgumentTypeError(f"no such scenario; there are {', '.join(SCENARIOS)}")
    return found


def _all(
    pool: multiprocessing.pool.Pool, run: Callable[[Scenario, int, int], T], scenario: Scenario, seed: int, runs: int
) -> Iterator[T]:
    """All runs of a scenario in order of their numbers, with a line of progress."""
    started = time.monotonic()
    work = functools.partial(run, scenario, seed)
    for done, each in enumerate(pool.imap(work, range(runs), chunksize=20), 1):
        yield each
        if done % 100 == 0 or done == runs:
            pace = 1000 * (time.monotonic() - started) / done
            said = f"\r{scenario.name}: {done:,} of {runs:,}, {pace:.0f} ms a run "
            print(said, end="", file=sys.stderr, flush=True)
    print(file=sys.stderr)


def one(scenario: Scenario, seed: int, number: int) -> dict[str, object]:
    """Everything of one run, as plain data."""
    world = world_of(scenario, seed, number)
    garage = records(world)
    return {
        "scenario": scenario.about,
        "truth": {"weight_now": world.truth, **asdict(world)},
        "garage": garage,
        "answer": plain(standing(read_garage(garage))),
        "outcome": plain(outcome(scenario, seed, number)),
    }


def _listed(value: Any) -> Any:
    """Arrays and sets as lists."""
    return sorted(value) if isinstance(value, frozenset) else value.tolist()


if __name__ == "__main__":
    sys.exit(main())
