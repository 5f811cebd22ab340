"""One entry: reading its JSON text, and checking it by the table of kinds.

An entry is immutable. It is read the same way by the phone (`webapp/src/journal/entries.ts`), so nothing here
may lean on what only Python does: numbers are whole numbers as JavaScript has them, and text must be well formed.
"""

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from tarebook.journal.kinds import KINDS, SCHEMA, Field, Kind

ENTRY_BYTES = 64 * 1024
DEEPEST = 20  # an entry nests three deep; more than this is no entry, and would exhaust a recursive reader
LARGEST = 2**53 - 1
TYPED_CHARACTERS = 64
# What every record may carry: that it was deleted, and what hung on it as far as its writer knew (ids of records).
TOMBSTONE = ("deleted", "hung")
MOST_HUNG = 1000

_ID = re.compile(r"[!-~]{1,80}")
_HASH = re.compile(r"[0-9a-f]{64}")
_STRING = re.compile(r'"(?:[^"\\]|\\.)*"?', re.DOTALL)  # one without an end runs to the end: linear on any text
_LONE_SURROGATE = re.compile("[\ud800-\udfff]")


@dataclass(frozen=True)
class Entry:
    """`base`: the heads of the record as the writer saw them. `made_at` is for people, never for order."""

    id: str
    device: str
    writer: str
    n: int
    kind: str
    record: str
    set: dict[str, Any]
    base: tuple[str, ...]
    photos: tuple[str, ...]
    made_at: str
    schema: int


def well_formed(text: str) -> str:
    """The text with lone surrogates replaced, as a browser does when it encodes UTF-8."""
    if not _LONE_SURROGATE.search(text):
        return text
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")


def read(text: str) -> Entry | None:
    """The entry in a text, or None when it is not JSON or not an entry."""
    try:
        raw = load_json(text)
    except ValueError:
        return None
    return _entry(raw) if isinstance(raw, dict) else None


def load_json(text: str) -> Any:
    """JSON as a browser reads it. Raises ValueError: not JSON, NaN and its like, or nested deeper than `DEEPEST`."""
    if text.count("[") + text.count("{") > DEEPEST and _depth(text) > DEEPEST:
        raise ValueError("nested too deeply")
    return _DECODER.decode(text)


def why_not_json(problem: ValueError) -> str:
    """What is wrong with a text that `load_json` refused, with the place where it is known."""
    if isinstance(problem, json.JSONDecodeError):
        return f"{problem.msg}, in line {problem.lineno}, column {problem.colno}"
    return "it is not UTF-8" if isinstance(problem, UnicodeDecodeError) else str(problem)


def _depth(text: str) -> int:
    depth = deepest = 0
    for mark in re.findall(r"[\[\]{}]", _STRING.sub("", text)):
        depth += 1 if mark in "[{" else -1
        deepest = max(deepest, depth)
    return deepest


def _whole(digits: str) -> int | float:
    return int(digits) if len(digits) <= 15 else _number(digits)


def _number(digits: str) -> int | float:
    number = float(digits)
    return int(number) if abs(number) <= LARGEST and number.is_integer() else number


def _no_constant(word: str) -> None:
    raise ValueError(f"{word} is not JSON")


_DECODER = json.JSONDecoder(parse_int=_whole, parse_float=_number, parse_constant=_no_constant)


def _entry(raw: dict[str, Any]) -> Entry | None:
    base, photos, fields = raw.get("base"), raw.get("photos", []), raw.get("set")
    names = [raw.get(key) for key in ("id", "device", "writer", "kind", "record")]
    made_at, schema, n = raw.get("made_at", ""), raw.get("schema", 1), raw.get("n")
    if not (all(map(is_id, names)) and _ids(base) and _ids(photos) and isinstance(fields, dict)):
        return None
    if not (_is_whole(n, 0, LARGEST) and _is_whole(schema, 1, LARGEST) and _is_text(made_at, TYPED_CHARACTERS)):
        return None
    ident, device, writer, kind, record = names
    return Entry(ident, device, writer, n, kind, record, fields, tuple(base), tuple(photos), made_at, schema)  # type: ignore[arg-type]


def problem(entry: Entry) -> str | None:
    """Why this entry cannot be folded whatever else the journal holds: `newer_schema`, `unknown_kind`, `invalid`."""
    if entry.schema > SCHEMA:
        return "newer_schema"
    kind = KINDS.get(entry.kind)
    if kind is None:
        return "unknown_kind"
    return None if all(_fits(kind, name, value) for name, value in known(kind, entry.set).items()) else "invalid"


def known(kind: Kind, fields: Mapping[str, Any]) -> dict[str, Any]:
    """Those of the fields that this program knows; the others stay in the entry, for a program that does."""
    own = {*kind.fields, "deleted"} if kind.fact else {*kind.fields, *TOMBSTONE}
    return {name: value for name, value in fields.items() if name in own}


def lacks_required(kind: Kind, fields: dict[str, Any]) -> bool:
    """Whether a record's first entry leaves out a field that it must set."""
    return any(spec.required and fields.get(name) is None for name, spec in kind.fields.items())


def _fits(kind: Kind, name: str, value: Any) -> bool:
    if name == "deleted":
        return isinstance(value, bool)
    if name == "hung":
        return value is None or (_ids(value) and len(value) <= MOST_HUNG)
    spec = kind.fields[name]
    return not spec.required if value is None else _CHECKS[spec.type](spec, value)


def is_id(value: Any) -> bool:
    """Names are 1 to 80 printable ASCII characters without a space."""
    return isinstance(value, str) and _ID.fullmatch(value) is not None


def _ids(value: Any) -> bool:
    return isinstance(value, list) and all(map(is_id, value))


def _is_text(value: Any, most: int) -> bool:
    """Characters are Unicode code points; NUL and lone surrogates fit no database and no file."""
    return isinstance(value, str) and len(value) <= most and "\0" not in value and not _LONE_SURROGATE.search(value)


def _is_whole(value: Any, least: int, most: int) -> bool:
    return isinstance(value, int) and not isinstance(value, bool) and least <= value <= most


def _text(spec: Field, value: Any) -> bool:
    return _is_text(value, spec.most)


def _typed(_spec: Field, value: Any) -> bool:
    """What a person typed is never refused here; the reader of quantities says what it cannot read."""
    return _is_text(value, TYPED_CHARACTERS)


def _choice(spec: Field, value: Any) -> bool:
    return isinstance(value, str) and value in spec.of


def _choices(spec: Field, value: Any) -> bool:
    return isinstance(value, list) and len(value) <= spec.most and all(_choice(spec, item) for item in value)


_CHECKS: dict[str, Callable[[Field, Any], bool]] = {
    "text": _text,
    "mass": _typed,
    "length": _typed,
    "volume": _typed,
    "money": _typed,
    "hours": _typed,
    "fraction": _typed,
    "moment": _typed,
    "count": lambda spec, value: _is_whole(value, 1, spec.most),
    "integer": lambda spec, value: _is_whole(value, 0, spec.most),
    "flag": lambda _spec, value: isinstance(value, bool),
    "choice": _choice,
    "choices": _choices,
    "ref": lambda _spec, value: is_id(value),
    "refs": lambda spec, value: _ids(value) and len(value) <= spec.most,
    "hash": lambda _spec, value: isinstance(value, str) and _HASH.fullmatch(value) is not None,
}
