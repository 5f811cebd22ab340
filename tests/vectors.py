"""Vectors: the files in `fixtures/vectors/` that both languages run, and how an outcome is compared.

A file is `{about, function, cases}`; a case is `{name, in, out}` or `{name, in, error}` with an error's code (and
`data`, of which the refusal must carry at least what is given). Numbers compare exactly, unless the case says
`close`: the largest relative difference. To add a room, add `fixtures/vectors/<room>.<topic>.json`, and the
functions they name to `CLAIMS` of `tests/claims/<room>.py` and to `claims` of `tests/claims/<room>.ts`.
"""

import importlib
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[1]
FILES = sorted((ROOT / "fixtures" / "vectors").glob("*.json"))
ROOMS = sorted(path.stem for path in (ROOT / "tests" / "claims").glob("*.py") if path.stem != "__init__")

Claim = Callable[[dict[str, Any]], Any]


def load(path: Path) -> dict[str, Any]:
    content: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return content


def claims() -> dict[str, Claim]:
    """Function name → what runs it, from every room."""
    found: dict[str, Claim] = {}
    for room in ROOMS:
        found |= importlib.import_module(f"tests.claims.{room}").CLAIMS
    return found


def differences(found: Any, wanted: Any, close: float = 0.0, place: str = "out") -> list[str]:
    """Where two outcomes differ, one line for each place."""
    if isinstance(found, dict) and isinstance(wanted, dict):
        both = [key for key in wanted if key in found]
        alone = [f"{place}.{key}: only on one side" for key in sorted(found.keys() ^ wanted.keys())]
        return alone + [line for key in both for line in differences(found[key], wanted[key], close, f"{place}.{key}")]
    if isinstance(found, list | tuple) and isinstance(wanted, list) and len(found) == len(wanted):
        pairs = enumerate(zip(found, wanted, strict=True))
        return [line for at, (one, other) in pairs for line in differences(one, other, close, f"{place}[{at}]")]
    return [] if _equal(found, wanted, close) else [f"{place}: {found!r}, not {wanted!r}"]


def _equal(found: Any, wanted: Any, close: float) -> bool:
    if _is_number(found) and _is_number(wanted):
        return bool(abs(found - wanted) <= close * max(abs(found), abs(wanted)))
    return type(found) is type(wanted) and bool(found == wanted)


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
