"""Runs Python's tests against one slip at a time, in processes forked from one that has collected them all.

A first, sound run notes which functions of the core each test calls, and what TypeScript answers. A slip inside a
function then puts its code into the living function, and only the tests that call it run, the quick ones first, up to
the first that fails; any other slip means importing and collecting anew. A test that takes far longer than when all
was sound counts as failed.
"""

import ast
import gc
import json
import os
import pickle
import signal
import sys
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from functools import partial
from importlib.machinery import SourceFileLoader
from itertools import pairwise
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import pytest
from hypothesis import Phase, settings

from tests import typescript
from tests.mutants.python_slips import Module
from tests.mutants.slip import CORES, Slip

CORE = str(CORES["python"])
OPTIONS = ("-q", "--tb=no", "--assert=plain", "-p", "no:cacheprovider", "--hypothesis-profile=mutants")
SECONDS, PATIENCE = 5.0, 8.0  # of the processor for any test, and so many times what it took when all was sound
Place = tuple[str, str]  # of a function: its file and qualified name
Living = dict[Place, list[FunctionType]]
real_answers = typescript.answers


class Runner:
    """A pytest plugin that runs the tests for each slip instead of once."""

    def __init__(self, slips: list[Slip], tests: list[str], tell: Callable[[Any], None]) -> None:
        self.slips, self.tests, self.tell = slips, tests, tell
        self.took: dict[str, float] = {}
        self.calls: dict[str, set[Place]] = {}
        self.answered: dict[str, Any] = {}
        self.failed = self.killer = ""
        typescript.answers = self.answers

    def answers(self, questions: list[Any]) -> Any:
        """What TypeScript answers, asked once."""
        key = json.dumps(questions)
        if key not in self.answered:
            self.answered[key] = real_answers(questions)
        return self.answered[key]

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        if self.killer:  # collected once more, in a child
            self.killer = self.killer if session.testsfailed else self.run(session.items)
            return True
        session.config._tmp_path_factory.getbasetemp()  # type: ignore[attr-defined]  # one for all children
        living = functions()
        self.took, self.calls, self.answered, failed = in_child(lambda: self.measure(session.items, living))
        if failed:
            raise SystemExit(f"fails before anything was changed: {failed}")
        self.tell([{"questions": json.loads(asked), "answers": given} for asked, given in self.answered.items()])
        for slip in self.slips:
            started = time.monotonic()
            killer = in_child(partial(self.attempt, slip, session.items, living))
            by, _, test = ("tests too long" if killer is None else killer).partition(" ")
            self.tell({"by": by, "test": test, "seconds": time.monotonic() - started})
        return True

    def measure(self, items: list[pytest.Item], living: Living) -> Any:
        """In a child: every test's seconds, and the functions of the core it called."""
        seen = noting(living)
        for item, after in pairwise([*items, None]):
            started = time.process_time()
            item.config.hook.pytest_runtest_protocol(item=item, nextitem=after)
            self.took[item.nodeid] = time.process_time() - started
            self.calls[item.nodeid] = set(seen)
            seen.clear()
        return self.took, self.calls, self.answered, self.failed

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.failed = self.failed or report.nodeid

    def attempt(self, slip: Slip, items: list[pytest.Item], living: Living) -> str:
        """In a child: by what the slip is found, or nothing."""
        code = compile(slip.changed, slip.file, "exec", dont_inherit=True)
        place = slip.file, Module(slip.text).place(slip.start)
        if callers := [item for item in items if place in self.calls[item.nodeid]]:
            put(living[place], code)
            return self.run(callers)
        return self.anew(slip.file, code)

    def run(self, items: list[pytest.Item]) -> str:
        """The quick tests first, the comparison of the two languages last."""
        order = sorted(items, key=lambda item: (compares(item), self.took.get(item.nodeid, 0.0)))
        for item, after in pairwise([*order, None]):
            signal.setitimer(signal.ITIMER_PROF, SECONDS + PATIENCE * self.took.get(item.nodeid, 0.0))
            item.config.hook.pytest_runtest_protocol(item=item, nextitem=after)
            if self.failed:
                return f"{'comparison' if compares(item) else 'tests'} {self.failed}"
        return ""

    def anew(self, file: str, code: CodeType) -> str:
        """Imports and collects everything of ours again, this module with the slip."""
        for name in [name for name in sys.modules if name.split(".")[0] in ("tarebook", "tests")]:
            if name != "tests.typescript":
                del sys.modules[name]
        sound = SourceFileLoader.get_code

        def get_code(loader: Any, name: str) -> CodeType | None:
            return code if loader.path == file else sound(loader, name)

        SourceFileLoader.get_code = get_code  # type: ignore[assignment, method-assign]
        self.killer = "tests importing"  # unless it comes as far as running
        signal.setitimer(signal.ITIMER_PROF, 60.0)
        if pytest.main([*self.tests, *OPTIONS], plugins=[self]) == pytest.ExitCode.INTERNAL_ERROR:
            raise SystemExit(f"cannot run the tests with a slip in {file}")
        return self.killer


def compares(item: pytest.Item) -> bool:
    """True for tests that hold the two languages against each other."""
    return hasattr(getattr(item, "module", None), "unlike")


def functions() -> Living:
    """The living functions of the core; the only one of its place where another function makes it."""
    found: Living = defaultdict(list)
    for each in gc.get_objects():
        if isinstance(each, FunctionType) and each.__code__.co_filename.startswith(CORE):
            found[each.__code__.co_filename, each.__code__.co_qualname].append(each)
    return found


def put(living: list[FunctionType], module: CodeType) -> None:
    """Gives functions of one place the code that stands there in a module compiled anew."""
    inner = {each.co_qualname: each for each in inside(module)}
    for function in living:
        function.__code__ = inner[function.__code__.co_qualname]


def noting(living: Living) -> set[Place]:
    """The functions called from now on; each first says so."""
    seen: set[Place] = set()
    for file in {file for file, _ in living}:
        module = Module(Path(file).read_text(encoding="utf-8"))
        for name, tree in module.functions():
            tree.body.insert(0, ast.parse(f"_note(({file!r}, {name!r}))").body[0])
        code = compile(module.tree, file, "exec", dont_inherit=True)
        for name, _ in module.functions():
            for function in living[file, name]:
                function.__globals__["_note"] = seen.add
            put(living[file, name], code)
    return seen


def inside(code: CodeType) -> Iterator[CodeType]:
    """The code of everything defined in a module or class."""
    for each in code.co_consts:
        if isinstance(each, CodeType):
            yield each
            yield from inside(each)


def in_child(work: Callable[[], Any]) -> Any:
    """What `work` gives in a forked process; None when that was stopped."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        with os.fdopen(writing, "wb") as pipe:
            pickle.dump(work(), pipe)
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        given = pipe.read()
    if os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == -signal.SIGPROF:
        return None
    return pickle.loads(given)


def main() -> None:
    """Reads slips and tests from the file named, and writes lines of JSON: the questions asked, and of each slip."""
    job = json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))
    out = os.fdopen(os.dup(1), "w")  # what pytest says goes nowhere
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)

    def tell(what: Any) -> None:
        print(json.dumps(what), file=out, flush=True)

    phases = (Phase.explicit, Phase.generate)
    settings.register_profile("mutants", deadline=None, database=None, derandomize=True, phases=phases)
    runner = Runner([Slip(**slip) for slip in job["slips"]], job["tests"], tell)
    sys.exit(pytest.main([*job["tests"], *OPTIONS], plugins=[runner]))


if __name__ == "__main__":
    main()
