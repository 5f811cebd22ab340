"""Weigh-ins against measured vehicles and textbook examples (sources in `fixtures/outside/whole_car.json`)."""

from typing import Any

import pytest

from tarebook.core.garage.garage import read_garage
from tarebook.core.whole_car.weigh_in import WholeCar, weigh_in
from tests.outside.published import agrees, entries

CARS = entries("whole_car")
MEASURED = [name for name, entry in CARS.items() if "front_frac" in entry["expected"]]
INCH, POUND = 0.0254, 0.45359237


def car_of(layout: str, car: dict[str, str], **readings: str) -> WholeCar:
    """The weigh-in of typed readings, on a scale without a known error."""
    record = {"id": "w", "layout": layout, "trim": "road", **readings}
    found = weigh_in(read_garage({"cars": [{"id": "car", **car}], "weigh_ins": [record]}), "w")
    assert found is not None
    return found


def pounds(item: Any) -> float:
    return float(item.value / POUND)


def measured(entry: dict[str, Any]) -> WholeCar:
    """The four pads a measured vehicle would have shown, its diagonals balanced, from its printed centre of gravity."""
    given = entry["inputs"]
    front = 1 - given["cg_long_in"] / given["wheelbase_in"]
    left = 0.5 - given["cg_lat_in"] / given["avg_track_in"]
    shares = {"lf": front * left, "rf": front * (1 - left), "lr": (1 - front) * left, "rr": (1 - front) * (1 - left)}
    track = f"{given['avg_track_in']} in"
    car = {"wheelbase": f"{given['wheelbase_in']} in", "track_front": track, "track_rear": track}
    return car_of("corners", car, **{name: f"{share * given['weight_lb']:.12f} lb" for name, share in shares.items()})


@pytest.mark.parametrize("name", MEASURED)
def test_a_measured_vehicle_has_the_printed_front_share(name):
    found = measured(CARS[name])
    assert agrees(found.loads.shares["front"].value, CARS[name], "front_frac")


@pytest.mark.parametrize("name", MEASURED)
def test_a_measured_vehicle_has_its_centre_of_gravity_where_it_was_measured(name):
    found, given = measured(CARS[name]).loads, CARS[name]["inputs"]
    assert found.x_cg is not None
    assert found.y_cg is not None
    assert found.x_cg.value / INCH == pytest.approx(given["cg_long_in"], abs=1e-9)
    assert found.y_cg.value / INCH == pytest.approx(given["cg_lat_in"], abs=1e-9)


@pytest.mark.parametrize("name", ["nhtsa.ncap2004.row_a", "nhtsa.ncap2004.row_c"])
def test_a_measured_vehicle_has_the_derived_axle_and_side_loads(name):
    loads = measured(CARS[name]).loads.loads
    for side in ("front", "rear", "left", "right"):
        assert agrees(pounds(loads[side]), CARS[name], f"{side}_lb")


def test_wheel_loads_give_the_textbook_centre_of_gravity():
    entry = CARS["veh.cg_from_axle"]
    given = entry["inputs"]
    # Two wheels an axle; only the ratio matters, so newtons may stand as kilograms.
    axles = {"front": f"{2 * given['Fz1']} kg", "rear": f"{2 * given['Fz2']} kg"}
    found = car_of("axles", {"wheelbase": f"{given['l']} m"}, **axles).loads
    assert found.x_cg is not None
    assert agrees(found.x_cg.value, entry, "a1")
    assert agrees(given["l"] - found.x_cg.value, entry, "a2")


def test_textbook_wheel_loads_weigh_the_textbook_car():
    entry = CARS["veh.wheel_loads"]
    given, printed = entry["inputs"], entry["expected"]
    kilograms = {name: printed[f"{name}_each_N"] / given["g"] for name in ("front", "rear")}
    typed = {f"{side}{axle[0]}": f"{kilograms[axle]:.9f} kg" for side in "lr" for axle in kilograms}
    found = car_of("corners", {"wheelbase": f"{given['l']} m"}, **typed).loads
    assert found.total is not None
    assert found.x_cg is not None
    # Two printed loads of each axle, known to 0.1 N.
    assert found.total.value == pytest.approx(given["m"], abs=4 * 0.1 / given["g"])
    assert found.x_cg.value == pytest.approx(given["a1"], abs=1e-4)


def test_a_three_scale_weighing_with_tare_has_the_printed_total_and_moment():
    entry = CARS["wb.weigh.tare"]
    given = entry["inputs"]
    net = {scale: given[f"{scale}_scale_lb"] - given[f"{scale}_tare_lb"] for scale in ("nose", "left", "right")}
    axles = {"front": f"{net['nose']} lb", "rear": f"{net['left'] + net['right']} lb"}
    found = car_of("axles", {"wheelbase": f"{given['wheelbase_in']} in"}, **axles).loads
    assert found.total is not None
    assert found.x_cg is not None
    # The print counts arms from a datum; the front point stands a wheelbase before the main wheels' arm.
    front_arm = given["main_arm_in"] - given["wheelbase_in"]
    moment = pounds(found.total) * (front_arm + found.x_cg.value / INCH)
    assert pounds(found.total) == pytest.approx(entry["expected"]["net_subtotal_lb"], abs=1e-9)
    assert moment == pytest.approx(entry["expected"]["subtotal_moment"], abs=1e-6)


@pytest.mark.parametrize(("shift", "key"), [(0, "cross_before"), (10, "cross_after")])
def test_the_cross_mode_moves_cross_weight_and_nothing_else(shift, key):
    entry = CARS["corner.identity"]
    example = entry["inputs"]["example"]
    signs = {"lf": 1, "rf": -1, "lr": -1, "rr": 1}
    typed = {name: f"{example[name.upper()] + sign * shift} kg" for name, sign in signs.items()}
    found = car_of("corners", {}, **typed).loads
    for name in ("front", "rear", "left", "right"):
        assert agrees(found.loads[name].value, entry, name)
    assert agrees(found.shares["cross"].value, entry, key)
