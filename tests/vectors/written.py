"""How a vector file is laid out: what is small stands on one line, a record on a line of its own, 120 columns."""

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
    if isinstance(value, list):
        return _block("[]", [written(item, inner, 1) for item in value], before)
    names = [f"{json.dumps(name, ensure_ascii=False)}: " for name in value]
    members = zip(names, value.values(), strict=True)
    return _block("{}", [name + written(item, inner, len(name) + 1) for name, item in members], before)


def _block(ends: str, items: list[str], before: str) -> str:
    """Items that are plain numbers fill their lines; others have a line each."""
    lines: list[str] = []
    for item in items:
        numbers = lines and item[0] in "-0123456789" and lines[-1][0] in "-0123456789"
        if numbers and len(before) + len(lines[-1]) + len(item) + 4 <= WIDTH:
            lines[-1] += f", {item}"
        else:
            lines.append(item)
    body = ",\n".join(f"{before} {line}" for line in lines)
    return f"{ends[0]}\n{body}\n{before}{ends[1]}"


def _deep(value: Any) -> int:
    """How many containers stand in one another."""
    items = value.values() if isinstance(value, dict) else value if isinstance(value, list) else None
    return 0 if items is None else 1 + max(map(_deep, items), default=0)


def _records(value: Any) -> bool:
    """Whether a list holds several records, each of which deserves its line."""
    return isinstance(value, list) and len(value) > 1 and all(isinstance(item, dict) for item in value)
