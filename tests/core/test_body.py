"""A body's centre and yaw inertia against direct summation, and their doubt against three other ways to find it."""

from math import isclose, sqrt
from random import Random
from statistics import fmean, stdev

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import correlated_values, umath

from tarebook.core.balance.body import Body, Load, changed, own_of, yaw_change
from tarebook.core.numbers.uncertain import Uncertain, covariance
from tests.core.bodies import Inputs, Point, body_and_loads, drawn, inputs, numerically, summed

SEEDS = range(12)
numbers = st.floats(-3, 3)


def exact_load(point: Point, sign: float = 1.0, own: float = 0.0) -> Load:
    return Load(Uncertain(sign * point.mass), Uncertain(point.x), Uncertain(point.y), Uncertain(0.0), own)


def exact_body(points: list[Point]) -> tuple[Body, float]:
    mass, x, y, yaw = summed(points)
    return Body(Uncertain(mass), Uncertain(x), Uncertain(y), Uncertain(0.0)), yaw


def some_points(random: Random, many: int, most: float = 40.0) -> list[Point]:
    return [Point(random.uniform(0.1, most), random.uniform(-1, 3), random.uniform(-0.8, 0.8)) for _ in range(many)]


def plate(point: Point, length: float, width: float) -> list[Point]:
    """Four points that have the mass, centre and own inertia of a plate of this size."""
    along, across = length / sqrt(12), width / sqrt(12)
    return [Point(point.mass / 4, point.x + i * along, point.y + j * across) for i in (-1, 1) for j in (-1, 1)]


@pytest.mark.parametrize("seed", SEEDS)
def test_points_taken_off_and_put_on_leave_what_direct_summation_finds(seed):
    random = Random(seed)
    kept, off, on = some_points(random, 50), some_points(random, 6), some_points(random, 4)
    body, yaw = exact_body([*kept, *off])
    loads = [*(exact_load(point, -1.0) for point in off), *(exact_load(point) for point in on)]
    mass, x, y, wanted = summed([*kept, *on])
    found, change = changed(body, loads), yaw_change(body, loads)
    assert (found.mass.value, found.x.value, found.y.value) == pytest.approx((mass, x, y), rel=1e-12)
    assert yaw + change.value == pytest.approx(wanted, rel=1e-12)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_floor_covering_has_an_inertia_of_its_own(seed):
    random = Random(seed)
    kept, covering = some_points(random, 30), some_points(random, 1)[0]
    length, width = random.uniform(0.5, 2.5), random.uniform(0.3, 1.4)
    body, yaw = exact_body([*kept, *plate(covering, length, width)])
    change = yaw_change(body, [exact_load(covering, -1.0, own_of(length, width))])
    assert yaw + change.value == pytest.approx(summed(kept)[3], rel=1e-12)


def compute(name: str):
    """What a test propagates: one figure as a function of the inputs."""

    def figure(given: Inputs) -> Uncertain:
        body, loads = body_and_loads(given)
        return yaw_change(body, loads) if name == "yaw" else getattr(changed(body, loads), name)

    return figure


@pytest.mark.parametrize("name", ["mass", "x", "y", "z", "yaw"])
@pytest.mark.parametrize("seed", SEEDS)
def test_every_source_counts_as_a_numerical_derivative_says(name, seed):
    given = inputs(Random(seed), 5)
    found, wanted = compute(name)(given), numerically(compute(name), given)
    assert {source: found.sources.get(source, 0.0) for source in wanted} == pytest.approx(wanted, rel=1e-5, abs=1e-9)


@pytest.mark.parametrize("name", ["x", "y", "z", "yaw"])
@pytest.mark.parametrize("seed", [1, 2])
def test_doubts_are_as_wide_as_those_drawn_at_random(name, seed):
    random = Random(seed)
    given = inputs(random, 3, 0.5)
    found, runs = compute(name)(given), drawn(compute(name), given, random, 2000)
    # A standard deviation of 2000 draws is known to 1.6 %; the first order leaves less.
    assert stdev(runs) == pytest.approx(found.u, rel=0.08)
    assert fmean(runs) == pytest.approx(found.value, abs=0.1 * found.u)


