"""Worked out against weighed, by hand; and a claim that can be read back; and holes that do fit are never refused."""

from math import cos, hypot, pi, sin, sqrt
from random import Random

import pytest

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import read_mass
from tarebook.core.sheet.sheet import SheetMass, sheet
from tarebook.core.sheet.sheet_claim import claim_of
from tarebook.core.sheet.sheet_piece import read_piece
from tarebook.core.weighing.claims import claimed
from tarebook.core.weighing.weighing import masses
from tarebook.core.weighing.worked_out import Against, against, against_sentence

PLATE = {"id": "p", "material": "aluminium", "thickness": "1.5 mm", "width": "600 mm", "height": "700 mm"}


def compared(shown: str, claim: str = "1.72 kg", within: str = "0.06 kg") -> Against:
    garage = read_garage(
        {
            "parts": [{"id": "p", "claim": claim, "claim_basis": "worked_out", "claim_within": within}],
            "scales": [{"id": "s", "kind": "kitchen", "division": "10 g"}],
            "scale_checks": [{"id": "c", "scale": "s", "known": "2 kg", "known_within": "0 kg", "shown": "2 kg"}],
            "weighings": [{"id": "w", "of": "p", "method": "direct", "shown": shown, "scale": "s"}],
        }
    )
    found = against(garage.parts["p"], masses(garage).of["p"])
    assert found is not None
    return found


def test_the_difference_carries_the_doubt_of_both():
    found = compared("1.84 kg")
    # The rectangle claimed, one look at 10 g, and a gain known from one look at 2 kg (10 g again), by hand.
    by_hand = sqrt((0.06 / sqrt(3)) ** 2 + 0.01**2 / 12 + (1.84 / 2) ** 2 * 0.01**2 / 12)
    assert found.difference.value == pytest.approx(0.12, abs=1e-12)
    assert found.difference.u == pytest.approx(by_hand, rel=1e-4)


def test_more_than_both_allow_is_a_question_and_less_is_none():
    assert compared("1.84 kg").beyond
    assert "0.12 kg heavier than worked out, ± 0.07 kg: thicker than nominal" in against_sentence(
        compared("1.84 kg"), "kg"
    )
    near = compared("1.76 kg")
    assert not near.beyond
    assert "?" not in against_sentence(near, "kg")
    assert "lighter than worked out" in against_sentence(compared("1.60 kg"), "kg")


def test_a_plate_is_claimed_as_it_was_worked_out():
    piece = read_piece(PLATE)
    found = sheet(piece)
    assert isinstance(found, SheetMass)
    claim = claim_of(piece, found, "kg", "mm")
    assert claim.claim_from == "1.5 mm aluminium, 0.42 m²"
    part = read_garage({"parts": [{"id": "p", "claim_basis": "worked_out", "claim": claim.claim,
                                   "claim_within": claim.claim_within}]}).parts["p"]  # fmt: skip
    mass, basis = claimed(part)
    assert (basis, mass is not None) == ("worked_out", True)
    assert mass is not None
    assert mass.value == pytest.approx(0.6 * 0.7 * 0.0015 * 2735.0, rel=1e-3)
    assert found.mass.u <= mass.u <= 1.02 * found.mass.u
    assert read_mass(claim.claim_within).value >= sqrt(3.0) * found.mass.u


def test_a_hole_that_lies_inside_at_any_angle_is_never_refused():
    random = Random(20261125)
    tried = 0
    while tried < 300:
        wide, high = (random.uniform(50.0, 500.0) for _ in range(2))
        across, up = random.uniform(1.0, hypot(wide, high)), random.uniform(1.0, min(wide, high))
        turn = random.uniform(0.0, pi / 2)
        if across * cos(turn) + up * sin(turn) >= wide or across * sin(turn) + up * cos(turn) >= high:
            continue
        tried += 1
        hole = {"width": f"{across:.6f} mm", "height": f"{up:.6f} mm"}
        outline = {"width": f"{wide:.6f} mm", "height": f"{high:.6f} mm"}
        assert isinstance(sheet(read_piece({**PLATE, **outline, "holes": [hole]})), SheetMass)
