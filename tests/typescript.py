"""Asks the phone's functions the same questions: one Node for as long as Python runs, a line of JSON to and fro."""

import atexit
import json
from functools import cache
from subprocess import PIPE, Popen
from threading import Timer
from typing import Any

from build_app import need_node

from tests.core.questions import Question
from tests.machine import ROOT
from tests.vectors import differences

# Vite comes with the app and runs TypeScript as it is; no built file can be stale.
PROGRAM = """
import { createInterface } from "node:readline";
import { runnerImport } from "vite";
const { module: { answers } } = await runnerImport(process.argv[1], { configFile: false, logLevel: "error" });
for await (const line of createInterface({ input: process.stdin })) {
  console.log(JSON.stringify(answers(JSON.parse(line))));
}
"""
MOST = 120.0  # seconds for a line of questions
Answered = list[tuple[Question, Any]]  # each `{function, in}` with what Python's claim gives


@cache
def _phone() -> Popen[str]:
    command = ["node", "--input-type=module", "--eval", PROGRAM, "--", str(ROOT / "tests" / "answer.ts")]
    phone = Popen(command, cwd=ROOT / "webapp", env=need_node().env, encoding="utf-8", stdin=PIPE, stdout=PIPE)
    atexit.register(phone.communicate)
    return phone


def answers(questions: list[Question]) -> list[Any]:
    """For each `{function, in}` what TypeScript's claim gives."""
    phone = _phone()
    assert phone.stdin is not None
    assert phone.stdout is not None
    too_long = Timer(MOST, phone.kill)
    too_long.start()
    try:
        print(json.dumps(questions), file=phone.stdin, flush=True)
        given: list[Any] = json.loads(phone.stdout.readline())
    except (OSError, ValueError):
        _phone.cache_clear()
        raise
    finally:
        too_long.cancel()
    return given


def unlike(answered: Answered, close: float = 0.0) -> list[tuple[Question, list[str]]]:
    """Every question that the two languages answer otherwise, with where the answers differ."""
    others = answers([question for question, _ in answered])
    pairs = zip(answered, others, strict=True)
    return [(question, lines) for (question, one), other in pairs if (lines := differences(other, one, close))]
