"""Weighings and the ledger against published values (sources in `fixtures/outside/`), through a whole garage."""

import math

import pytest

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.ledger import ledger
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.weighing.claims import CLAIM_WITHIN
from tarebook.core.weighing.weighing import masses
from tests.outside.published import agrees, entries

GUM = entries("uncertainty")
SCALE = {"id": "s", "kind": "hanging", "capacity": "500 kg"}


def on_scale(*weighings, division, kind="hanging"):
    """A garage whose parts p0, p1 … are weighed once each on one scale, and put on the car."""
    parts = [{"id": f"p{n}"} for n in range(len(weighings))]
    return {
        "scales": [{**SCALE, "division": division, "kind": kind}],
        "parts": parts,
        "weighings": [
            {"id": f"w{n}", "of": f"p{n}", "scale": "s", "method": "direct", **one} for n, one in enumerate(weighings)
        ],
        "jobs": [{"id": "j", "state": "fitted"}],
        "job_parts": [{"id": f"l{n}", "job": "j", "part": part["id"], "way": "on"} for n, part in enumerate(parts)],
    }


def mass_of_first(given) -> Uncertain:
    found = masses(read_garage(given)).of["p0"].mass
    assert found is not None
    return found


def test_a_reading_of_a_one_gram_display_has_the_doubt_the_gum_gives_it():
    entry = GUM["unc.resolution"]
    found = mass_of_first(on_scale({"shown": "200 g"}, division="1 g"))
    own = found.sources["round:w0"] * 1000
    assert agrees(own, entry, "u_g")
    assert agrees(own**2, entry, "var_g2")


@pytest.mark.parametrize("method", ["difference", "container"])
def test_a_tare_is_two_roundings(method):
    # The trap the same entry names: u = d/sqrt(6).
    weighing = {"shown": "1500 g", "shown_empty": "300 g", "method": method}
    found = mass_of_first(on_scale(weighing, division="1 g"))
    assert found.sources["round:w0"] == pytest.approx(0.001 / math.sqrt(6), rel=1e-12)


def test_ten_parts_weighed_on_one_scale_carry_its_error_ten_times():
    # Ten items against one standard, each u = 0.1: a 10 kg part on a hanging scale known to 1 %.
    entry = GUM["unc.ten_resistors"]
    given = entry["inputs"]
    listed = [{"shown": "10 kg"}] * given["n"]
    net = ledger(read_garage(on_scale(*listed, division="0.00001 g"))).now.mass.net
    assert mass_of_first(on_scale(*listed, division="0.00001 g")).u == pytest.approx(given["u"])
    assert agrees(abs(net.sources["cal:s"]), entry, "correlated")
    assert agrees(net.u, entry, "correlated")


def test_ten_parts_weighed_on_ten_scales_do_not():
    entry = GUM["unc.ten_resistors"]
    whole = on_scale(*[{"shown": "10 kg"}] * 10, division="0.00001 g")
    whole["scales"] = [{**whole["scales"][0], "id": f"s{n}"} for n in range(10)]
    whole["weighings"] = [{**one, "scale": f"s{n}"} for n, one in enumerate(whole["weighings"])]
    assert agrees(ledger(read_garage(whole)).now.mass.net.u, entry, "wrong_independent")


def test_three_wheels_on_chocks_weigh_what_the_handbook_says():
    # Scale less tare, three times, summed: the subtotal of the handbook's weighing form.
    entry = entries("whole_car")["wb.weigh.tare"]
    given = entry["inputs"]
    wheels = [
        {
            "method": "container",
            "shown": f"{given[f'{wheel}_scale_lb']} lb",
            "shown_empty": f"{given[f'{wheel}_tare_lb']} lb",
        }
        for wheel in ("nose", "left", "right")
    ]
    net = ledger(read_garage(on_scale(*wheels, division="0.5 lb"))).now.mass.net
    assert net.value / 0.45359237 == pytest.approx(entry["expected"]["net_subtotal_lb"], rel=1e-15)


def test_what_nobody_weighed_has_the_contingency_of_its_maturity():
    # Off-the-shelf, modified, new [mp.esa] for worked out, quoted, guessed.
    entry = entries("claims")["mp.esa"]
    for basis, key in (("worked_out", "ots"), ("quoted", "minor_mod"), ("guessed", "new")):
        assert agrees(CLAIM_WITHIN[basis], entry, key)
        found = mass_of_first({"parts": [{"id": "p0", "claim": "10 kg", "claim_basis": basis}]})
        # A rectangle [JCGM 100:2008, 4.3.7].
        half_width = found.sources["claim:p0"] * math.sqrt(3)
        assert half_width == pytest.approx(10 * entry["expected"][key], rel=1e-12)
