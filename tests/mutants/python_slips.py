"""Where Python's core can be made wrong: every slip a hand could make in a module, as a splice of its text.

A slip changes one token or one condition and nothing else. What says nothing at run time (annotations, docstrings,
imports, decorators) is left alone, and so is the inside of an f-string, whose places older Pythons do not tell.
"""

import ast
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

from tests.mutants.slip import Slip

# Each operator's slip: the boundary of an order, the opposite of an equality, the sign or the inverse of a sum.
SWAPS = {
    "<": "<=", "<=": "<", ">": ">=", ">=": ">", "==": "!=", "!=": "==", "is": "is not", "is not": "is",
    "in": "not in", "not in": "in", "and": "or", "or": "and", "+": "-", "-": "+", "*": "/", "/": "*", "//": "/",
    "%": "*", "**": "*", "|": "&", "&": "|", "^": "|", "@": "*", "min": "max", "max": "min", "any": "all", "all": "any",
}  # fmt: skip
COMMUTES = {"min", "max", "add", "multiply", "dot", "gcd"}  # swapping the arguments of these changes nothing
SIGNS = {
    ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">=", ast.Eq: "==", ast.NotEq: "!=", ast.Is: "is",
    ast.IsNot: "is not", ast.In: "in", ast.NotIn: "not in", ast.And: "and", ast.Or: "or", ast.Add: "+", ast.Sub: "-",
    ast.Mult: "*", ast.Div: "/", ast.FloorDiv: "//", ast.Mod: "%", ast.Pow: "**", ast.BitOr: "|", ast.BitAnd: "&",
    ast.BitXor: "^", ast.MatMult: "@",
}  # fmt: skip
Splice = tuple[int, int, str]  # from character, to character, what stands there instead


def slips(files: list[str]) -> Iterator[Slip]:
    """Every slip in each of the files."""
    for file in files:
        module = Module(Path(file).read_text(encoding="utf-8"))
        yield from (Slip(file, *splice) for node in spoken(module.tree) for splice in module.slips(node))


class Module:
    """One module's text with its tree."""

    def __init__(self, source: str) -> None:
        self.source = source
        self.tree = ast.parse(source)
        self.rows = [row.encode() for row in source.splitlines(keepends=True)]
        self.before = [0]  # characters before each row
        for row in self.rows:
            self.before.append(self.before[-1] + len(row.decode()))

    def start(self, node: ast.AST) -> int:
        return self.at(node.lineno, node.col_offset)  # type: ignore[attr-defined]

    def end(self, node: ast.AST) -> int:
        return self.at(node.end_lineno, node.end_col_offset)  # type: ignore[attr-defined]

    def at(self, line: int, byte: int) -> int:
        return self.before[line - 1] + len(self.rows[line - 1][:byte].decode())

    def functions(self) -> Iterator[tuple[str, ast.FunctionDef]]:
        """The functions of the module and of its classes, with their qualified names."""
        for node in self.tree.body:
            for inner in node.body if isinstance(node, ast.ClassDef) else [node]:
                if isinstance(inner, ast.FunctionDef):
                    yield f"{node.name}.{inner.name}" if isinstance(node, ast.ClassDef) else inner.name, inner

    def place(self, at: int) -> str:
        """The function in whose body a character stands, or nothing."""
        bodies = ((name, each.body[0], each.body[-1]) for name, each in self.functions())
        return next((name for name, first, last in bodies if self.start(first) <= at < self.end(last)), "")

    def instead(self, node: ast.AST, *new: str) -> Iterator[Splice]:
        yield from ((self.start(node), self.end(node), each) for each in new)

    def between(self, one: ast.AST, other: ast.AST, operator: ast.AST) -> Iterator[Splice]:
        """The sign between two operands, swapped; brackets that stand there too stay."""
        first, *_, last = [*(sign := SIGNS[type(operator)]).split(), *sign.split()[-1:]]
        at = self.source.index(first, self.end(one), self.start(other))
        yield at, self.source.index(last, at) + len(last), SWAPS[sign]

    def slips(self, node: ast.AST) -> Iterator[Splice]:
        """The slips of this very node."""
        match node:
            case ast.Compare():
                for (one, other), operator in zip(pairwise([node.left, *node.comparators]), node.ops, strict=True):
                    yield from self.between(one, other, operator)
            case ast.BoolOp():
                for one, other in pairwise(node.values):
                    yield from self.between(one, other, node.op)
            case ast.BinOp():
                yield from self.between(node.left, node.right, node.op)
            case ast.AugAssign():
                yield from self.between(node.target, node.value, node.op)
            case ast.UnaryOp(op=ast.Not() | ast.USub() as operator):
                yield self.start(node), self.start(node) + (3 if isinstance(operator, ast.Not) else 1), ""
            case ast.Constant(value=bool() as value):
                yield from self.instead(node, str(not value))
            case ast.Constant(value=int() | float() as value):
                yield from self.instead(node, str(value + 1))
            case ast.Constant(value=str() as value):
                yield from self.instead(node, '""' if value else '"x"')
            case ast.JoinedStr():
                yield from self.instead(node, '""')
            case ast.If() | ast.IfExp():
                yield from self.instead(node.test, "True", "False")
            case ast.While():
                yield from self.instead(node.test, "False")
            case ast.comprehension():
                for test in node.ifs:
                    yield from self.instead(test, "True")
            case ast.Raise() | ast.Expr(value=ast.Call()):
                yield from self.instead(node, "pass")
            case ast.Call():
                yield from self.slips_of_call(node)

    def slips_of_call(self, node: ast.Call) -> Iterator[Splice]:
        if isinstance(node.func, ast.Name) and node.func.id in SWAPS:
            yield from self.instead(node.func, SWAPS[node.func.id])
        commutes = ast.unparse(node.func).rpartition(".")[2].strip("_") in COMMUTES
        if len(node.args) > 1 and not commutes and not any(isinstance(each, ast.Starred) for each in node.args[:2]):
            a, b, c, d = (place(each) for each in node.args[:2] for place in (self.start, self.end))
            yield a, d, self.source[c:d] + self.source[b:c] + self.source[a:b]


def spoken(node: ast.AST) -> Iterator[ast.AST]:
    """The nodes that say something at run time."""
    yield node
    silent = {"values"} if isinstance(node, ast.JoinedStr) else {"annotation", "returns", "decorator_list"}
    for name, value in ast.iter_fields(node):
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and name not in silent and not is_silent(child):
                yield from spoken(child)


def is_silent(node: ast.AST) -> bool:
    """Docstrings, what only a type checker reads (`__all__` too), and the check that two lists are of a length."""
    match node:
        case ast.keyword(arg="strict"):
            return True
        case ast.Expr(value=ast.Constant()) | ast.Assign(targets=[ast.Name(id="__all__")]):
            return True
        case ast.Subscript(value=ast.Name(id="Literal" | "Callable" | "dict" | "list" | "tuple")):
            return True
        case ast.Call(func=ast.Name(id="cast" | "TypeVar")):
            return True
    return False
