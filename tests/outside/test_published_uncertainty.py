"""Uncertainty against the examples of the GUM (sources in `fixtures/outside/uncertainty.json`)."""

import math

from tarebook.core.numbers import uncertain
from tarebook.core.numbers.uncertain import Uncertain
from tests.outside.published import agrees, entries

GUM = entries("uncertainty")


def test_one_look_at_a_display():
    entry = GUM["unc.resolution"]
    look = uncertain.resolution(entry["inputs"]["d_g"])
    assert agrees(look, entry, "u_g")
    assert agrees(look**2, entry, "var_g2")


def test_a_tare_is_two_looks():
    division = GUM["unc.resolution"]["inputs"]["d_g"]
    full, empty = (Uncertain(value, {f"round:{value}": uncertain.resolution(division)}) for value in (500.0, 80.0))
    # GUM F.2.2.1 twice: d/sqrt(6), the trap this entry names.
    assert math.isclose(uncertain.subtract(full, empty).u, division / math.sqrt(6), rel_tol=1e-15)


def test_a_rectangle_of_known_half_width():
    entry = GUM["unc.rect.cu"]
    found = uncertain.rectangular(entry["inputs"]["half_width"])
    assert agrees(found, entry, "u")
    assert agrees(found**2, entry, "var")
    assert agrees(uncertain.rectangular(GUM["unc.tri"]["inputs"]["half_width_C"]), GUM["unc.tri"], "rect")


def test_a_specification_and_a_scatter_combine_in_quadrature():
    entry = GUM["unc.dvm"]
    given = entry["inputs"]
    parts = [Uncertain(given[name]) for name in ("reading_V", "range_V")]
    half_width = uncertain.weighted_sum(parts, [given["spec_reading_ppm"], given["spec_range_ppm"]]).value
    reading = Uncertain(given["reading_V"], {"spec": uncertain.rectangular(half_width)})
    assert agrees(half_width, entry, "a_uV")
    assert agrees(reading.u, entry, "u_uV")
    assert agrees(uncertain.add(reading, Uncertain(0.0, {"scatter": given["type_A_uV"]})).u, entry, "uc_uV")


def test_ten_items_calibrated_against_one_standard_add_fully():
    entry = GUM["unc.ten_resistors"]
    count, u = entry["inputs"]["n"], entry["inputs"]["u"]
    shared = uncertain.total([Uncertain(1000.0, {"standard": u}) for _ in range(count)])
    apart = uncertain.total([Uncertain(1000.0, {f"standard {n}": u}) for n in range(count)])
    assert agrees(shared.u, entry, "correlated")
    assert agrees(apart.u, entry, "wrong_independent")


def test_four_inputs_of_unit_deviation():
    entry = GUM["unc.s1.additive"]
    four = [Uncertain(0.0, {f"x{n}": float(entry["inputs"]["sd_each"])}) for n in range(entry["inputs"]["n"])]
    one_wide = [*four[:3], uncertain.scale(four[3], 10.0)]
    assert agrees(uncertain.expanded(uncertain.total(four), 1.96), entry, "normal")
    assert agrees(uncertain.total(one_wide).u, entry, "u_one_wide")
    assert agrees(uncertain.expanded(uncertain.total(one_wide), 1.96), entry, "guf_one_wide")
    # Rectangles end; to call their sum a bell, as every interval here does, is never too narrow.
    assert uncertain.expanded(uncertain.total(four), 1.96) >= entry["expected"]["rect_analytic"]
    assert uncertain.expanded(uncertain.total(one_wide), 1.96) >= entry["expected"]["mc_one_wide"]
