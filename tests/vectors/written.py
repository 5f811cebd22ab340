"""How a vector file is laid out, in 120 columns: what is small stands on one line, a record has lines of its own."""

import json
from typing import Any

WIDTH = 120


def written(value: Any, before: str = "", after: int = 0) -> str:
    """JSON text. `before`: the indent; `after`: the columns that a name before and a comma behind take."""
    line = json.dumps(value, ensure_ascii=False)
    fits = len(before) + after + len(line) <= WIDTH
    if not isinstance(value, dict | list) or (fits and _deep(value) <= 2 and not _records(value)):
        return line
    inner = before + " "
    if isinstance(value, dict):
        names = [f"{json.dumps(name, ensure_ascii=False)}: " for name in value]
        members = zip(names, value.values(), strict=True)
        lines = [name + written(item, inner, len(name) + 1) for name, item in members]
        if isinstance(value.get("id"), str) and not any("\n" in line or "{" in line for line in lines):
            lines = _filled(lines, WIDTH - len(inner) - 1)
    elif any(isinstance(item, dict | list) for item in value):
        lines = [written(item, inner, 1) for item in value]
    else:
        lines = _filled([json.dumps(item, ensure_ascii=False) for item in value], WIDTH - len(inner) - 1)
    ends = "{}" if isinstance(value, dict) else "[]"
    return ends[0] + ",".join(f"\n{inner}{line}" for line in lines) + f"\n{before}{ends[1]}"


def _filled(items: list[str], width: int) -> list[str]:
    """Plain values or a record's fields, as many on a line as fit."""
    lines = items[:1]
    for item in items[1:]:
        if len(lines[-1]) + len(item) + 2 <= width:
            lines[-1] += f", {item}"
        else:
            lines.append(item)
    return lines


def _deep(value: Any) -> int:
    """How many containers stand in one another; one that holds a single thing does not count."""
    items = list(value.values()) if isinstance(value, dict) else value
    if not isinstance(items, list) or not items:
        return 0
    return max(map(_deep, items)) + (len(items) > 1)


def _records(value: Any) -> bool:
    """Whether a list holds several records, each of which deserves its line."""
    return isinstance(value, list) and len(value) > 1 and all(isinstance(item, dict) for item in value)
