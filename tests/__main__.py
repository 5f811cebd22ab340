"""`python -m tests`: every check of this project, a few at a time, each runner's closing line at the end.

Browsers and servers wait for each other, so one runner more than there are cores keeps the cores busy; the long ones
come before the short ones, so that all end together. What tests write for a moment goes into memory where there is
room, as a disk is waited for at each transaction. Lines appear as the runners print them, with the runner's name in
front. The exit code is 1 when any runner failed.
"""

import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field

from tests.machine import ROOT, passing_folder, prepare

WEBAPP = ROOT / "webapp"
AT_ONCE = (os.cpu_count() or 1) + 1
# The rooms whose tests take long have a runner of their own, the browsers' more than one.
ROOMS = ("sync", "core", "api", "cli", "store", "devices")
BROWSER_SHARES = (1, 2)
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
    slow: list[tuple[float, str]] = field(default_factory=list)
    why: list[str] = field(default_factory=list)

    def run(self) -> None:
        """Run to the end, passing its lines on; fill in `summary`, `seconds`, `failed`, `slow` and `why`."""
        started, lines = time.monotonic(), []
        env = {**self.env, "NO_COLOR": "1", "PYTHONUNBUFFERED": "1"}
        with subprocess.Popen(
            self.command, cwd=ROOT / self.folder, env=env, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT
        ) as process:
            for line in process.stdout or ():
                lines.append(line.rstrip())
                print(f"{self.name:<15} | {lines[-1]}", flush=True)
        self.seconds, self.failed = time.monotonic() - started, process.returncode != 0
        self.slow = slow_tests(lines)
        self.why = failures(lines) if self.failed else []
        said = [line for line in lines if re.search(self.closing, line)] or [line for line in lines if line]
        besides = [line for line in lines if self.besides and re.search(self.besides, line)]
        self.summary = "\n       ".join([said[-1].strip() if said else "nothing to say", *besides])

    def closing_line(self) -> str:
        """The line printed again at the end."""
        return f"{'FAILED' if self.failed else 'ok':<6} {self.name:<15} {self.seconds:5.0f} s  {self.summary}"


def slow_tests(lines: Sequence[str]) -> list[tuple[float, str]]:
    """What pytest and vitest say of their slow tests: seconds, and which."""
    pytests = [re.match(r"([\d.]+)s (?:call|setup|teardown) +(.+)", line) for line in lines]
    vitests = [re.match(r" {2,}[✓✗×] (.+?) +(\d+)ms", line) for line in lines]
    return [
        *((float(found[1]), found[2]) for found in pytests if found),
        *((int(found[2]) / 1000, found[1]) for found in vitests if found),
    ]


def failures(lines: Sequence[str]) -> list[str]:
    """What failed, and why, as pytest and vitest say it; the last lines of others. Short: the end of a log is kept."""
    said = re.compile(r"(FAILED|ERROR) |E {2,}\S|_{3,} \S| *(FAIL|AssertionError|Error:)")
    told = [line for line in lines if said.match(line)]
    return (told or [line for line in lines if line][-20:])[:40]


def heed_interrupts() -> None:
    """A shell that starts this behind its prompt has Ctrl-C ignored; what is started here would inherit that."""
    signal.signal(signal.SIGINT, signal.default_int_handler)


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
        Runner(
            "biome", [*npm, "biome", "check", "..", "--error-on-warnings"], "webapp", closing="^Checked", env=node.env
        ),
        *types,
        Runner("mypy", [*python, "mypy"]),
        *(
            pytest(f"browser {share}", "tests/browser", f"--share={share}/{len(BROWSER_SHARES)}")
            for share in BROWSER_SHARES
        ),
        Runner("vitest", [*npm, "vitest", "run"], "webapp", closing=r"^\s*Tests\s", env=node.env),
        *(pytest(room, f"tests/{room}") for room in ROOMS),
        pytest("others", "tests", "--ignore=tests/browser", *(f"--ignore=tests/{room}" for room in ROOMS)),
    ]


def pytest(name: str, *what: str) -> Runner:
    """Some of the Python tests."""
    return Runner(
        f"pytest {name}",
        [sys.executable, "-m", "pytest", "--durations=10", *what],
        besides="^(Engine|Newcomer|Published|A stranger|The journal of a stranger)",
    )


def main() -> int:
    """Run all, print the closing lines, and return the exit code."""
    heed_interrupts()
    todo = runners()
    with passing_folder() as folder, ThreadPoolExecutor(AT_ONCE) as pool:
        for runner in todo:
            runner.env["TMPDIR"] = folder
        for done in [pool.submit(runner.run) for runner in todo]:
            done.result()
    print("\nThe ten slowest tests:")
    for seconds, test in sorted((each for runner in todo for each in runner.slow), reverse=True)[:10]:
        print(f"{seconds:7.1f} s  {test}")
    print()
    for runner in todo:
        print(runner.closing_line())
    for runner in todo:
        print(*(f"\n{runner.name}: {line}" for line in runner.why), sep="")
    return int(any(runner.failed for runner in todo))


if __name__ == "__main__":
    sys.exit(main())
