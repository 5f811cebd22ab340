"""Fuel densities and legal tolerances (sources in `fixtures/outside/fuel.json` and `trade_scales.json`)."""

import pytest

from tarebook.core.weighing.trade_scale import tolerance
from tarebook.core.whole_car.fuel import DENSITIES, ETHANOL, blend, fuel_mass
from tests.outside.published import entries

FUELS = entries("fuel")
SCALES = entries("trade_scales")
POUNDS_A_GALLON = 0.45359237 / (231 * 0.0254**3)  # in kg/m³


def test_petrol_has_the_limits_of_its_standard():
    petrol, printed = DENSITIES["petrol"], FUELS["fuel.en228"]["expected"]
    assert [petrol.low, petrol.high] == printed["kg_m3"]
    for density, pounds in zip((petrol.low, petrol.high), printed["lb_usgal"], strict=True):
        assert density / POUNDS_A_GALLON == pytest.approx(pounds, abs=FUELS["fuel.en228"]["tolerance"]["*"])


def test_diesel_petrol_and_ethanol_have_the_published_densities():
    printed, within = FUELS["fuel.afdc"]["expected"], FUELS["fuel.afdc"]["tolerance"]["*"]
    diesel, petrol = DENSITIES["diesel"], DENSITIES["petrol"]
    for density, pounds in zip((diesel.low, diesel.high), printed["diesel_lb_gal"], strict=True):
        assert density / POUNDS_A_GALLON == pytest.approx(pounds, abs=within)
    # The European standard is a little narrower than what is sold as gasoline.
    lightest, heaviest = printed["gasoline_lb_gal"]
    assert lightest <= petrol.low / POUNDS_A_GALLON < petrol.high / POUNDS_A_GALLON <= heaviest
    ethanol = ETHANOL / POUNDS_A_GALLON
    assert ethanol == pytest.approx(printed["ethanol_lb_gal"], abs=within)


def test_fuels_lie_where_the_property_packages_put_what_they_are_made_of():
    """CoolProp and thermo at 15 °C: ethanol itself, and petrol between its lightest and heaviest usual parts."""
    liquids, within = FUELS["dens.fluids"]["expected"], FUELS["dens.fluids"]["tolerance"]
    assert abs(ETHANOL - liquids["ethanol"][0]) <= within
    lightest = min(liquids["n-heptane"][0], liquids["isooctane(thermo)"][0])
    assert lightest < DENSITIES["petrol"].low < DENSITIES["petrol"].high < liquids["toluene"][0]


def test_e85_blends_as_computed_from_its_parts_and_holds_what_pumps_sell():
    low, high = FUELS["fuel.e85"]["expected"]["kg_m3"]
    petrol = DENSITIES["petrol"]
    blends = [blend(0.85, density) for density in (petrol.low, petrol.high)]
    assert blends == pytest.approx([low, high], abs=0.05)
    for density, pounds in zip(blends, FUELS["fuel.e85"]["expected"]["lb_usgal"], strict=True):
        assert density / POUNDS_A_GALLON == pytest.approx(pounds, abs=0.005)
    # Less ethanol than the name says makes it lighter; the published blend is the heavy end.
    assert DENSITIES["e85"].low < low
    assert DENSITIES["e85"].high == pytest.approx(high, abs=0.5)


def test_forty_litres_of_petrol_are_half_way_between_the_limits():
    found = fuel_mass(0.040, "petrol")
    low, high = (0.040 * density for density in FUELS["fuel.en228"]["expected"]["kg_m3"])
    assert found.value == pytest.approx((low + high) / 2)
    assert found.u == pytest.approx((high - low) / 2 / 3**0.5)  # a rectangle: JCGM 100:2008, 4.3.7


@pytest.mark.parametrize(
    ("divisions", "row"), [(500, 0), (501, 1), (2000, 1), (2001, 2), (4000, 2), (4001, 3), (9000, 3)]
)
def test_a_class_iii_scale_may_be_off_by_the_published_steps(divisions, row):
    steps = SCALES["scale.hb44.classIII"]["expected"]["maintenance_div"]
    assert tolerance("III", 0.5, divisions * 0.5) == steps[row] * 0.5


@pytest.mark.parametrize("accuracy_class", ["III", "IIII"])
def test_the_wider_tradition_holds_the_other_in_service(accuracy_class):
    entry = SCALES["scale.nawi.mpe"]
    bands = entry["inputs"][f"class{accuracy_class}_bands_in_e"]
    for (_, most), off in zip(bands, entry["expected"]["in_service_e"], strict=True):
        assert tolerance(accuracy_class, 1.0, float(most)) >= off
