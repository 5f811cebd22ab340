"""`calc balance`, `lift` and `load-transfer`: their own options are read, used and refused in words."""

import json
from pathlib import Path
from typing import Any

import pint
import pytest

from tarebook.api.calc import run
from tarebook.core.balance.load_transfer import POWER_UNITS
from tarebook.errors import TarebookError

EXAMPLES = Path(__file__).resolve().parents[2] / "fixtures" / "demo" / "calc"


def example(name: str, **changes: Any) -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    return {**loaded, **changes}


def test_any_set_of_jobs_may_be_asked_for():
    none, wheels = (run("balance", example("balance", with_jobs=jobs)) for jobs in ([], ["wheels off"]))
    assert none["changes"]["planned"]["net"]["value"] == 0
    assert wheels["changes"]["planned"]["net"]["value"] == pytest.approx(-2 * 8.2)
    assert wheels["changes"]["planned"]["unsprung"]["value"] == pytest.approx(-2 * 8.2)


def test_a_size_adds_the_inertia_of_a_plate():
    point, plate = run("balance", example("balance", sizes=[])), run("balance", example("balance"))
    yaw = [answer["changes"]["planned"]["yaw"]["value"] for answer in (point, plate)]
    assert yaw[1] - yaw[0] == pytest.approx(-6.0 * (1.6**2 + 1.2**2) / 12)


def test_a_height_is_known_within_what_is_said():
    answer = run("balance", example("balance"))
    assert answer["states"]["weighed"]["z"]["u"] == pytest.approx(0.012 / 3**0.5)
    assert answer["states"]["weighed"]["z"]["shown"] == "505 ± 14 mm"


def test_a_height_that_cannot_be_read_is_refused_in_words():
    with pytest.raises(TarebookError) as refused:
        run("balance", example("balance", height="0,505 m"))
    assert refused.value.code == "quantity_comma"


@pytest.mark.parametrize("power", [{"value": 0, "unit": "kW"}, {"value": 96, "unit": "horses"}, {"value": 96}])
def test_a_power_of_no_size_or_unit_is_refused(power):
    with pytest.raises(TarebookError) as refused:
        run("load-transfer", example("load-transfer", power=power))
    assert refused.value.data["fields"].keys() == {"power"}


def test_weight_per_power_is_in_the_unit_the_power_was_given_in():
    answer = run("load-transfer", example("load-transfer", power={"value": 130, "unit": "hp"}))
    per_power = answer["states"]["weighed"]["per_power"]
    assert per_power["unit"] == "kg/hp"
    assert per_power["value"] == pytest.approx(answer["states"]["weighed"]["mass"]["value"] / 130)


@pytest.mark.parametrize(("unit", "named"), [("kW", "kilowatt"), ("hp", "horsepower"), ("PS", "metric_horsepower")])
def test_the_units_of_power_are_pint_s(unit, named):
    assert POWER_UNITS[unit] == pytest.approx(pint.UnitRegistry()(named).to("watt").magnitude, rel=1e-12)


def test_without_its_readings_a_lift_says_what_it_wants():
    answer = run("lift", {**example("lift"), "lift": {}})
    assert (answer["height"], answer["reason"]["code"]) == (None, "lift_missing")


def test_the_example_lift_tells_its_height():
    answer = run("lift", example("lift"))
    assert answer["height"]["shown"] == "507 ± 5 mm"
    assert answer["warnings"] == []


def test_the_car_s_own_power_counts_when_none_is_given():
    car = {**example("load-transfer")["cars"][0], "power": "130", "power_unit": "hp"}
    asked = example("load-transfer", cars=[car], power=None)
    assert run("load-transfer", asked)["states"]["weighed"]["per_power"]["unit"] == "kg/hp"
    without = run("load-transfer", example("load-transfer", power=None))["states"]["weighed"]
    assert without["reasons"]["per_power"]["code"] == "power_unknown"


def recorded(**changes: Any) -> dict[str, Any]:
    """The example's lift as a record of a weigh-in."""
    given = example("lift", **changes)
    readings = given.pop("lift")
    level = {"id": "w", "layout": "axles", "trim": "road", "scale": "pads", "fuel": "0 L"}
    record = {name: readings[name] for name in ("tilted", "height", "height_within", "raised")}
    level |= {name: readings[name] for name in ("front", "rear")}
    return {**given, "weigh_ins": [level], "lifts": [{"id": "l", "weigh_in": "w", **record}]}


@pytest.mark.parametrize("asked", [{}, {"lift_record": "l"}])
def test_a_lift_of_the_garage_tells_its_height(asked):
    answer = run("lift", recorded(**asked))
    assert (answer["lift"], answer["height"]["shown"]) == ("l", "507 ± 5 mm")
    assert [answer[name]["shown"] for name in ("least", "enough")] == ["50 mm", "150 mm"]


def test_a_lift_of_the_garage_that_is_not_there_is_missing():
    answer = run("lift", recorded(lift_record="nobody"))
    assert (answer["lift"], answer["height"], answer["reason"]["code"]) == (None, None, "lift_missing")
