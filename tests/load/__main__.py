"""`python -m tests.load --minutes 10 --phones 10`: many phones for long, and whether all stays as it should."""

import sys
import tempfile
from argparse import ArgumentParser
from pathlib import Path

from tests.load.run import load


def main() -> int:
    parser = ArgumentParser(description=__doc__)
    parser.add_argument("--minutes", type=float, default=10)
    parser.add_argument("--phones", type=int, default=10)
    options = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="tarebook-load-") as folder:
        figures = load(Path(folder) / "house", 60 * options.minutes, options.phones)
    print(f"{options.phones} phones for {options.minutes:g} minutes through nginx, SQLite\n{figures}")
    asked = {
        "no error": not figures.errors,
        "push p95 under 150 ms": figures.push_p95 < 0.15,
        "health at home under 1 s": max(figures.health) < 1,
        "memory grows by less than a tenth": figures.growth < 0.1,
    }
    for what, is_so in asked.items():
        print(f"{'ok' if is_so else 'FAILED':<7}{what}")
    return int(not all(asked.values()))


if __name__ == "__main__":
    sys.exit(main())
