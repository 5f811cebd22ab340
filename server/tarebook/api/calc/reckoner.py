"""The process that computes for `apart`: one question after another from its standard input, each within its time.

A question is a line `NAME SECONDS BYTES` and its JSON, NAME a computation of `calc` or `report`; an answer `ok BYTES`
or `refused BYTES` and its JSON. A process that takes longer than it may is ended by its own alarm, even if nobody is
left to end it.
"""

from __future__ import annotations

import json
import os
import resource
import signal
import sys
from typing import IO, Any

from tarebook.api.calc import run
from tarebook.errors import TarebookError
from tarebook.journal.entries import load_json, why_not_json
from tarebook.papers.report import report

MEMORY = 2 << 30  # bytes of address space, several times what the largest body takes


def main() -> None:
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C is for the server, whose end closes our standard input
    resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
    questions, answers = sys.stdin.buffer, os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)  # nothing that is printed may pass for an answer
    answers.write(b"ready\n")
    answers.flush()
    while line := questions.readline():
        name, seconds, size = line.decode("ascii").split()
        _answer(name, float(seconds), questions.read(int(size)), answers)


def _answer(name: str, seconds: float, payload: bytes, answers: IO[bytes]) -> None:
    signal.setitimer(signal.ITIMER_PROF, seconds)  # of work: a busy computer is no fault of the question
    try:
        asked = _loaded(payload)
        word, told = "ok", report(*asked) if name == "report" else run(name, asked)
    except TarebookError as refusal:
        word, told = "refused", {"code": refusal.code, "data": refusal.data}
    except MemoryError:
        word, told = "refused", {"code": "calc_over_budget", "data": {"seconds": seconds}}
    text = json.dumps(told, ensure_ascii=False, separators=(",", ":")).encode()
    signal.setitimer(signal.ITIMER_PROF, 0)
    answers.write(f"{word} {len(text)}\n".encode("ascii") + text)
    answers.flush()


def _loaded(payload: bytes) -> Any:
    try:
        return load_json(payload.decode("utf-8"))
    except ValueError as problem:
        raise TarebookError("malformed_json", reason=why_not_json(problem)) from problem


if __name__ == "__main__":
    main()
