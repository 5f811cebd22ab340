"""Vectors: the files in `fixtures/vectors/` that both languages run, and how an outcome is compared.

A file is `{about, function, cases}`, a case `{name, in}` and what comes of it:

- `out`: all of the answer, or `leaves`: what stands at some paths of it, as `"weight.value"`. A path through a list
  takes each item's (`"lines.net.u"`), or the one of a number (`"lines.0.net.u"`); null is what does not stand there.
- `error`: a refusal's code, and `data`, of which the refusal must carry at least what is given.

Numbers compare exactly unless the file says `close`: the largest relative difference. Where a file has `given`, each
`in` is only what differs from it (`laid_on`). `by_hand`, in a file or a case, says how a person came by the figures.

`python -m tests.vectors` writes what machines can; `tests/vectors.ts` reads the same files. To add a room, add
`fixtures/vectors/<room>.<topic>.json`, and the functions they name to `CLAIMS` of `tests/claims/<room>.py` and to
`claims` of `tests/claims/<room>.ts`.
"""

import importlib
import json
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from tarebook.errors import TarebookError

ROOT = Path(__file__).resolve().parents[2]
FILES = sorted((ROOT / "fixtures" / "vectors").glob("*.json"))
ROOMS = sorted(path.stem for path in (ROOT / "tests" / "claims").glob("*.py") if path.stem != "__init__")

OUTCOME = ("out", "leaves", "error", "data")

Case = dict[str, Any]
Claim = Callable[[Case], Any]
Difference = tuple[str, Any, Any]


def load(path: Path) -> dict[str, Any]:
    """A file whose cases each say all of their `in`, and how close."""
    vector: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    shared = {name: vector[name] for name in ("close", "by_hand") if name in vector}
    given = vector.get("given")
    cases = [{**shared, **case, "in": laid_on(given, case["in"]) if given else case["in"]} for case in vector["cases"]]
    return {**vector, "cases": cases}


def laid_on(given: Any, change: Any) -> Any:
    """A change laid on what is given, as a JSON merge patch (RFC 7396): null takes away.

    Laid on a list of records, it holds records by id.
    """
    if not isinstance(change, dict) or not isinstance(given, dict | list):
        return change
    if isinstance(given, list):
        records = laid_on({record["id"]: record for record in given}, change)
        return [{"id": name, **record} for name, record in records.items()]
    laid = {**given, **{name: laid_on(given.get(name), part) for name, part in change.items()}}
    return {name: part for name, part in laid.items() if change.get(name, part) is not None}


def claims() -> dict[str, Claim]:
    """Function name → what runs it, from every room."""
    found: dict[str, Claim] = {}
    for room in ROOMS:
        found |= importlib.import_module(f"tests.claims.{room}").CLAIMS
    return found


def outcome(run: Claim, case: Case) -> Case:
    """What comes of a case now, in the form it is kept in; of a refusal's data what the case tells."""
    try:
        answer = run(case["in"])
    except TarebookError as refusal:
        data = {name: refusal.data.get(name) for name in case.get("data", {})}
        return {"error": refusal.code, **({"data": data} if data else {})}
    if "leaves" in case:
        return {"leaves": {path: leaf(answer, path) for path in case["leaves"]}}
    return {"out": answer}


def changes(case: Case, new: Case) -> list[Difference]:
    """Where the new outcome is not the one kept: the place, what is found, what is kept."""
    kept = {name: case[name] for name in OUTCOME if name in case}
    return list(unlike(new, kept, case.get("close", 0.0)))


def leaf(answer: Any, path: str) -> Any:
    """What stands at a path of an answer, without the sources of its doubts unless they are asked for; or None."""
    for name in path.split("."):
        answer = _at(answer, name)
    return answer if path.endswith("sources") else _brief(answer)


def _brief(answer: Any) -> Any:
    if isinstance(answer, dict):
        return {name: _brief(part) for name, part in answer.items() if name != "sources"}
    return [_brief(item) for item in answer] if isinstance(answer, list) else answer


def _at(answer: Any, name: str) -> Any:
    if isinstance(answer, list):
        return dict(enumerate(answer)).get(int(name)) if name.isdigit() else [_at(item, name) for item in answer]
    return answer.get(name) if isinstance(answer, dict) else None


def differences(found: Any, wanted: Any, close: float = 0.0) -> list[str]:
    """Where two answers differ, one line for each place."""
    return [f"{place}: {one!r}, not {other!r}" for place, one, other in unlike(found, wanted, close)]


def unlike(found: Any, wanted: Any, close: float, place: str = "") -> Iterator[Difference]:
    """Where two outcomes differ: the place, what is found, what is wanted. What is missing is as null."""
    if isinstance(found, dict) and isinstance(wanted, dict):
        for key in {**wanted, **found}:
            yield from unlike(found.get(key), wanted.get(key), close, f"{place}.{key}".lstrip("."))
    elif isinstance(found, list | tuple) and isinstance(wanted, list) and len(found) == len(wanted):
        for at, (one, other) in enumerate(zip(found, wanted, strict=True)):
            yield from unlike(one, other, close, f"{place}.{at}")
    elif not _equal(found, wanted, close):
        yield place, found, wanted


def _equal(found: Any, wanted: Any, close: float) -> bool:
    if is_number(found) and is_number(wanted):
        return bool(abs(found - wanted) <= close * max(abs(found), abs(wanted)))
    return type(found) is type(wanted) and bool(found == wanted)


def is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
