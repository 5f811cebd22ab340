"""The core and the journal reach nothing outside themselves: no files, clock, chance, network or framework."""

import ast
from pathlib import Path

import pytest

from tests.house.tree import ROOT

PACKAGE = ROOT / "server" / "tarebook"
PURE = [path for room in ("core", "journal") for path in sorted((PACKAGE / room).rglob("*.py"))]
LIBRARY = {
    "__future__", "bisect", "collections", "collections.abc", "dataclasses", "decimal", "enum", "fractions",
    "functools", "hashlib", "heapq", "itertools", "json", "math", "operator", "re", "statistics",
    "string", "typing", "unicodedata",
}  # fmt: skip
OWN = ("tarebook.core", "tarebook.journal", "tarebook.errors")
REACHING = {"open", "print", "input", "exec", "eval", "__import__", "breakpoint"}


def imports(tree: ast.Module) -> set[str]:
    """The full names of the modules imported anywhere in a module."""
    plain = {alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    return plain | {node.module or "." for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}


def allowed(module: str, path: Path) -> bool:
    """True when a pure module at `path` may import `module`."""
    own = any(module == room or module.startswith(room + ".") for room in OWN)
    is_units = module == "pint" and path.parent.name == "numbers" and path.name in ("quantity.py", "units.py")
    is_algebra = module.split(".")[0] == "numpy" and path.parent.name == "fusion"
    is_day = module == "datetime" and path.name == "behaviour.py"  # of a day that is written, never today
    return own or module in LIBRARY or is_units or is_algebra or is_day


@pytest.mark.parametrize("path", PURE, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_a_pure_module_imports_only_pure_ones(path):
    assert {module for module in imports(ast.parse(path.read_text())) if not allowed(module, path)} == set()


@pytest.mark.parametrize("path", PURE, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_a_pure_module_calls_nothing_that_reaches_outside(path):
    calls = {
        n.func.id
        for n in ast.walk(ast.parse(path.read_text()))
        if isinstance(n, ast.Call) and isinstance(n.func, ast.Name)
    }
    assert calls & REACHING == set()


def test_the_core_has_modules_to_check():
    assert {"quantity", "uncertain", "weighing", "ledger", "weigh_in", "standing"} <= {path.stem for path in PURE}