@pytest.mark.parametrize("seed", SEEDS)
def test_doubts_are_those_the_uncertainties_package_propagates(seed):
    given = inputs(Random(seed), 3)
    matrix = [[covariance(a, b) for b in given] for a in given]
    known = correlated_values([item.value for item in given], matrix)
    fours = [known[at : at + 4] for at in range(0, len(known), 4)]
    mass = sum(four[0] for four in fours)
    x, y = (sum(four[0] * four[axis] for four in fours) / mass for axis in (1, 2))
    (_, cx, cy, _), loads = fours[0], fours[1:]
    apart = sum(m * ((lx - cx) ** 2 + (ly - cy) ** 2 + 0.05) for m, lx, ly, _ in loads)
    yaw = apart - mass * umath.pow(umath.sqrt((x - cx) ** 2 + (y - cy) ** 2), 2)
    body, parts = body_and_loads(given)
    found, change = changed(body, parts), yaw_change(body, parts)
    for ours, theirs in ((found.x, x), (found.y, y), (change, yaw)):
        assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-9, abs=1e-12)
        assert ours.u == pytest.approx(theirs.std_dev, rel=1e-6)


@given(st.integers(0, 10**6))
def test_a_part_taken_off_and_put_back_leaves_no_trace(seed):
    body, [load] = body_and_loads(inputs(Random(seed), 1))
    back = Load(
        Uncertain(-load.mass.value, {n: -p for n, p in load.mass.sources.items()}), load.x, load.y, load.z, 0.05
    )
    found, change = changed(body, [load, back]), yaw_change(body, [load, back])
    assert found.mass == body.mass
    assert found.x.value == pytest.approx(body.x.value, rel=1e-12)
    assert abs(found.x.sources.get("part0:x", 0.0)) < 1e-15
    assert change.value == pytest.approx(0.0, abs=1e-9)
    assert change.u == pytest.approx(0.0, abs=1e-9)


@given(st.integers(0, 10**6))
def test_one_step_and_two_steps_lead_to_the_same_body(seed):
    body, loads = body_and_loads(inputs(Random(seed), 4))
    half = changed(body, loads[:2])
    at_once, in_turn = changed(body, loads), changed(half, loads[2:])
    assert in_turn.x.value == pytest.approx(at_once.x.value, rel=1e-12)
    assert in_turn.x.u == pytest.approx(at_once.x.u, rel=1e-9)
    together = yaw_change(body, loads)
    parts = yaw_change(body, loads[:2]).value + yaw_change(half, loads[2:]).value
    assert together.value == pytest.approx(parts, rel=1e-9, abs=1e-9)


@given(numbers, numbers)
def test_what_is_added_at_the_centre_moves_nothing_and_has_only_its_own_inertia(x, y):
    body = Body(Uncertain(900.0), Uncertain(x), Uncertain(y), Uncertain(0.5))
    load = Load(Uncertain(20.0), Uncertain(x), Uncertain(y), Uncertain(0.5), own_of(1.0, 0.6))
    found = changed(body, [load])
    assert (found.x.value, found.y.value) == pytest.approx((x, y), abs=1e-12)
    assert yaw_change(body, [load]).value == pytest.approx(20.0 * (1.0 + 0.36) / 12)


@given(st.integers(0, 10**6))
def test_the_order_of_the_loads_never_changes_a_digit(seed):
    random = Random(seed)
    body, loads = body_and_loads(inputs(random, 6))
    other = random.sample(loads, len(loads))
    assert changed(body, other) == changed(body, loads)
    assert isclose(yaw_change(body, other).value, yaw_change(body, loads).value, rel_tol=1e-12)


def test_nothing_has_a_centre_where_nothing_is_left():
    body, [load] = body_and_loads(inputs(Random(1), 1))
    gone = Load(Uncertain(-body.mass.value), load.x, load.y, load.z)
    assert changed(body, [gone]).x is None
    assert yaw_change(body, [gone]) is None
