"""The phone and the home computer give the same sheet of every random piece, to the last digit."""

from pathlib import Path
from random import Random
from typing import Any

from tarebook.core.sheet_stock import MATERIALS
from tests.core.questions import Question
from tests.typescript import answers
from tests.vectors import claims, differences

SEED, PIECES = 20_261_125, 400
CLAIMS = claims()


def length(random: Random, most: int) -> str:
    unit, step = random.choice((("mm", 1), ("cm", 10), ("in", 25)))
    return f"{random.randrange(1, most * 10 // step) / 10} {unit}"


def shape(random: Random, most: int) -> dict[str, Any]:
    form = random.choice(("rectangle", "circle", "polygon"))
    if form == "rectangle":
        return {"form": form, "width": length(random, most), "height": length(random, most)}
    if form == "circle":
        return {"form": form, "diameter": length(random, most)}
    corners = [[length(random, most), length(random, most)] for _ in range(random.randrange(2, 7))]
    return {"form": form, "corners": corners}


def piece(random: Random) -> dict[str, Any]:
    stock: dict[str, Any] = {"thickness": length(random, 8), "measured": random.random() < 0.5}
    if random.random() < 0.2:
        stock = {"gauge": random.randrange(5, 30), "gauge_table": random.choice(("msg", "ussg"))}
    material = "steel" if "gauge" in stock else random.choice([*MATERIALS, "cork"])
    holes = [{**shape(random, 60), "count": random.randrange(1, 5)} for _ in range(random.randrange(3))]
    within = random.choice((None, "1 mm", "1/16 in"))
    return {"id": "p", **shape(random, 500), "material": material, "holes": holes, "within": within, **stock}


def test_both_languages_tell_the_same_of_every_piece(tmp_path: Path):
    random = Random(SEED)
    asked: list[Question] = [{"function": "sheet.sheet", "in": piece(random)} for _ in range(PIECES)]
    ours = [CLAIMS[question["function"]](question["in"]) for question in asked]
    told = answers(asked, tmp_path)
    unlike = [(question, lines) for question, one, other in zip(asked, ours, told, strict=True)
              if (lines := differences(other, one))]  # fmt: skip
    assert unlike == []
    codes = {answer.get("code", "weighed") for answer in ours}
    assert {"weighed", "sheet_crosses", "sheet_hole_outside", "sheet_corners", "sheet_gauge_unknown"} <= codes
