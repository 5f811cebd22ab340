"""Repeats against scipy, numpy, and printed values of Grubbs' test; and a simulation of what is promised of them.

Grubbs' critical values: ISO 5725-2:1994, table 5 (from memory), checked here against scipy as well. The example of
eight measurements with 245.57 among them: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1 (from memory).
"""

from math import sqrt
from random import Random

import numpy
import pytest
from scipy import stats

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.student import student_beyond
from tarebook.core.weighing.outlier import CHANCE, odd_one
from tarebook.core.weighing.repeats import ASSUMED_WORTH, Scatter, repeats_to, scatter_of
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.weigh_in import weigh_in

NIST = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
ISO_5725_2_TABLE_5 = {3: 1.155, 4: 1.481, 5: 1.715, 6: 1.887, 7: 2.020, 8: 2.126, 9: 2.215, 10: 2.290}
FINE = 1e-9  # a display so fine that its steps decide nothing


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 5, 8, 17, 60])
def test_students_tail_is_scipys(freedom):
    for t in (0.0, 0.4, 1.7, 3.2, 9.0, 250.0):
        assert student_beyond(t, freedom) == pytest.approx(2 * stats.t.sf(t, freedom), rel=1e-9, abs=1e-15)


def grubbs(values):
    return max(abs(numpy.array(values) - numpy.mean(values))) / numpy.std(values, ddof=1)


def critical(n, chance):
    """Two-sided, by the formula that NIST's handbook prints, with scipy's quantile."""
    t = stats.t.isf(chance / (2 * n), n - 2)
    return (n - 1) / sqrt(n) * sqrt(t * t / (n - 2 + t * t))


def with_statistic(n, wanted, random):
    """n readings, the last one moved until Grubbs' statistic is the wanted one."""
    others = [random.gauss(100, 1) for _ in range(n - 1)]
    low, high = max(others), max(others) + 1e6
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if grubbs([*others, middle]) < wanted else (low, middle)
    return [*others, low]


def test_the_handbooks_example_is_named():
    assert grubbs(NIST) == pytest.approx(2.468765, abs=1e-6)
    found = odd_one([NIST], FINE)
    assert (found.look, found.at) == (0, 7)
    assert critical(8, 0.10) == pytest.approx(2.032, abs=5e-4)  # printed for one side at 5 %: two sides at 10 %
    assert odd_one([NIST[:-1]], FINE) is None


@pytest.mark.parametrize("n", sorted(ISO_5725_2_TABLE_5))
def test_one_look_is_named_from_grubbs_critical_value_on(n):
    printed = ISO_5725_2_TABLE_5[n]
    assert critical(n, CHANCE) == pytest.approx(printed, abs=1e-3)  # three decimals, some rounded up
    most = (n - 1) / sqrt(n)
    for seed in range(20):
        below = with_statistic(n, critical(n, CHANCE) - min(1e-3, (most - critical(n, CHANCE)) / 2), Random(seed))
        above = with_statistic(n, critical(n, CHANCE) + min(1e-3, (most - critical(n, CHANCE)) / 2), Random(seed))
        assert odd_one([below], FINE) is None
        assert odd_one([above], FINE).at == n - 1


def test_over_several_looks_it_is_the_deleted_residual_of_a_linear_model():
    random = Random(3)
    for _ in range(50):
        looks = [[random.gauss(200 + 10 * k, 0.1) for _ in range(random.choice((2, 3, 4)))] for k in range(4)]
        looks[2] = [*looks[2], 215.0]
        values = numpy.array([value for look in looks for value in look])
        design = numpy.zeros((len(values), 4))
        design[range(len(values)), [k for k, look in enumerate(looks) for _ in look]] = 1.0
        hat = numpy.diag(design @ numpy.linalg.pinv(design))
        residual = values - design @ numpy.linalg.pinv(design) @ values
        freedom = len(values) - 4 - 1
        left = (residual @ residual - residual**2 / (1 - hat)) / freedom
        deleted = residual / numpy.sqrt(left * (1 - hat))
        tried = sum(len(look) for look in looks if len(look) > 2)
        found = odd_one(looks, FINE)
        at = sum(len(look) for look in looks[: found.look]) + found.at
        assert at == numpy.argmax(abs(deleted))
        assert found.chance == pytest.approx(min(1, tried * 2 * stats.t.sf(abs(deleted[at]), freedom)), rel=1e-6)


