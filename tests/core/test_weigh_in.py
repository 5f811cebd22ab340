"""The whole car on scales: what the looks share cancels where it should, and half a weigh-in is worth something."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.whole_car.weigh_in import LOOKS, WholeCar, weigh_in

CORNERS = LOOKS["corners"]
CAR = {"id": "car", "wheelbase": "2420 mm", "track_front": "1430 mm", "track_rear": "1395 mm", "tank_size": "45 L"}
PADS = {"id": "pads", "kind": "corner_pads", "division": "0.5 kg", "repeatability": "0.4 kg", "capacity": "600 kg"}
LOADS = {"lf": 262.5, "rf": 255.0, "lr": 214.5, "rr": 206.0}
SHARES = {
    "front": ("lf", "rf"),
    "rear": ("lr", "rr"),
    "left": ("lf", "lr"),
    "right": ("rf", "rr"),
    "cross": ("rf", "lr"),
}

corner_loads = st.fixed_dictionaries({name: st.integers(400, 4000).map(lambda n: n / 10) for name in CORNERS})


def weighed(loads: dict[str, float], layout: str = "corners", pads: dict[str, Any] = PADS, **more: Any) -> WholeCar:
    record = {"id": "w", "layout": layout, "trim": "road", "scale": "pads"}
    typed = {name: f"{load} kg" for name, load in loads.items()}
    sheets = [{"id": "sheet", **more.pop("sheet", {})}]
    lists = {"cars": [CAR], "scales": [pads], "class_sheets": sheets, **more.pop("lists", {})}
    found = weigh_in(read_garage({**lists, "weigh_ins": [{**record, **typed, **more}]}), "w")
    assert found is not None
    return found


def codes(found: WholeCar) -> list[str]:
    return [warning["code"] for warning in found.warnings]


def of_sources(item: Uncertain, *prefixes: str) -> float:
    """The root of the squares of the contributions whose names begin so."""
    return Uncertain(0.0, {name: part for name, part in item.sources.items() if name.startswith(prefixes)}).u


def test_the_gain_of_the_scale_adds_up_fully_in_the_total():
    total = weighed(LOADS).loads.loads["total"]
    assert total.value == 938.0
    assert of_sources(total, "cal:") == pytest.approx(0.002 * 938.0)


@given(corner_loads)
def test_the_gain_of_the_scale_cancels_in_every_share(loads):
    for share in weighed(loads).loads.shares.values():
        assert of_sources(share, "cal:") < 1e-15


def test_four_pads_are_four_looks_at_the_display_and_one_roll_onto_the_scale():
    total = weighed(LOADS).loads.loads["total"]
    assert of_sources(total, "round:") == pytest.approx(2 * 0.5 / 12**0.5)
    assert of_sources(total, "rep:") == pytest.approx(0.4)


def test_settling_on_the_springs_moves_cross_weight_and_no_axle_or_side():
    found = weighed(LOADS).loads
    assert of_sources(found.loads["lf"], "settle:") == 1.0
    assert of_sources(found.shares["cross"], "settle:") == pytest.approx(2.0 / 938.0)
    for name in ("front", "rear", "left", "right", "total"):
        assert of_sources(found.loads[name], "settle:") == 0.0


@given(corner_loads)
def test_opposite_shares_make_one_whole(loads):
    shares = weighed(loads).loads.shares
    assert shares["front"].value + shares["rear"].value == pytest.approx(1.0)
    assert shares["left"].value + shares["right"].value == pytest.approx(1.0)
    assert shares["front"].u == pytest.approx(shares["rear"].u)


@given(corner_loads)
def test_the_centre_of_gravity_lies_within_the_wheels(loads):
    found = weighed(loads).loads
    assert found.x_cg is not None
    assert found.y_cg is not None
    assert 0 < found.x_cg.value < 2.42
    assert abs(found.y_cg.value) < 0.5 * 1.43


@pytest.mark.parametrize("name", SHARES)
def test_the_uncertainty_of_a_share_is_that_of_numerical_derivatives(name):
    """Each corner's own doubt times the slope of the share, the slope by central differences."""
    found = weighed(LOADS).loads

    def share(loads: dict[str, float]) -> float:
        return sum(loads[corner] for corner in SHARES[name]) / sum(loads.values())

    def slope(direction: dict[str, float]) -> float:
        step = 1e-4
        up, down = ({c: LOADS[c] + sign * step * direction.get(c, 0) for c in CORNERS} for sign in (1, -1))
        return (share(up) - share(down)) / (2 * step)

    contributions = {
        corner: slope({corner: 1.0}) * of_sources(found.loads[corner], "round:", "rep:") for corner in CORNERS
    }
    contributions["settling"] = slope({"lf": 1.0, "rf": -1.0, "lr": -1.0, "rr": 1.0})
    assert found.shares[name].u == pytest.approx(Uncertain(0.0, contributions).u, rel=1e-6)


