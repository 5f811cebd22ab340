"""Units against their published definitions (sources in `fixtures/outside/units.json`) and scipy's constants."""

import pytest
import scipy.constants

from tarebook.core.balance.load_transfer import POWER_UNITS
from tarebook.core.numbers.quantity import factor, read, read_length, read_mass
from tests.outside.published import agrees, entries

UNITS = entries("units")


@pytest.mark.parametrize(
    ("entry", "key", "found"),
    [
        ("unit.lb", "kg", read_mass("1 lb").value),
        ("unit.oz", "g", read_mass("1 oz").value * 1000),
        ("unit.gal_us", "L", read("volume", "1 US gal").value * 1000),
        ("unit.gal_imp", "L", float(read("volume", "1 imp gal").exact * 1000)),
        ("unit.inch", "mm", float(read_length("1 in").exact * 1000)),
        ("unit.16cfr500", "oz_g", read_mass("1 oz").value * 1000),
        ("unit.16cfr500", "lb_g", read_mass("1 lb").value * 1000),
        ("unit.16cfr500", "kg_lb", float(1 / factor("mass", "lb"))),
        ("unit.16cfr500", "g_oz", float(factor("mass", "g") / factor("mass", "oz"))),
        ("unit.16cfr500", "gal_L", read("volume", "1 US gal").value * 1000),
        ("unit.16cfr500", "floz_mL", read("volume", "1 US gal").value * 1e6 / 128),
        ("unit.16cfr500", "ft2_dm2", float((read_length("1 ft").exact * 10) ** 2)),
        ("unit.16cfr500", "mg_grain", 7000 / (read_mass("1 lb").value * 1e6)),
        ("unit.grain", "mg", read_mass("1 lb").value * 1e6 / 7000),
        ("unit.kilo", "W_kW", POWER_UNITS["kW"]),
        # A metric horsepower lifts 75 kg, and a horsepower 550 lb by a foot, in a second.
        ("unit.g0", "m_s2", POWER_UNITS["PS"] / 75),
        ("unit.g0", "lbf_N", POWER_UNITS["hp"] / 550 / read_length("1 ft").value),
    ],
)
def test_a_unit_is_what_its_definition_says(entry, key, found):
    assert agrees(found, UNITS[entry], key)


@pytest.mark.parametrize(
    ("found", "constant"),
    [
        (read_mass("1 lb"), scipy.constants.lb),
        (read_mass("1 oz"), scipy.constants.oz),
        (read_mass("1 st"), scipy.constants.stone),
        (read_mass("1 t"), scipy.constants.metric_ton),
        (read_mass("1 g"), scipy.constants.gram),
        (read_length("1 in"), scipy.constants.inch),
        (read_length("1 ft"), scipy.constants.foot),
        (read_length("1 mm"), scipy.constants.milli),
        (read("volume", "1 L"), scipy.constants.liter),
        (read("volume", "1 US gal"), scipy.constants.gallon),
        (read("volume", "1 imp gal"), scipy.constants.gallon_imp),
    ],
    ids=lambda value: value.reads if hasattr(value, "reads") else "scipy",
)
def test_a_unit_is_what_scipy_knows(found, constant):
    # scipy multiplies doubles on the way to some of them; two units in the last place are its rounding, not ours.
    assert found.value == pytest.approx(constant, rel=4e-16)