@pytest.mark.parametrize("scatter", [0.02, 0.1, 0.3])
def test_of_sets_without_an_odd_one_at_most_one_in_twenty_has_one_named(scatter):
    random = Random(7)
    named = 0
    for _ in range(1000):
        looks = [[round(random.gauss(220, scatter), 1) for _ in range(3)] for _ in range(4)]
        named += odd_one(looks, 0.1) is not None
    assert named <= 70  # 50 expected at most, four standard deviations of chance above it


def test_what_repeats_show_is_numpys_pooled_variance():
    random = Random(1)
    rows = [[random.gauss(200, 0.4) for _ in range(2)] for _ in range(5)]
    found = scatter_of(rows, 0.0, is_car=True)
    within = numpy.array(rows)
    assert (found.readings, found.freedom) == (10, 8)
    assert found.squares / found.freedom / 2 == pytest.approx(numpy.mean(within.var(axis=0, ddof=1)))


def test_of_corners_it_is_what_is_left_of_them_beside_wheels_and_the_diagonal():
    random = Random(2)
    rows = []
    for _ in range(6):
        settled = random.gauss(0, 3)
        rows.append([210 + side * settled + random.gauss(0, 0.2) for side in (1, -1, -1, 1)])
    flat = numpy.array(rows).ravel()
    design = numpy.hstack([numpy.tile(numpy.eye(4), (6, 1)), numpy.kron(numpy.eye(6), [[1], [-1], [-1], [1]])])
    left = flat - design @ numpy.linalg.pinv(design) @ flat
    found = scatter_of(rows, 0.0, is_car=True)
    assert found.freedom == 24 - numpy.linalg.matrix_rank(design)
    assert found.squares == pytest.approx(4 * left @ left)


def test_the_pooled_variance_is_the_mean_of_what_is_believed_of_it():
    """A prior worth w degrees of freedom and mean r0² is a scaled inverse chi-squared one of w + 2 (Gelman et al.)."""
    r0, n, squares = 0.5, 4, 0.9
    worth = ASSUMED_WORTH + 2
    believed = stats.invgamma((worth + n - 1) / 2, scale=(ASSUMED_WORTH * r0 * r0 + squares) / 2)
    assert repeats_to(0.0, r0, Scatter(n, n - 1, squares)) ** 2 == pytest.approx(believed.mean())


@pytest.mark.parametrize("reads", [2, 3, 5])
def test_twice_the_uncertainty_of_a_mean_covers_as_promised_on_scales_as_assumed(reads):
    """Small samples make nobody sure: the true repeatability differs from scale to scale around the assumed one."""
    random, inside, runs = Random(reads), 0, 2000
    scales = stats.invgamma((ASSUMED_WORTH + 2) / 2, scale=ASSUMED_WORTH * 0.5**2 / 2)
    for true in numpy.sqrt(scales.rvs(runs, random_state=reads)):
        rows = [[random.gauss(0, true / 2) for _ in range(4)] for _ in range(reads)]
        repeats = repeats_to(0.0, 0.5, scatter_of(rows, 0.0, is_car=True))
        inside += abs(sum(map(sum, rows)) / reads) <= 2 * repeats / sqrt(reads)
    assert 0.935 <= inside / runs <= 0.985