def test_the_uncertainties_package_finds_the_same_shares_and_centre():
    found = weighed(LOADS).loads
    gain, settles = ufloat(1, 0.002), ufloat(0, 1)
    own = (0.5**2 / 12 + 0.2**2) ** 0.5
    signs = {"lf": 1, "rf": -1, "lr": -1, "rr": 1}
    pads = {name: load / gain + ufloat(0, own) + signs[name] * settles for name, load in LOADS.items()}
    whole = sum(pads.values())
    for name, (a, b) in SHARES.items():
        theirs = (pads[a] + pads[b]) / whole
        assert found.shares[name].value == pytest.approx(theirs.n, rel=1e-12)
        assert found.shares[name].u == pytest.approx(theirs.s, rel=1e-9)
    wheelbase, front, rear = (ufloat(size, 0.001 / 12**0.5) for size in (2.42, 1.43, 1.395))
    x_cg = wheelbase * (pads["lr"] + pads["rr"]) / whole
    y_cg = (front / 2 * (pads["rf"] - pads["lf"]) + rear / 2 * (pads["rr"] - pads["lr"])) / whole
    for ours, theirs in ((found.x_cg, x_cg), (found.y_cg, y_cg)):
        assert ours is not None
        assert ours.value == pytest.approx(theirs.n, rel=1e-12)
        assert ours.u == pytest.approx(theirs.s, rel=1e-9)


@given(corner_loads, st.sets(st.sampled_from(CORNERS)))
def test_whatever_is_typed_is_worked_out_and_what_is_missing_is_named(loads, typed):
    found = weighed({name: loads[name] for name in typed})
    known = {name for name, pair in SHARES.items() if typed.issuperset(pair)}
    assert found.loads.loads.keys() == known | typed | ({"total"} if len(typed) == 4 else set())
    missing = [warning["data"]["fields"] for warning in found.warnings if warning["code"] == "reading_missing"]
    assert missing == ([[name for name in CORNERS if name not in typed]] if len(typed) < 4 else [])
    assert (found.weight is None) == (len(typed) < 4)


def test_a_reading_nobody_can_read_is_said_and_the_others_stand():
    found = weighed({**LOADS}, rr="12 psi")
    assert "quantity_unit_unknown" in codes(found)
    assert found.loads.loads["front"].value == 517.5


def test_a_reading_above_what_the_pad_can_carry_is_named_and_kept():
    found = weighed({**LOADS, "lf": 601.0})
    over = [warning["data"]["field"] for warning in found.warnings if warning["code"] == "above_capacity"]
    assert over == ["lf"]
    assert found.loads.loads["lf"].value == 601.0


@pytest.mark.parametrize(
    ("layout", "loads"), [("axles", {"front": 1100.0, "rear": 1000.0}), ("total", {"total": 2300.0})]
)
def test_the_capacity_is_of_one_pad_and_the_pads_share_the_car(layout, loads):
    assert "above_capacity" not in codes(weighed(loads, layout))
    assert "above_capacity" in codes(weighed(dict.fromkeys(loads, 2401.0), layout))


def test_a_slipped_digit_is_noticed():
    assert "reading_odd" in codes(weighed({**LOADS, "rr": 20.6}))
    assert "reading_odd" not in codes(weighed(LOADS))


def test_empty_pads_have_no_shares():
    found = weighed(dict.fromkeys(CORNERS, 0)).loads
    assert found.total is not None
    assert found.total.value == 0.0
    assert found.shares == {}
    assert found.x_cg is None


@given(st.integers(0, 45), st.integers(1, 30))
def test_a_full_tank_for_a_class_of_full_tanks_says_nothing_of_the_density(litres, tenths):
    found = weighed(LOADS, fuel=f"{litres} L", fuel_within=f"{tenths / 10} L", sheet={"fuel": "full", "driver": "out"})
    assert found.weight is not None
    # EN 228 to No. 2 diesel: the car does not say what it burns.
    half_range = (886.7 - 720.0) / 2 / 3**0.5
    assert of_sources(found.weight, "fuel-density") == pytest.approx((45 - litres) / 1000 * half_range)


def test_the_lightest_who_will_drive_decides():
    drivers = [
        {"id": "a", "claim": "80 kg", "claim_basis": "worked_out"},
        {"id": "b", "claim": "70 kg", "claim_basis": "worked_out"},
        {"id": "c", "claim": "60 kg", "claim_basis": "worked_out", "deleted": True},
    ]
    found = weighed(LOADS, driver_in=True, driver="a", sheet={"driver": "in"}, lists={"drivers": drivers})
    assert found.condition.lightest == "b"
    assert found.weight is not None
    assert found.weight.value == 938.0 - 80.0 + 70.0


def test_the_driver_who_was_weighed_in_the_car_and_decides_adds_no_doubt():
    drivers = [{"id": "a", "claim": "80 kg", "claim_basis": "guessed"}]
    found = weighed(LOADS, driver_in=True, driver="a", sheet={"driver": "in"}, lists={"drivers": drivers})
    assert found.weight == found.loads.total


def test_what_was_not_seen_to_is_a_doubt_of_the_total_and_of_the_diagonals():
    found = weighed(LOADS, ready=["zeroed", "level"]).loads
    # Not rolled, pressures, somebody leaning; by hand: √(0.5² + 0² + 1²) of the whole.
    assert of_sources(found.loads["total"], "unready:") == pytest.approx(1.25**0.5)
    # A corner has a quarter of each, and 2, 2 and 1 kg of the diagonal.
    assert of_sources(found.loads["lf"], "unready:") == pytest.approx((2.125**2 + 2**2 + 1.25**2) ** 0.5)
    assert of_sources(found.loads["rf"], "unready:") == pytest.approx((1.875**2 + 2**2 + 0.75**2) ** 0.5)


@pytest.mark.parametrize("ready", [None, ["zeroed", "level", "rolled", "pressures", "clear"]])
def test_a_weigh_in_that_nobody_asked_about_or_with_all_seen_to_has_no_such_doubt(ready):
    assert of_sources(weighed(LOADS, ready=ready).loads.loads["total"], "unready:") == 0.0
