"""Published values in `fixtures/outside/`: each entry names its source, and what was printed with which tolerance."""

import json
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "outside"


def entries(name: str) -> dict[str, dict[str, Any]]:
    """Entry id → entry of one file."""
    content = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    return {entry["id"]: entry for entry in content["entries"]}


def agrees(found: float, entry: dict[str, Any], key: str) -> bool:
    """True when `found` is what the source printed under `key`, within the entry's tolerance (0: to the last bit)."""
    tolerance = entry["tolerance"]
    allowed = tolerance.get(key, tolerance.get("*", 0.0)) if isinstance(tolerance, dict) else tolerance
    return bool(abs(found - entry["expected"][key]) <= allowed)
