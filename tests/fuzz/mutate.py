"""Ways of breaking things: bytes as a failing disk or network leaves them, JSON as a slip or an enemy writes it."""

from __future__ import annotations

import copy
import json
from random import Random
from typing import Any

NAMES = ("__proto__", "constructor", "toString", "hasOwnProperty", "", "id", "set", "kind", "deleted", "a\0b", "\ud800")
TEXTS = (
    *NAMES,
    "NaN",
    "null",
    "0",
    "-0",
    "1e999",
    "\x1b[2J",
    "\u202e",
    "\ufeff",
    "😀" * 40,
    "x" * 70_000,
    "é" * 500,
    "../../etc",
    "6 3/8 oz",
    "1" * 400,
    "9" * 20 + " kg",
    "1/0 kg",
    "1e-400 g",
    "½½ lb",
    "=1+1",
    "\r\n",
    "'\"<script>",
    "ß",
    "kg",
    "12 kg " * 900,
    "\u2028",
    "home",
)
NUMBERS = (0, -1, 1, 2**31, 2**53 - 1, 2**53, 2**63, 2**64, 10**30, 0.1, -0.0, 1e308, 5e-324, 1e22, 3.0, 1.5)
RAW = (
    "1e999",
    "-1e999",
    "1E400",
    "0" * 50 + "1",
    "9" * 5000,
    "-",
    "NaN",
    "Infinity",
    "01",
    "1.",
    '"\\ud800"',
    '"\\u0000"',
)


def damaged(random: Random, data: bytes) -> bytes:
    """The bytes with one to four things done to them."""
    broken = bytearray(data)
    for _ in range(random.choice((1, 1, 2, 4))):
        at = random.randrange(len(broken) or 1)
        length = min(random.choice((1, 4, 64, 4096)), len(broken) - at)
        match random.randrange(7):
            case 0 | 1 if broken:
                broken[at] ^= 1 << random.randrange(8)
            case 2:
                del broken[at:]
            case 3:
                broken[at : at + length] = bytes(length)
            case 4:
                broken[at:at] = broken[at : at + length]
            case 5:
                broken[at : at + length] = random.randbytes(length)
            case 6:
                del broken[at : at + length]
    return bytes(broken)


def value(random: Random, depth: int = 0) -> Any:
    """Any JSON value, hostile ones above all."""
    match random.randrange(8 if depth < 2 else 6):
        case 0 | 1:
            return random.choice(TEXTS)
        case 2 | 3:
            return random.choice(NUMBERS)
        case 4:
            return random.choice((None, True, False, [], {}, "", [[]], [None], {"": None}))
        case 5:
            return nested(random.choice((3, 19, 20, 21, 30)), random.random() < 0.5)
        case 6:
            return [value(random, depth + 1) for _ in range(random.choice((1, 2, 2, 2, 3, 40)))]
    return {random.choice(NAMES): value(random, depth + 1) for _ in range(2)}


def nested(depth: int, in_lists: bool) -> Any:
    found: Any = None
    for _ in range(depth):
        found = [found] if in_lists else {"set": found}
    return found


def changed(random: Random, tree: Any) -> Any:
    """A copy of a JSON value with one to three places of it changed."""
    tree = copy.deepcopy(tree)
    for _ in range(random.choice((1, 1, 1, 2, 3))):
        tree = _changed_once(random, tree)
    return tree


def _changed_once(random: Random, tree: Any) -> Any:
    inside: Any = tree
    if not isinstance(tree, list | dict) or not tree or random.random() < 0.02:
        return value(random)
    while True:
        keys = list(inside) if isinstance(inside, dict) else list(range(len(inside)))
        key = random.choice(keys)
        if isinstance(inside[key], list | dict) and inside[key] and random.random() < 0.8:
            inside = inside[key]
            continue
        match random.randrange(6):
            case 0:
                del inside[key]
            case 1 if isinstance(inside, dict):
                inside[random.choice(NAMES)] = inside.pop(key)
            case 1:
                inside.append(copy.deepcopy(inside[key]))
            case 2 if isinstance(inside, dict):
                inside[random.choice(NAMES)] = value(random)
            case _:
                inside[key] = value(random)
        return tree


def written(random: Random, tree: Any) -> str:
    """A JSON text of the value, one in three not as any writer would write it."""
    text = json.dumps(tree, ensure_ascii=random.random() < 0.5)
    match random.randrange(12):
        case 0:
            return text.replace(": ", f": {random.choice(RAW)}, {json.dumps(random.choice(NAMES))}: ", 1)
        case 1 if isinstance(tree, dict) and tree:
            twice = random.choice(list(tree))
            return f"{text[:-1]}, {json.dumps(twice)}: {json.dumps(value(random))}}}"
        case 2:
            return damaged(random, text.encode("utf-8", "surrogatepass")).decode("utf-8", "replace")
        case 3:
            return "[" * random.choice((5, 21, 100_000)) + text
    return text
