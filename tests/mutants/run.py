"""Gives slips to the runner of their language, both at once, and hands back each with what the tests said."""

import json
import os
import queue
import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from build_app import need_node

from tests.machine import ROOT, passing_folder
from tests.mutants.slip import Slip

TESTS = ROOT / "tests"
# The one left out starts a Python of its own, which would not see a slip.
PYTHON_TESTS = [
    TESTS / "test_vectors.py",
    *sorted(TESTS.glob("core/test_*.py")),
    *(path for path in sorted(TESTS.glob("outside/test_*.py")) if path.name != "test_every_published_value.py"),
]
TYPESCRIPT_TESTS = [
    TESTS / "vectors.test.ts",
    *sorted(TESTS.glob("core/*.test.ts")),
    *sorted(TESTS.glob("outside/*.test.ts")),
    TESTS / "screens/ballast.test.ts",  # what the core calls hardly any load is seen in a screen's words alone
]
PROGRAM = """
import { readFileSync } from "node:fs";
import { runnerImport } from "vite";
const [module, job] = process.argv.slice(1);
const resolve = { dedupe: ["@vitest/expect", "fast-check", "typescript", "vite"] };
const { module: { main } } = await runnerImport(module, { configFile: false, logLevel: "error", resolve });
await main(JSON.parse(readFileSync(job, "utf8")), resolve);
"""


def find(slips: list[Slip], tests: list[Path] | None = None) -> Iterator[Slip]:
    """Each slip as soon as it was tried with these files of tests, with all of the core's unless told."""
    with passing_folder() as folder:
        ours = [slip for slip in slips if slip.language == "python"]
        theirs = [slip for slip in slips if slip.language == "typescript"]
        told = [path for path in tests or () if path.suffix == ".py"]
        python = _python(ours, told or _needed(ours), Path(folder))  # given no file, pytest would run the whole house
        asked = next(python)
        suited = [path for path in tests or TYPESCRIPT_TESTS if path.suffix == ".ts"]
        yield from _merged(python, _typescript(theirs, suited, asked, Path(folder)))


def _needed(slips: list[Slip]) -> list[Path]:
    """Without slips of Python, only the tests that ask both languages."""
    return [path for path in PYTHON_TESTS if slips or "tests.typescript" in path.read_text(encoding="utf-8")]


def _python(slips: list[Slip], tests: list[Path], folder: Path) -> Iterator[Any]:
    """First what TypeScript was asked and answered when all was sound, then the slips."""
    job = _write(folder / "python.json", {"slips": [vars(slip) for slip in slips], "tests": list(map(str, tests))})
    env = {**os.environ, "TMPDIR": str(folder), "PYTHONPATH": os.pathsep.join(("server", ".", "webapp"))}
    told = _lines([sys.executable, "-m", "tests.mutants.python_run", str(job)], ROOT, env)
    yield next(told)
    for slip, verdict in zip(slips, told, strict=True):
        yield _with(slip, verdict)


def _typescript(slips: list[Slip], tests: list[Path], asked: Any, folder: Path) -> Iterator[Slip]:
    """A slip that brings Node to its end is found by that; another Node goes on behind it."""
    while slips:
        job = {"slips": [vars(slip) for slip in slips], "tests": list(map(str, tests)), "asked": asked}
        told = _node(_write(folder / "typescript.json", job))
        if failed := next(told, {"failed": "Node"})["failed"]:
            raise RuntimeError(f"fails before anything was changed: {failed}")
        for verdict in told:
            yield _with(slips.pop(0), verdict)
        if slips:
            yield _with(slips.pop(0), {"by": "tests", "test": "ends Node"})


def typescript_slips(files: list[str]) -> list[Slip]:
    """Every slip in each of the files."""
    with passing_folder() as folder:
        found = list(_node(_write(Path(folder) / "files.json", {"files": files})))
    return [Slip(*one) for one in found]


def _node(job: Path) -> Iterator[Any]:
    module = str(Path(__file__).with_name("typescript.ts"))
    memory = "--max-old-space-size=2000"
    command = ["node", memory, "--input-type=module", "--eval", PROGRAM, "--", module, str(job)]
    return _lines(command, ROOT / "webapp", need_node().env)


def _lines(command: list[str], folder: Path, env: dict[str, str]) -> Iterator[Any]:
    """The JSON that a program writes line by line."""
    with subprocess.Popen(command, cwd=folder, env=env, text=True, stdout=subprocess.PIPE) as process:
        try:
            yield from map(json.loads, process.stdout or ())
        finally:
            process.kill()


def _write(path: Path, what: Any) -> Path:
    path.write_text(json.dumps(what), encoding="utf-8")
    return path


def _with(slip: Slip, verdict: dict[str, Any]) -> Slip:
    slip.by, slip.test, slip.seconds = verdict["by"], verdict["test"], verdict.get("seconds", 0.0)
    return slip


def _merged(*halves: Iterator[Slip]) -> Iterator[Slip]:
    told: queue.SimpleQueue[Slip | Exception | None] = queue.SimpleQueue()

    def drain(half: Iterator[Slip]) -> None:
        try:
            for slip in half:
                told.put(slip)
        except Exception as problem:
            told.put(problem)
        told.put(None)

    for half in halves:
        threading.Thread(target=drain, args=(half,), daemon=True).start()
    for _ in halves:
        while (given := told.get()) is not None:
            if isinstance(given, Exception):
                raise given
            yield given
