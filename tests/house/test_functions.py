"""Functions stay short: half of them within ten lines, nine in ten within thirty.

Counted are the lines that say something: blank lines, comments and the docstring are not held against a function.
"""

import ast
import statistics
from collections.abc import Iterator

from tests.house.tree import code

MEDIAN, NINE_IN_TEN = 10, 30
Function = ast.FunctionDef | ast.AsyncFunctionDef


def functions(tree: ast.Module) -> Iterator[Function]:
    """Every function and method of a module, nested ones too."""
    return (node for node in ast.walk(tree) if isinstance(node, Function))


def said_lines(function: Function, lines: list[str]) -> int:
    """Lines of a function that are neither blank, comment nor docstring."""
    first = function.body[0]
    has_docstring = (
        isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant) and isinstance(first.value.value, str)
    )
    docstring = range(first.lineno, (first.end_lineno or first.lineno) + 1) if has_docstring else range(0)
    numbers = range(function.lineno, (function.end_lineno or function.lineno) + 1)
    return sum(
        1 for n in numbers if n not in docstring and lines[n - 1].strip() and not lines[n - 1].strip().startswith("#")
    )


def test_python_functions_are_short():
    modules = [text for path, text in code() if path.suffix == ".py"]
    lengths = [said_lines(f, text.splitlines()) for text in modules for f in functions(ast.parse(text))]
    assert statistics.median(lengths) <= MEDIAN
    assert statistics.quantiles(lengths, n=10)[-1] <= NINE_IN_TEN
