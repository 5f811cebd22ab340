"""`python -m tests`: every check of this project, two at a time, each runner's closing line at the end.

Lines appear as the runners print them, with the runner's name in front. The exit code is 1 when any runner failed.
"""

import os
import re
import subprocess
import sys
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field

from tests.machine import ROOT, prepare

WEBAPP = ROOT / "webapp"
AT_ONCE = 2
PROJECTS = {
    "pure": "tsconfig.pure.json",
    "sw": "tsconfig.sw.json",
    "page": "tsconfig.json",
    "tests": "tsconfig.tests.json",
}


@dataclass
class Runner:
    """One tool. `closing`: a pattern of the line that sums it up; without one, or unmatched, its last line.

    `besides`: a pattern of lines that are repeated at the end with it.
    """

    name: str
    command: Sequence[str]
    folder: str = "."
    closing: str = r"\S"
    besides: str | None = None
    env: dict[str, str] = field(default_factory=lambda: dict(os.environ))
    summary: str = ""
    seconds: float = 0.0
    failed: bool = True

    def run(self) -> None:
        """Run to the end, passing its lines on; fill in `summary`, `seconds` and `failed`."""
        started, lines = time.monotonic(), []
        env = {**self.env, "NO_COLOR": "1", "PYTHONUNBUFFERED": "1"}
        with subprocess.Popen(
            self.command, cwd=ROOT / self.folder, env=env, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT
        ) as process:
            for line in process.stdout or ():
                lines.append(line.rstrip())
                print(f"{self.name:<15} | {lines[-1]}", flush=True)
        self.seconds, self.failed = time.monotonic() - started, process.returncode != 0
        said = [line for line in lines if re.search(self.closing, line)] or [line for line in lines if line]
        besides = [line for line in lines if self.besides and re.search(self.besides, line)]
        self.summary = "\n       ".join([said[-1].strip() if said else "nothing to say", *besides])

    def closing_line(self) -> str:
        """The line printed again at the end."""
        return f"{'FAILED' if self.failed else 'ok':<6} {self.name:<15} {self.seconds:5.0f} s  {self.summary}"


def runners() -> list[Runner]:
    """Everything that is run; the quick ones first, so that a slip shows early."""
    node = prepare()
    python = [sys.executable, "-m"]
    npm = [*node.npm, "exec", "--offline", "--"]
    types = [
        Runner(f"tsc {name}", [*npm, "tsc", "-p", file, "--pretty", "false"], "webapp", env=node.env)
        for name, file in PROJECTS.items()
    ]
    return [
        Runner("ruff check", [*python, "ruff", "check", "."], closing=r"^(Found|All checks)"),
        Runner("ruff format", [*python, "ruff", "format", "--check", "."]),
        *types,
        Runner("vitest", [*npm, "vitest", "run"], "webapp", closing=r"^\s*Tests\s", env=node.env),
        Runner("mypy", [*python, "mypy"]),
        Runner("pytest browser", [*python, "pytest", "tests/browser"], besides="^(Engine|Newcomer)"),
        Runner("pytest", [*python, "pytest", "--ignore=tests/browser"], besides="^Published"),
    ]


def main() -> int:
    """Run all, print the closing lines, and return the exit code."""
    todo = runners()
    with ThreadPoolExecutor(AT_ONCE) as pool:
        for done in [pool.submit(runner.run) for runner in todo]:
            done.result()
    print()
    for runner in todo:
        print(runner.closing_line())
    return int(any(runner.failed for runner in todo))


if __name__ == "__main__":
    sys.exit(main())
