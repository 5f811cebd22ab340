"""Worlds one after the other until so many steps are done; the seeds of those in which something did not hold."""

from __future__ import annotations

import argparse
import logging
import sys
import time
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from itertools import count
from multiprocessing import get_context

from tests.sync.simulation.moves import KINDS
from tests.sync.simulation.run import STEPS, Run, run

USUAL = 10_000
"""Steps after which every move and every fault must have come about."""
TELL_EVERY = 60.0


def main() -> int:
    parser = argparse.ArgumentParser(prog="python -m tests.sync.simulation", description=__doc__)
    parser.add_argument("--seed", type=int, default=1, help="of the first world; each further one has the next")
    parser.add_argument("--steps", type=int, default=STEPS)
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--trace", action="store_true", help="print every line of one world")
    options = parser.parse_args()
    logging.disable()
    if options.trace:
        one = run(options.seed, options.steps, print)
        print(f"{one.hash} {one.found or 'nothing found'}")
        return int(one.found is not None)
    return _many(options.seed, options.steps, options.workers)


def _many(seed: int, steps: int, workers: int) -> int:
    counts: Counter[str] = Counter()
    done = worlds = found = 0
    began = told = time.perf_counter()
    for one in _worlds(seed, steps, workers):
        done, worlds = done + one.steps, worlds + 1
        counts.update(one.counts)
        if one.found:
            found += 1
            print(f"seed {one.seed}, step {one.steps}: {one.found[:600]}", flush=True)
        if time.perf_counter() - told > TELL_EVERY:
            told = time.perf_counter()
            print(
                f"{done} steps in {worlds} worlds, {done / (told - began):.0f} a second, {found} findings", flush=True
            )
    pace = done / (time.perf_counter() - began)
    print(f"{done} steps in {worlds} worlds from seed {seed} on, {pace:.0f} a second, {found} findings")
    for name in KINDS:
        print(f"{counts[name]:9} {name}")
    never = [name for name in KINDS if counts[name] == 0]
    if done >= USUAL and never:
        print(f"never came about: {', '.join(never)}")
    return int(found > 0 or (done >= USUAL and bool(never)))


def _worlds(seed: int, steps: int, workers: int) -> Iterator[Run]:
    """Each as it ends."""
    with ProcessPoolExecutor(workers, mp_context=get_context("spawn"), initializer=logging.disable) as pool:
        seeds, done = count(seed), 0
        running: set[Future[Run]] = {pool.submit(run, next(seeds)) for _ in range(workers)}
        while running:
            ended, running = wait(running, return_when=FIRST_COMPLETED)
            for one in sorted((future.result() for future in ended), key=lambda one: one.seed):
                done += one.steps
                yield one
                if done + len(running) * STEPS < steps:
                    running.add(pool.submit(run, next(seeds)))


if __name__ == "__main__":
    sys.exit(main())
