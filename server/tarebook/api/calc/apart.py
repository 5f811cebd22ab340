"""Computations in processes of their own, so that each can be ended: at the end of its time, or when nobody waits.

A thread cannot be ended, and while it computes every other waits for its turn. A process is kept for the next question
once it has answered, as beginning one takes half a second.
"""

from __future__ import annotations

import json
import select
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from typing import IO, cast

from tarebook.errors import TarebookError

AT_ONCE = 2
_TO_GET_A_PLACE = 1.0  # seconds; an ordinary computation takes a few hundredths
_LOOK_EVERY = 0.1
_AS_LONG = 4  # times its seconds of work, by the clock: its own alarm comes first
_places = threading.BoundedSemaphore(AT_ONCE)
_COMMAND = [sys.executable, "-m", "tarebook.api.calc.reckoner"]
_idle: list[subprocess.Popen[bytes]] = []


def compute(name: str, payload: bytes, seconds: float, has_gone: Callable[[], bool] = lambda: False) -> bytes:
    """The answer of one computation as JSON. Raises TarebookError: as `calc.run` does, `calc_over_budget`, `calc_busy`.

    `has_gone`: whether whoever asked has hung up.
    """
    if not _places.acquire(timeout=_TO_GET_A_PLACE):
        raise TarebookError("calc_busy")
    try:
        process = _begun()
        try:
            word, answer = _asked(process, name, payload, seconds, has_gone)
        except BaseException:
            _end(process)
            raise
        _idle.append(process)
    finally:
        _places.release()
    if word == "ok":
        return answer
    refusal = json.loads(answer)
    raise TarebookError(refusal["code"], **refusal["data"])


def _begun() -> subprocess.Popen[bytes]:
    while _idle:
        process = _idle.pop()
        if process.poll() is None:
            return process
        _end(process)
    process = subprocess.Popen(_COMMAND, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
    cast(IO[bytes], process.stdout).readline()  # it is ready, or it ends
    return process


def _end(process: subprocess.Popen[bytes]) -> None:
    process.kill()
    with process:
        pass


def _asked(
    process: subprocess.Popen[bytes], name: str, payload: bytes, seconds: float, has_gone: Callable[[], bool]
) -> tuple[str, bytes]:
    questions, answers = cast(IO[bytes], process.stdin), cast(IO[bytes], process.stdout)
    questions.write(f"{name} {seconds} {len(payload)}\n".encode("ascii") + payload)
    questions.flush()
    until = time.monotonic() + _AS_LONG * seconds
    while not select.select([answers], [], [], _LOOK_EVERY)[0]:
        if has_gone() or time.monotonic() > until:
            raise TarebookError("calc_over_budget", seconds=seconds)
    line = answers.readline()
    if not line:
        is_over = process.wait() == -signal.SIGPROF
        raise TarebookError("calc_over_budget", seconds=seconds) if is_over else RuntimeError("a computation broke off")
    word, size = line.decode("ascii").split()
    return word, answers.read(int(size))
