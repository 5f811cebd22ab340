"""Sheet stock against printed weights and reference densities (sources in `fixtures/outside/sheet.json`).

From memory, so that agreement proves less: the 22 gauge row of the makers' gauge, the thickness of its 16 gauge row
and the weight of its 20 gauge one, the upper density of 6061 aluminium and the lower one of ABS. Everything else was
read in the source named. Plywood stands on copies of tables at second hand.
"""

import periodictable
import pytest

from tarebook.core.sheet.sheet import SheetMass, sheet
from tarebook.core.sheet.sheet_piece import read_piece
from tarebook.core.sheet.sheet_stock import LEGAL_OUNCES, MAKERS_INCHES, MATERIALS
from tests.outside.published import agrees, entries

PRINTED = entries("sheet")
POUND, FOOT = 0.45359237, 0.3048
POUND_INCH3, GRAM_CM3 = POUND / 0.0254**3, 1000.0


def piece(width="1 ft", height="1 ft", density=None, **stock) -> SheetMass:
    """A piece of a square foot unless told otherwise; `density` in kg/m³ at both ends of its range."""
    own = {} if density is None else {"density_low": f"{density:.9f}"}
    found = sheet(read_piece({"id": "p", "width": width, "height": height, **own, **stock}))
    assert isinstance(found, SheetMass)
    return found


def pounds(found: SheetMass) -> float:
    return found.mass.value / POUND


def by(prefix: str) -> list[str]:
    return [name for name in PRINTED if name.startswith(prefix)]


@pytest.mark.parametrize("name", by("sheet.steel.msg"))
def test_the_makers_gauge_lists_what_is_printed_and_steel_weighs_less(name):
    entry, number = PRINTED[name], int(name.rsplit(".", 1)[1])
    found = piece(material="steel", gauge=number)
    assert MAKERS_INCHES[number] == entry["inputs"]["t_in"]
    assert agrees(found.listed / POUND, entry, "lb_ft2")
    # 41.82 lb/ft² an inch is a convention: at the 7.85 g/cm³ of carbon steel the same sheet is 2.4 % lighter.
    assert found.listed / pounds(found) / POUND == pytest.approx(1.024, abs=0.0005)


def test_every_makers_thickness_is_the_legal_weight_over_the_convention():
    assert MAKERS_INCHES.keys() == LEGAL_OUNCES.keys()
    for number, inches in MAKERS_INCHES.items():
        assert LEGAL_OUNCES[number] / 16 / 41.82 == pytest.approx(inches, abs=0.00006)


@pytest.mark.parametrize("name", by("sheet.steel.ussg"))
def test_the_legal_gauge_is_a_weight_whatever_the_thickness(name):
    entry, number = PRINTED[name], int(name.rsplit(".", 1)[1])
    found = piece(material="steel", gauge=number, gauge_table="ussg")
    assert LEGAL_OUNCES[number] == entry["expected"]["oz_ft2"]
    assert agrees(pounds(found), entry, "lb_ft2")
    assert agrees(found.mass.value / FOOT**2, entry, "kg_m2")
    # The law's thickness is that of wrought iron; steel of the same weight is thinner.
    assert found.thickness.value < entry["inputs"]["t_in_approx"] * 0.0254 * 0.99


@pytest.mark.parametrize("name", by("sheet.al2014"))
def test_a_whole_sheet_of_2014_weighs_what_its_table_says(name):
    entry = PRINTED[name]
    (width, height), inches = entry["inputs"]["size_ft"], entry["inputs"]["t_in"]
    printed = piece(
        f"{width} ft", f"{height} ft", entry["inputs"]["density_lb_in3"] * POUND_INCH3,
        material="aluminium_2014", thickness=f"{inches} in", measured=True,
    )  # fmt: skip
    assert agrees(pounds(printed), entry, "lb_per_sheet")
    assert agrees(pounds(printed) / (width * height), entry, "lb_ft2")
    ours = piece(f"{width} ft", f"{height} ft", material="aluminium_2014", thickness=f"{inches} in", measured=True)
    assert abs(ours.mass.value / POUND - entry["expected"]["lb_per_sheet"]) < 2 * ours.mass.u / POUND


