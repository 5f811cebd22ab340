"""The weight from all weigh-ins against independent solvers: normal equations, and a fit of everything at once."""

from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.optimize import least_squares

from tarebook.core.fusion import misfit, precision
from tarebook.core.fusion.evidence import Evidence, evidence
from tarebook.core.fusion.fusion import Fusion, fused
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage
from tarebook.core.numbers.uncertain import Uncertain, covariance, weighted_sum
from tarebook.core.standing.given import given_by
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.weigh_in import loads_of
from tarebook.core.whole_car.weighed import in_order

SEEDS = range(12)


def looks(seed: int, count: int = 7, sources: int = 5) -> tuple[np.ndarray, np.ndarray]:
    """Values, and what each of so many shared and own errors of standard deviation one moves them by."""
    random = np.random.default_rng(seed)
    shared = random.normal(0.0, random.choice([0.1, 1.0, 3.0], (1, sources)), (count, sources))
    own = np.diag(random.uniform(0.1, 2.0, count))
    errors = np.hstack([shared, own])
    return 1000.0 + errors @ random.normal(size=errors.shape[1]), errors


def by_normal_equations(values: np.ndarray, errors: np.ndarray, columns: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Every unknown explicit: the columns' amounts (flat priors), each shared error (N(0, 1)); own errors as noise."""
    count, flat = len(values), columns.shape[1]
    shared, own = errors[:, :-count], np.diag(errors[:, -count:])
    rows = np.hstack([columns, shared]) / own[:, None]
    priors = np.hstack([np.zeros((shared.shape[1], flat)), np.eye(shared.shape[1])])
    stacked = np.vstack([rows, priors])
    normal = np.linalg.inv(stacked.T @ stacked)
    solution = normal @ stacked.T @ np.concatenate([values / own, np.zeros(shared.shape[1])])
    return solution[:flat], normal[:flat, :flat]


def told(errors: np.ndarray, flat: list[list[float]]) -> np.ndarray:
    covariance = errors @ errors.T
    kept = precision.telling(covariance)
    assert kept == list(range(len(covariance)))
    found, _ = precision.precision(covariance, kept)
    for column in flat:
        found = precision.swept(found, np.array(column), precision.least_telling(found))
    return found


@pytest.mark.parametrize("seed", SEEDS)
def test_the_best_mean_is_the_joint_least_squares_answer_over_all_errors(seed):
    values, errors = looks(seed)
    weights = precision.best_weights(told(errors, []))
    amounts, doubt = by_normal_equations(values, errors, np.ones((7, 1)))
    assert np.dot(weights, values) == pytest.approx(amounts[0], rel=1e-9)
    assert np.linalg.norm(errors.T @ weights) == pytest.approx(doubt[0, 0] ** 0.5, rel=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_parts_of_unknown_mass_are_unknowns_of_the_same_fit(seed):
    values, errors = looks(seed)
    flat = [[-2.0, -2.0, -2.0, 0.0, 0.0, 0.0, 0.0], [-1.0, -1.0, 0.0, 0.0, -1.0, 0.0, 0.0]]
    weights = precision.best_weights(told(errors, flat))
    columns = np.column_stack([np.ones(7), *flat])
    amounts, doubt = by_normal_equations(values, errors, columns)
    assert np.dot(weights, values) == pytest.approx(amounts[0], rel=1e-9)
    assert np.linalg.norm(errors.T @ weights) == pytest.approx(doubt[0, 0] ** 0.5, rel=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_change_is_as_large_and_as_sure_as_an_unknown_of_its_own_in_the_joint_fit(seed):
    values, errors = looks(seed)
    beside = precision.swept(told(errors, []), np.ones(7), 0.0)
    found = misfit.candidates(beside, values, precision.least_telling(beside))
    for candidate in range(11):
        columns = np.column_stack([np.ones(7), misfit.column(7, candidate)])
        amounts, doubt = by_normal_equations(values, errors, columns)
        assert found.told[candidate] / found.gram[candidate][candidate] == pytest.approx(amounts[1], rel=1e-7)
        assert found.gram[candidate][candidate] ** -0.5 == pytest.approx(doubt[1, 1] ** 0.5, rel=1e-9)


def test_of_looks_that_tell_the_same_the_later_is_kept_and_nothing_breaks():
    same = np.array([[4.0, 4.0, 1.0], [4.0, 4.0, 1.0], [1.0, 1.0, 9.0]])
    kept = precision.telling(same)
    assert kept == [1, 2]
    found, likely = precision.precision(same, kept)
    assert found[1:, 1:] == pytest.approx(np.linalg.inv(same[1:, 1:]))
    assert likely == pytest.approx(np.linalg.slogdet(same[1:, 1:])[1])
    assert [row[0] for row in found] == [0.0, 0.0, 0.0]
    assert precision.telling(np.zeros((2, 2))) == []


# A garage, and the same garage fitted with every gain, part, litre and density as an unknown, readings as they showed.

PADS, AXLES, BENCH = 0.002, 0.005, 0.002  # relative standard uncertainties assumed by kind of scale
PLATFORM, LITRE, DENSITY = 0.001, 0.001, (747.5, 27.5 / 3**0.5)
CAR_SCALES = {"pads": (PADS, 0.4), "axles": (AXLES, 0.8), "platform": (PLATFORM, 0.3)}


def garage(seed: int) -> dict[str, Any]:
    """Six weigh-ins on three scales between jobs, fuel and parts known as noted; nothing unlogged."""
    random = Random(seed)
    parts = {f"p{n}": random.uniform(2.0, 20.0) for n in range(10)}
    gains = {name: random.gauss(0.0, gain) for name, (gain, _) in CAR_SCALES.items()}
    bench = random.gauss(0.0, BENCH)
    then = {name: random.randrange(8) for name in parts}
    weigh_ins = []
    for k in range(6):
        scale = random.choice(sorted(CAR_SCALES))
        litres = random.uniform(5.0, 40.0)
        load = 1000.0 - sum(mass for name, mass in parts.items() if then[name] <= k) + litres * 0.74
        shown = load * (1.0 + gains[scale]) + random.gauss(0.0, CAR_SCALES[scale][1])
        said = {"fuel": f"{litres + random.uniform(-1, 1):.3f} L", "fuel_within": "1 L"}
        jobs = [f"j-{name}" for name in parts if then[name] <= k]
        weigh_ins.append({
            "id": f"k{k}", "layout": "total", "total": f"{shown:.2f} kg", "scale": scale, "trim": "event", "at": f"{k}",
            "jobs": jobs, "official": scale == "platform", **said,
        })  # fmt: skip
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol"}],
        "scales": [
            {"id": "pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.4 kg"},
            {"id": "axles", "kind": "axle_pads", "division": "0.1 kg", "repeatability": "0.8 kg"},
            {"id": "platform", "kind": "platform", "division": "0.1 kg", "repeatability": "0.3 kg",
             "accuracy_class": None},
            {"id": "bench", "kind": "bench", "division": "0.1 kg"},
        ],
        "parts": [{"id": name} for name in parts],
        "weighings": [
            {"id": f"w-{name}", "of": name, "method": "direct", "shown": f"{mass * (1 + bench):.2f} kg",
             "scale": "bench"}
            for name, mass in parts.items()
        ],
        "jobs": [{"id": f"j-{name}", "state": "fitted"} for name in parts],
        "job_parts": [{"id": f"q-{name}", "job": f"j-{name}", "part": name, "way": "off"} for name in parts],
        "weigh_ins": weigh_ins,
        "class_sheets": [
            {"id": "sheet", "minimum": "900 kg", "driver": "out", "fuel": "stated", "fuel_stated": "10 L",
             "scale_division": "0.1 kg"}
        ],
    }  # fmt: skip


def fusion(book: Garage) -> Fusion:
    known = masses(book)
    given = given_by(book, known, "sheet")
    found = evidence(given.weighed, given.now, given.nets, given.condition)
    assert isinstance(found, Evidence)
    return fused(found)


def fitted_at_once(book: Garage) -> tuple[np.ndarray, np.ndarray, list[str]]:
    """Weight now at the class's fuel and the gains: their most likely values and covariance, by a non-linear fit."""
    weigh_ins, parts = in_order(book), sorted(book.parts)
    prior = {s: platform_u(book, s) if s == "platform" else CAR_SCALES[s][0] for s in CAR_SCALES}
    names = ["m0", *sorted(CAR_SCALES), "bench", "density", *parts, *(each.id for each in weigh_ins)]
    start = np.array(
        [
            1000.0,
            0,
            0,
            0,
            0,
            DENSITY[0],
            *(weighing(book, p) for p in parts),
            *(each.fuel.value for each in weigh_ins if each.fuel),
        ]
    )

    def misses(x: np.ndarray) -> np.ndarray:
        at = dict(zip(names, x, strict=True))
        rows = [at[s] / prior[s] for s in CAR_SCALES] + [at["bench"] / BENCH, (at["density"] - DENSITY[0]) / DENSITY[1]]
        rows += [(weighing(book, p) - (1 + at["bench"]) * at[p]) / (0.1 / 12**0.5) for p in parts]
        for each in weigh_ins:
            assert each.fuel
            assert each.total
            assert each.scale
            rows.append((each.fuel.value - at[each.id]) / (LITRE / 3**0.5))
            load = at["m0"] - sum(at[job[2:]] for job in each.jobs or ()) + at[each.id] * at["density"]
            noise = (0.01 / 12 + CAR_SCALES[each.scale][1] ** 2) ** 0.5
            rows.append((each.total.value - (1 + at[each.scale]) * load) / noise)
        return np.array(rows)

    sizes = np.array([1000.0, 0.01, 0.01, 0.01, 0.01, 100.0, *[10.0] * len(parts), *[0.01] * len(weigh_ins)])
    fit = least_squares(misses, start, x_scale=sizes, xtol=1e-15, ftol=1e-15, gtol=1e-15)
    spread = np.linalg.inv(fit.jac.T @ fit.jac)
    takes = np.zeros((4, len(names)))
    takes[0, 0] = 1.0
    takes[0, 6 : 6 + len(parts)] = -1.0
    takes[0, 5] = 10 * LITRE
    takes[1:4, 1:4] = np.eye(3)
    return takes @ fit.x, takes @ spread @ takes.T, ["weight", *sorted(CAR_SCALES)]


def weighing(book: Garage, part: str) -> float:
    return book.weighings[f"w-{part}"].shown.value


def platform_u(book: Garage, scale: str) -> float:
    """What is assumed of a platform of unknown class at the load of this car: class III in service."""
    model = masses(book).scales[scale]
    loads = [loads_of(book, each, masses(book)) for each in book.weigh_ins.values() if each.scale == scale]
    return loads[0].gain.u if loads else model.gain.u


@pytest.mark.parametrize("seed", SEEDS)
def test_the_weight_is_that_of_a_fit_of_every_error_at_once(seed):
    book = read_garage(garage(seed))
    found = fusion(book)
    weights = precision.best_weights(found.views[0].told.matrix)
    plain = found.evidence.weighted(weights.tolist())
    answers, doubts, _ = fitted_at_once(book)
    # Products of two errors, a gain times a doubtful kilogram, are all that is left out: hundredths of u.
    assert abs(plain.value - answers[0]) < 0.02 * doubts[0, 0] ** 0.5
    assert plain.u == pytest.approx(doubts[0, 0] ** 0.5, rel=0.01)


@pytest.mark.parametrize("seed", SEEDS)
def test_what_the_weigh_ins_tell_of_a_scale_is_what_the_fit_at_once_says_of_its_gain(seed):
    book = read_garage(garage(seed))
    found = fusion(book)
    answers, doubts, names = fitted_at_once(book)
    for at, scale in enumerate(names[1:], start=1):
        prior = Uncertain(
            0.0, {f"cal:{scale}": platform_u(book, scale) if scale == "platform" else CAR_SCALES[scale][0]}
        )
        shared = found.evidence.shared_with(prior)
        by_looks = (-(found.views[0].told.beside @ np.array(shared))).tolist()
        terms = found.evidence.expanded(by_looks)
        known = weighted_sum([prior, *(each for each, _ in terms)], [1.0, *(weight for _, weight in terms)])
        weight = found.evidence.weighted(precision.best_weights(found.views[0].told.matrix).tolist())
        assert abs(known.value - answers[at]) < 0.02 * doubts[at, at] ** 0.5
        assert known.u == pytest.approx(doubts[at, at] ** 0.5, rel=0.01)
        expected = doubts[0, at] / (doubts[0, 0] * doubts[at, at]) ** 0.5
        assert covariance(weight, known) / (weight.u * known.u) == pytest.approx(expected, abs=0.01)
