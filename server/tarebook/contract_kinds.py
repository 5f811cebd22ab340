"""What the kinds become: the phone's table, the words of its forms, and the typed records of the core.

A field is a line that says only what differs from the rest, for the phone fetches and parses all of it.
"""

import json
import re
from collections.abc import Callable
from typing import Any

from tarebook.journal.kinds import COUNTED, KINDS, SCHEMA, Field, Kind

_PYTHON = {
    "mass": "Quantity", "length": "Quantity", "volume": "Quantity", "money": "Fraction", "hours": "Fraction",
    "fraction": "Fraction", "count": "int", "integer": "int", "flag": "bool", "refs": "tuple[str, ...]",
    "choices": "tuple[str, ...]",
}  # fmt: skip


def kinds_ts() -> str:
    """The table by which entries are checked and the core reads; `journal/kinds.ts` makes its types of it."""
    return f"""
export const SCHEMA = {SCHEMA};
export const TABLE = {{
{"".join(map(_kind_row, KINDS.values()))}}} as const;
"""


def _kind_row(kind: Kind) -> str:
    own = _said(fact=kind.fact, kept=not kind.core, words=kind.words)
    said = "".join(f"{name}: {_js(value)}, " for name, value in own.items())
    return f"  {kind.name}: {{ {said}fields: {_rows(kind, _checked)} }},\n"


def fields_ts() -> str:
    """What forms and lists say of a field, fetched with the first of them."""
    rows = "".join(f"  {kind.name}: {_rows(kind, _told)},\n" for kind in KINDS.values())
    return f"""
export const FIELDS = {{
{rows}}} as const;
"""


def _rows(kind: Kind, write: Callable[[Field], dict[str, Any]]) -> str:
    rows = {name: row for name, spec in kind.fields.items() if (row := write(spec))}
    return "{\n" + "".join(f"    {_name(name)}: {_js(row)},\n" for name, row in rows.items()) + "  }"


def _checked(spec: Field) -> dict[str, Any]:
    is_list = spec.type in ("choice", "choices", "ref", "refs")
    return _said(
        type=spec.type, of=list(spec.of) if is_list else None, most=spec.most if spec.type in COUNTED else None,
        required=spec.required, hangs=spec.hangs, kept=not spec.core, sign=spec.sign, likely=spec.likely,
    )  # fmt: skip


def _told(spec: Field) -> dict[str, Any]:
    words = {choice: label for choice, label in spec.of.items() if label not in ("", choice)}
    return _said(
        label=spec.label, hint=spec.hint, words=words and dict(spec.of), none=spec.none, sides=spec.sides,
        unit=spec.unit, start=spec.start, word=spec.word,
    )  # fmt: skip


def _said(**told: Any) -> dict[str, Any]:
    return {name: value for name, value in told.items() if value}


def _js(value: Any) -> str:
    """A value as a program of JavaScript has it: names without quotes where they may."""
    if not isinstance(value, dict):
        return json.dumps(value, ensure_ascii=False)
    return "{ " + ", ".join(f"{_name(name)}: {_js(each)}" for name, each in value.items()) + " }"


def _name(name: str) -> str:
    return name if re.fullmatch(r"[a-z_]\w*", name) else json.dumps(name)


def records_py() -> str:
    """The records as the core sees them, one class a kind; lists of them by plural kind are `Records`."""
    kinds = [kind for kind in KINDS.values() if kind.core]
    classes = "".join(_record_class(kind) for kind in kinds)
    lists = "".join(f"    {kind.name}s: dict[str, {class_name(kind.name)}]\n" for kind in kinds)
    shapes = "".join(f'    "{kind.name}": {class_name(kind.name)},\n' for kind in kinds)
    return f'''"""A garage's records as the core sees them, written by `python -m tarebook.contract`, not edited."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from tarebook.core.numbers.quantity import Quantity
{classes}

@dataclass(frozen=True, slots=True, kw_only=True)
class Records:
    """Every record by plural kind: dicts by id, in order of id."""

{lists}

SHAPES: dict[str, type[Any]] = {{
{shapes}}}
'''


def class_name(kind: str) -> str:
    return "".join(word.capitalize() for word in kind.split("_"))


def _record_class(kind: Kind) -> str:
    about = f'    """{kind.about}"""\n\n' if kind.about else ""
    fields = "".join(f"    {name}: {_python_type(spec)}\n" for name, spec in kind.fields.items() if spec.core)
    return f"\n\n@dataclass(frozen=True, slots=True)\nclass {class_name(kind.name)}:\n{about}    id: str\n{fields}"


def _python_type(spec: Field) -> str:
    """A field nobody filled is None; a record without one it means nothing without is none (a name is not one)."""
    return _PYTHON.get(spec.type, "str") + ("" if spec.required and spec.type != "text" else " | None")
