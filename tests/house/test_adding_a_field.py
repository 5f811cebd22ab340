"""A field is one line: a copy of the tree gets it in a kind and runs `tarebook.contract`, and every part knows it."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from build_app import need_node

from tests.home import entry, id_of
from tests.house.tree import ROOT, tracked
from tests.typescript import PROGRAM

KIND = Path("server/tarebook/journal/kinds/car.py")
OPENING = 'CAR = Kind("car", {\n'
LINE = '    "ride_height": Field("length", "Ride height", "From the ground to the sill.", sign="positive"),\n'
GENERATED = {
    Path("server/tarebook/core/generated/records.py"),
    Path("webapp/src/generated/kinds.ts"),
    Path("webapp/src/generated/fields.ts"),
}
NEEDED = ("server", "webapp", "tests")
# The compiler refuses an `expect-error` under which there is none.
TYPES = """
import type { Car } from "./src/core/garage/records";
import type { Values } from "./src/journal/kinds";

export const typed: Values<"car"> = { ride_height: "95 mm" };
export const read = (car: Car): string | undefined => car.ride_height?.unit;
// @ts-expect-error a length is typed with its unit
export const bare: Values<"car"> = { ride_height: 95 };
// @ts-expect-error nobody may have filled it
export const always = (car: Car): string => car.ride_height.unit;
"""

Files = dict[Path, str]


def files(tree: Path) -> Files:
    """Every tracked text of code that the copy has, by its path."""
    copied = [path for path in tracked() if (tree / path).is_file() and path.suffix in (".py", ".ts", ".tsx", ".json")]
    return {path: (tree / path).read_text(encoding="utf-8") for path in copied}


@pytest.fixture(scope="module")
def tree(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the tree with one line more, and with what is generated from it."""
    copy = tmp_path_factory.mktemp("tree")
    for path in (path for path in tracked() if path.parts[0] in NEEDED):
        (copy / path).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(ROOT / path, copy / path)
    (copy / "webapp" / "node_modules").symlink_to(ROOT / "webapp" / "node_modules")
    declared = (copy / KIND).read_text(encoding="utf-8")
    assert declared.count(OPENING) == 1
    (copy / KIND).write_text(declared.replace(OPENING, OPENING + LINE), encoding="utf-8")
    python(copy, "tarebook.contract")
    return copy


def python(tree: Path, module: str, given: str = "") -> str:
    """What a module of the copy prints."""
    env = {**os.environ, "PYTHONPATH": os.pathsep.join((str(tree / "server"), str(tree)))}
    return said([sys.executable, "-m", module], tree, env, given)


def node(tree: Path, *arguments: str, given: str = "") -> str:
    """What Node prints in the copy of the app."""
    return said(["node", *arguments], tree / "webapp", need_node().env, given)


def said(command: list[str], folder: Path, env: dict[str, str], given: str) -> str:
    """What a program prints; a failure with all it said."""
    done = subprocess.run(command, cwd=folder, env=env, input=given, text=True, capture_output=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def question() -> dict[str, Any]:
    right = {"name": "Coupe", "ride_height": "95 mm"}
    return {
        "entries": [entry("right", right, kind="car"), entry("wrong", {**right, "ride_height": 95}, kind="car")],
        "cars": [{"id": "right", **right}],
        "wrong": [{"id": "wrong", **right, "ride_height": 95}],
    }


def test_no_file_changes_by_hand_but_the_one_with_the_line(tree: Path) -> None:
    before, after = files(ROOT), files(tree)
    assert {path for path, text in after.items() if text != before[path]} == {KIND} | GENERATED
    assert after[KIND].replace(LINE, "") == before[KIND]


def test_journal_core_and_calc_know_it_in_both_languages(tree: Path) -> None:
    asked = question()
    home = json.loads(python(tree, "tests.house.with_fields", json.dumps(asked)))
    half = str(tree / "tests" / "house" / "with_fields.ts")
    [phone] = json.loads(node(tree, "--input-type=module", "--eval", PROGRAM, "--", half, given=json.dumps([asked])))
    wanted = {
        "folded": {"right": {"name": "Coupe", "ride_height": "95 mm"}},
        "aside": {id_of(asked["entries"][1]): "invalid"},
        "car": {"id": "right", "name": "Coupe", "ride_height": "19/200 as mm"},
    }
    told = phone.pop("told")["ride_height"]
    refused = home.pop("refused")
    assert home == wanted
    assert phone == wanted
    assert told == {"label": "Ride height", "hint": "From the ground to the sill."}
    assert refused == [None, {"ride_height": ['Type it with its unit, like "6 3/8 oz", or give {"value", "unit"}.']}]


def test_the_compilers_know_it(tree: Path) -> None:
    (tree / "webapp" / "types.ts").write_text(TYPES, encoding="utf-8")
    settings = {"extends": "./tsconfig.pure.json", "include": ["types.ts"]}
    (tree / "webapp" / "tsconfig.types.json").write_text(json.dumps(settings), encoding="utf-8")
    node(tree, "node_modules/typescript/bin/tsc", "-p", "tsconfig.types.json")
    records = (tree / "server" / "tarebook" / "core" / "generated" / "records.py").read_text(encoding="utf-8")
    assert "    ride_height: Quantity | None\n" in records.partition("class Car:")[2].partition("class ")[0]
