"""The test command itself: it works behind a shell's prompt, and says which tests are slow."""

import signal
import subprocess
import sys

from tests.__main__ import Runner, failures, slow_tests
from tests.machine import ROOT

ASKED = "import signal; print('ignored' if signal.getsignal(signal.SIGINT) is signal.SIG_IGN else 'heeded')"
BEHIND_THE_PROMPT = f"""
from tests.__main__ import Runner, heed_interrupts
{{}}
runner = Runner("asked", [{sys.executable!r}, "-c", {ASKED!r}])
runner.run()
print(runner.summary)
"""


def told(before: str) -> str:
    """What a runner's process says of Ctrl-C when the command was started with it ignored, as by `command &`."""
    return subprocess.run(
        [sys.executable, "-c", BEHIND_THE_PROMPT.format(before)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
        preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_IGN),
    ).stdout.splitlines()[-1]


def test_a_runner_heeds_ctrl_c_though_the_command_was_started_behind_the_prompt():
    assert told("") == "ignored"  # so it is inherited
    assert told("heed_interrupts()") == "heeded"


def test_the_slow_tests_of_both_tools_are_found_among_their_lines():
    lines = [
        "12.50s call     tests/browser/test_newcomer.py::test_it",
        "0.75s setup    tests/cli/test_serve.py::test_that",
        "     ✓ any text is read or refused in words  1085ms",
        " ✓ ../tests/core/quantity.test.ts (4 tests) 1139ms",
    ]
    assert slow_tests(lines) == [
        (12.5, "tests/browser/test_newcomer.py::test_it"),
        (0.75, "tests/cli/test_serve.py::test_that"),
        (1.085, "any text is read or refused in words"),
    ]


def test_a_runner_keeps_what_its_tests_took():
    runner = Runner("said", [sys.executable, "-c", "print('2.00s call     tests/x.py::test_y')"])
    runner.run()
    assert runner.slow == [(2.0, "tests/x.py::test_y")]


def test_what_failed_and_why_is_found_among_the_lines_of_both_tools():
    lines = [
        "_____________________ test_it _____________________",
        "    def test_it():",
        "E   assert 1 == 2",
        "FAILED tests/x.py::test_it - assert 1 == 2",
        "1 failed, 3 passed in 0.10s",
        " FAIL  ../tests/y.test.ts > sums",
        "AssertionError: expected 1 to be 2",
    ]
    assert failures(lines) == [lines[0], lines[2], lines[3], lines[5], lines[6]]
    assert failures(["", "main.ts(1,2): error TS2488: no"]) == ["main.ts(1,2): error TS2488: no"]


def test_a_runner_that_fails_says_why():
    runner = Runner("said", [sys.executable, "-c", "print('FAILED tests/x.py::test_y - why'); raise SystemExit(1)"])
    runner.run()
    assert runner.why == ["FAILED tests/x.py::test_y - why"]
