"""The phone and the home computer give the same sheet of every random piece, to the last digit."""

from functools import cache
from math import sqrt
from random import Random
from typing import Any

from tarebook.core.numbers.quantity import read_mass
from tarebook.core.sheet.sheet import SheetMass, sheet
from tarebook.core.sheet.sheet_piece import read_piece
from tarebook.core.sheet.sheet_stock import MATERIALS
from tests.core.questions import Question
from tests.typescript import Answered, answers, unlike
from tests.vectors import claims

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
    text = "; ".join(", ".join(corner) for corner in corners)
    return {"form": form, "corners": random.choice((corners, text))}


def piece(random: Random) -> dict[str, Any]:
    stock: dict[str, Any] = {"thickness": length(random, 8), "measured": random.random() < 0.5}
    if random.random() < 0.2:
        stock = {"gauge": random.randrange(5, 30), "gauge_table": random.choice(("msg", "ussg"))}
    material = "steel" if "gauge" in stock else random.choice([*MATERIALS, "cork"])
    holes = [{**shape(random, 60), "count": random.randrange(1, 5)} for _ in range(random.randrange(3))]
    within = random.choice((None, "1 mm", "1/16 in"))
    return {"id": "p", **shape(random, 500), "material": material, "holes": holes, "within": within, **stock}


@cache
def sheets() -> Answered:
    random = Random(SEED)
    pieces = [piece(random) for _ in range(PIECES)]
    return [({"function": "sheet.sheet", "in": each}, CLAIMS["sheet.sheet"](each)) for each in pieces]


def test_both_languages_tell_the_same_of_every_piece():
    assert unlike(sheets()) == []
    codes = {answer.get("code", "weighed") for _, answer in sheets()}
    assert {"weighed", "sheet_crosses", "sheet_hole_outside", "sheet_corners", "sheet_gauge_unknown"} <= codes


def test_both_languages_claim_the_same_of_every_piece_and_never_more_than_is_known():
    random = Random(SEED)
    pieces = [question["in"] for question, ours in sheets() if "mass" in ours]
    asked: list[Question] = [
        {"function": "sheet_claim.claim_of", "in": {"piece": each, "mass_unit": mass, "length_unit": length_unit}}
        for each in pieces
        for mass, length_unit in [random.choice((("kg", "mm"), ("g", "mm"), ("lb", "in"), ("lb oz", "in")))]
    ]
    ours = [CLAIMS[question["function"]](question["in"]) for question in asked]
    assert answers(asked) == ours
    for each, claim in zip(pieces, ours, strict=True):
        found = sheet(read_piece(each))
        assert isinstance(found, SheetMass)
        value, within = read_mass(claim["claim"]).value, read_mass(claim["claim_within"]).value
        # The rectangle claimed is no narrower than √3 u about the worked-out mass, and not needlessly wide.
        narrowest = sqrt(3.0) * found.mass.u + abs(value - found.mass.value)
        assert narrowest * (1 - 1e-12) <= within <= max(1.15 * narrowest, narrowest + 0.01 * 0.0283495)


def choice(random: Random) -> dict[str, Any]:
    """A car, some places and what is wanted, small enough to be solved in a moment."""
    names = ("id", "x", "y", "z", "block", "most")
    blocks = random.choice(((1.0,), (2.5,), (0.467, 1.134, 2.268, 5.0)))
    places = [
        dict(zip(names, (f"p{at}", random.randrange(-60, 320) / 100, random.randrange(-60, 60) / 100,
                         random.randrange(10, 50) / 100, random.choice(blocks), random.randrange(9)), strict=True))
        for at in range(random.randrange(6))
    ]  # fmt: skip
    low, left = random.uniform(0.5, 0.55), random.uniform(0.49, 0.52)
    aim: dict[str, Any] = {"least": random.uniform(880.0, 920.0), "prefer": random.choice(("mass", "centre", "cross"))}
    aim |= {"most": aim["least"] + random.uniform(-1.0, 9.0)} if random.random() < 0.5 else {}
    aim |= {"front": [low, low + 0.02]} if random.random() < 0.6 else {}
    aim |= {"left": [left, left + 0.01]} if random.random() < 0.6 else {}
    sizes = {"height": 0.48, "wheelbase": 2.42, "track_front": 1.43, "track_rear": 1.395, "roll_front": 0.55}
    loads = {"total": 881.0, "front": 471.0, "left": 449.0}
    car = {**sizes, **{name: {"value": load, "sources": {"cal:pads": load / 1000}} for name, load in loads.items()}}
    return {"car": car, "places": places, "wanted": aim}


def test_both_languages_make_the_same_choice_of_ballast():
    random = Random(SEED)
    asked: list[Question] = [{"function": "ballast.ballast", "in": choice(random)} for _ in range(PIECES)]
    ours = [CLAIMS[question["function"]](question["in"]) for question in asked]
    assert unlike(list(zip(asked, ours, strict=True))) == []
    codes = {each["code"] for answer in ours for each in answer.get("missing", [])}
    assert {"ballast_short", "ballast_front_low", "ballast_left_high"} <= codes
    assert any(answer.get("put") and not answer["missing"] for answer in ours)