def four_wheels(random, odd, left_out=False):
    """Invented: four wheels read three times in steps of 0.1 kg, one reading 250 g off; and what the car weighs."""
    true = [random.uniform(190, 260) for _ in range(4)]
    rows = [[wheel + random.gauss(0, 0.02) for wheel in true] for _ in range(3)]
    if odd:
        rows[2][1] += 0.25
    names = ("lf", "rf", "lr", "rr")
    read = [{name: f"{value:.1f} kg" for name, value in zip(names, row, strict=True)} for row in rows]
    garage = {
        "scales": [{"id": "pads", "kind": "corner_pads", "division": "0.1 kg"}],
        "scale_checks": [{"id": "c", "scale": "pads", "known": "200 kg", "known_within": "1 g", "shown": "200.0 kg"}],
        "weigh_ins": [{"id": "w", "layout": "corners", "scale": "pads", "trim": "road", **read[0]}],
        "repeats": [{"id": f"r{n}", "of": "w", **row} for n, row in enumerate(read[1:])],
        "omissions": [{"id": "o", "of": "r1", "reading": "rf"}] if left_out else [],
    }
    looks = [[round(row[k], 1) for row in rows] for k in range(4)]
    return read_garage(garage), looks, sum(true)


def test_one_of_twelve_wheel_readings_250_g_off_is_named_and_the_total_is_right_within_its_doubt():
    random, named, inside, left = Random(11), 0, 0, 0
    for _ in range(300):
        seed = random.random()
        garage, looks, true = four_wheels(Random(seed), odd=True)
        found = odd_one(looks, 0.1)
        named += found is not None and (found.look, found.at) == (1, 2)
        total = weigh_in(garage, "w").loads.total
        inside += abs(total.value - true) <= 2 * total.u
        total = weigh_in(four_wheels(Random(seed), odd=True, left_out=True)[0], "w").loads.total
        left += abs(total.value - true) <= 2 * total.u
    assert named >= 240
    assert inside >= 285
    assert left >= 285


def test_a_part_lifted_on_three_times_is_as_sure_as_numpy_says():
    garage = read_garage(
        {
            "scales": [{"id": "s", "kind": "hanging", "division": "10 g", "repeatability": "1 mg"}],
            "scale_checks": [{"id": "c", "scale": "s", "known": "20 kg", "known_within": "1 mg", "shown": "20 kg"}],
            "parts": [{"id": "p"}],
            "weighings": [{"id": "w", "of": "p", "method": "direct", "shown": "12.30 kg", "scale": "s"}],
            "repeats": [{"id": f"r{n}", "of": "w", "shown": shown} for n, shown in enumerate(("12.36 kg", "12.24 kg"))],
        }
    )
    reading = masses(garage).of["p"].readings[0]
    assert reading.value == pytest.approx(12.3)
    assert reading.own == pytest.approx(stats.sem([12.30, 12.36, 12.24]))


def test_reading_again_averages_nothing_but_the_looks():
    """Fuel, driver, settling and the scale's gain are the same each time: twenty readings leave them as they were."""
    once = {"id": "w", "layout": "corners", "scale": "pads", "trim": "event", "fuel": "20 L", "driver_in": False}
    wheels = {"lf": "251.3 kg", "rf": "243.8 kg", "lr": "210.2 kg", "rr": "198.6 kg"}
    garage = {
        "cars": [{"id": "car", "fuel_kind": "petrol"}],
        "scales": [{"id": "pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.5 kg"}],
        "weigh_ins": [{**once, **wheels}],
        "class_sheets": [{"id": "s", "minimum": "880 kg", "fuel": "empty", "driver": "out"}],
    }
    alone = weigh_in(read_garage(garage), "w")
    often = weigh_in(read_garage({**garage, "repeats": [{"id": f"r{n}", "of": "w", **wheels} for n in range(19)]}), "w")
    for before, after in ((alone.weight, often.weight), (alone.loads.loads["lf"], often.loads.loads["lf"])):
        shared = {source: u for source, u in before.sources.items() if not source.startswith("rep:")}
        assert {source: after.sources[source] for source in shared} == pytest.approx(shared)
    assert {source.split(":")[0] for source in alone.weight.sources} == {"cal", "round", "rep", "fuel", "fuel-density"}
    assert often.loads.loads["lf"].sources["rep:w:lf"] < alone.loads.loads["lf"].sources["rep:w:lf"] / sqrt(20)