@pytest.mark.parametrize("name", by("sheet.al6061"))
def test_6061_weighs_what_its_densities_give(name):
    entry = PRINTED[name]
    found = piece(material="aluminium_6061", thickness=f"{entry['inputs']['t_in']} in", measured=True)
    assert agrees(pounds(found), entry, "lb_ft2")


def test_polycarbonate_sold_as_an_eighth_of_an_inch_is_less_and_its_range_says_so():
    entry = PRINTED["sheet.pc"]
    measured = piece(material="polycarbonate", thickness="0.118 in", measured=True)
    sold = piece(material="polycarbonate", thickness="1/8 in")
    density = MATERIALS["polycarbonate"].density
    assert density.low < entry["expected"]["lb_ft3"] * POUND / FOOT**3 < density.high
    assert agrees(pounds(measured), entry, "lb_ft2")
    for printed in (entry["expected"]["lb_ft2"], 0.780):  # the real and the nominal thickness
        assert abs(pounds(sold) - printed) < 2 * sold.mass.u / POUND
    assert [each["code"] for each in sold.warnings] == ["sheet_as_sold"]


@pytest.mark.parametrize(("name", "material"), [("sheet.acrylic", "acrylic"), ("sheet.abs", "abs")])
def test_plastics_have_the_specific_gravity_printed(name, material):
    entry = PRINTED[name]
    for gravity, printed in zip(entry["inputs"]["sg"], entry["expected"]["lb_ft2_range"], strict=True):
        found = piece(material=material, thickness="0.125 in", measured=True, density=gravity * GRAM_CM3)
        assert pounds(found) == pytest.approx(printed, abs=entry["tolerance"])
        assert MATERIALS[material].density.low <= gravity * GRAM_CM3 <= MATERIALS[material].density.high


def test_a_quarter_inch_of_plywood_is_within_the_spread_of_what_is_printed():
    entry = PRINTED["sheet.ply"]["expected"]
    soft = piece(material="softwood_plywood", thickness="1/4 in")
    hard = piece(material="birch_plywood", thickness="1/4 in")
    for printed in (entry["lb_ft2_rule"], *entry["lb_ft2_softwood"]):
        assert abs(pounds(soft) - printed) < 2 * soft.mass.u / POUND
    for printed in entry["lb_ft2_hardwood"]:
        assert abs(pounds(hard) - printed) < 2 * hard.mass.u / POUND


@pytest.mark.parametrize(
    ("element", "material"),
    [
        ("Al", "aluminium"),
        ("Ti", "titanium"),
        ("Mg", "magnesium"),
        ("Cu", "copper"),
        ("Pb", "lead"),
        ("W", "tungsten"),
    ],
)
def test_a_metal_has_the_density_of_its_element(element, material):
    density = MATERIALS[material].density
    packages = [values[element] for values in PRINTED["dens.metals"]["expected"].values()]
    installed = getattr(periodictable, element).density
    in_g_cm3 = [value / 1000 if value > 100 else value for value in packages]
    assert all(density.low <= value * GRAM_CM3 <= density.high for value in [installed, *in_g_cm3])


def test_carbon_steel_is_a_little_lighter_than_iron():
    density = MATERIALS["steel"].density
    assert density.low < 7850.0 < density.high < periodictable.Fe.density * GRAM_CM3


CHECKED_HERE = {
    "steel", "aluminium", "aluminium_6061", "aluminium_2014", "titanium", "magnesium", "copper", "lead", "tungsten",
    "polycarbonate", "acrylic", "abs", "softwood_plywood", "birch_plywood",
}  # fmt: skip


def test_a_material_nothing_here_is_checked_against_says_that_it_is_from_memory():
    assert {name for name, each in MATERIALS.items() if "from memory" not in each.source} <= CHECKED_HERE
    assert MATERIALS.keys() > CHECKED_HERE
