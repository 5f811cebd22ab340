"""Arrows run one way: a room takes only from the rooms named before it, and a screen nothing from inside another.

Every import counts, late and type-only ones too. The core's rooms have one order for both languages.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.house.tree import ROOT, tracked

SERVER, PHONE = Path("server/tarebook"), Path("webapp/src")
CORE = [
    f"core/{room}" for room in (
        "numbers", "garage", "words", "weighing", "ledger", "whole_car", "fusion", "causes", "standing", "sheet",
        "balance", "ballast", "fuel_run",
    )
]  # fmt: skip
PARTS = [
    f"parts/{room}" for room in (
        "words", "install", "frame", "controls", "history", "conflicts", "forms", "drawing", "figures", "photos",
        "takeout", "joining", "sheet", "weighIn", "weighing", "weighPart", "repeats",
        "causes",
    )
]  # fmt: skip
ROOMS = {
    SERVER: [
        "version", "network", "errors", "settings", "journal", CORE[0], "core/generated", *CORE[1:], "store", "garage",
        "cars", "devices", "door", "demo", "importing", "papers", "api", "contract_kinds", "contract", "__init__",
        "cli", "__main__",
    ],
    PHONE: [
        "generated", "errors", "laterErrors", "own", "journal", *CORE, "store", "wire", "garage", "answers", "account",
        "route", "sync", *PARTS, "screens", "App", "look", "main", "sw",
    ],
}  # fmt: skip
IMPORTED = re.compile(r"""(?:from|import)\s*\(?\s*["'](\.[^"']+)["']""")
Arrow = tuple[Path, Path]


def files(half: Path, *suffixes: str) -> list[Path]:
    """Tracked files of one half of the house, relative to it."""
    return [path.relative_to(half) for path in tracked() if path.is_relative_to(half) and path.suffix in suffixes]


def room(path: Path) -> str:
    """The room a file lies in; core/ and parts/ are made of rooms."""
    first, *rest = path.with_suffix("").parts
    if first in ("core", "parts") and rest != ["__init__"]:
        within = rest[0] if first == "parts" else re.sub("[A-Z]", lambda letter: f"_{letter[0].lower()}", rest[0])
        return f"{first}/{within}"
    return first


def server_arrows() -> Iterator[Arrow]:
    """Who imports, and what, in the server's code."""
    own = {path.stem for path in (ROOT / SERVER).iterdir()}
    for file in files(SERVER, ".py"):
        for node in ast.walk(ast.parse((ROOT / SERVER / file).read_text(encoding="utf-8"))):
            for name in (name for name in imported(node) if name.startswith("tarebook.")):
                path = Path(*name.split(".")[1:])
                yield file, path if path.parts[0] in own else Path("__init__")


def imported(node: ast.AST) -> list[str]:
    """The full names of the modules a statement imports."""
    if isinstance(node, ast.ImportFrom):
        return [f"tarebook.{alias.name}" for alias in node.names] if node.module == "tarebook" else [node.module or ""]
    return [alias.name for alias in node.names] if isinstance(node, ast.Import) else []


def phone_arrows() -> Iterator[Arrow]:
    """Who imports, and what, in the phone's code."""
    for file in files(PHONE, ".ts", ".tsx"):
        for name in IMPORTED.findall((ROOT / PHONE / file).read_text(encoding="utf-8")):
            yield file, (ROOT / PHONE / file.parent / name).resolve().relative_to(ROOT / PHONE)


@pytest.mark.parametrize(("half", "arrows"), [(SERVER, server_arrows()), (PHONE, phone_arrows())], ids=str)
def test_a_room_takes_only_from_the_rooms_named_before_it(half: Path, arrows: Iterator[Arrow]):
    order = ROOMS[half]
    assert {room(file) for file in files(half, ".py", ".ts", ".tsx", ".css")} - {"core"} == set(order)
    named = [(order.index(room(one)), order.index(room(other)), f"{one} -> {other}") for one, other in arrows]
    assert [arrow for one, other, arrow in named if one < other] == []


def screen(path: Path) -> str | None:
    """The screen whose folder a file lies in; None outside of every screen."""
    return path.parts[1] if path.parts[0] == "screens" and len(path.parts) > 2 else None


def test_a_screen_takes_nothing_from_inside_another():
    arrows = [(one, other) for one, other in phone_arrows() if screen(one) and other.parts[0] == "screens"]
    assert arrows  # a screen's own files
    assert [f"{one} -> {other}" for one, other in arrows if screen(other) != screen(one)] == []
