"""Behaviours of scales and changes, averaged, against an independent smoother, normal densities and drawn mixtures."""

from math import log, sqrt

import numpy as np
import pytest
from scipy import stats
from statsmodels.tsa.statespace.kalman_smoother import KalmanSmoother

from tarebook.core.fusion import average, behaviour, misfit, mixture, precision, scatter, views
from tarebook.core.fusion.behaviour import Behaviour, Group
from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.given import given_by
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.weighed import Weighed

SEEDS = range(8)
COUNT = 7


def behave(walk: float = 0.0, slope: float = 0.0, zero: float = 0.0, times: float = 1.0) -> Behaviour:
    return Behaviour(walk, slope, zero, times, 0.0)


class Looks:
    """Looks at one car on two scales; every other source a column of its own."""

    def __init__(self, seed: int) -> None:
        random = np.random.default_rng(seed)
        self.random = random
        self.on = random.integers(0, 2, COUNT)
        self.months = np.cumsum(random.uniform(0.2, 3.0, COUNT))
        self.own = random.uniform(0.05, 0.5, COUNT) ** 2
        self.gains = random.uniform(0.0005, 0.003, 2)
        self.loads = random.uniform(900.0, 1100.0, COUNT)
        self.values = random.normal(0.0, 1.0, COUNT)
        self.groups = tuple(
            Group(
                f"s{scale}",
                tuple(at.tolist()),
                tuple((self.months[at] - self.months[at[0]]).tolist()),
                tuple(at.tolist()),
            )
            for scale in (0, 1)
            if len(at := np.flatnonzero(self.on == scale))
        )
        columns = np.array([np.where(self.on == scale, self.loads * self.gains[scale], 0.0) for scale in (0, 1)]).T
        self.bare = columns @ columns.T + np.diag(self.own)

    def view(self, how: Behaviour) -> views.View:
        root = views.root(self.bare + behaviour.scattered(how, self.groups, self.loads, self.own), list(range(COUNT)))
        for column in behaviour.moved(how, self.groups, self.loads):
            root = root.also(column)
        return views.view(how, root, [], self.values)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_walking_gain_and_a_zero_are_those_of_a_general_smoother(seed):
    """statsmodels, a Kalman smoother with states weight, two gains that walk and two zeros; its filter diffuse."""
    looks = Looks(seed)
    walk, zero = 0.0007, 2.5
    smoother = KalmanSmoother(k_endog=1, k_states=5, k_posdef=2)
    smoother.bind(looks.values[None, :].copy())
    design = np.zeros((1, 5, COUNT))
    for at, scale in enumerate(looks.on):
        design[0, :, at] = [
            1.0,
            *(looks.loads[at] * (scale == n) for n in (0, 1)),
            *(float(scale == n) for n in (0, 1)),
        ]
    smoother["design"] = design
    smoother["obs_cov"] = looks.own[None, None, :]
    smoother["transition"] = np.eye(5)
    smoother["selection"] = np.eye(5)[:, 1:3]
    steps = np.diff(looks.months, append=looks.months[-1])
    first = [looks.months[looks.on == n].min(initial=np.inf) for n in (0, 1)]
    # A gain walks from the first weigh-in on its scale.
    goes = [[step if looks.months[at] >= first[n] else 0.0 for at, step in enumerate(steps)] for n in (0, 1)]
    smoother["state_cov"] = (
        np.array([[np.array(goes[0]), np.zeros(COUNT)], [np.zeros(COUNT), np.array(goes[1])]]) * walk**2
    )
    start = np.diag([1e9, *(looks.gains**2), zero**2, zero**2])
    smoother.initialize_known(np.zeros(5), start)
    found = smoother.smooth()
    seen = looks.view(behave(walk=walk, zero=zero)).told
    weights = precision.best_weights(seen.matrix)
    assert weights @ looks.values == pytest.approx(found.smoothed_state[0, -1], rel=1e-5, abs=1e-5)
    assert 1.0 / seen.matrix.sum() == pytest.approx(found.smoothed_state_cov[0, 0, -1], rel=1e-5)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_behaviour_is_as_likely_as_the_normal_density_of_the_differences_says(seed):
    """What no weight can change are contrasts of the looks; scipy has their density."""
    looks = Looks(seed)
    contrast = np.linalg.svd(np.ones((1, COUNT)))[2][1:]
    steady, others = looks.view(behave()), (behave(walk=0.001), behave(slope=0.0005, zero=4.0), behave(times=3.0))

    def density(how: Behaviour) -> float:
        whole = looks.bare + behaviour.scattered(how, looks.groups, looks.loads, looks.own)
        whole = whole + sum(
            (np.outer(c, c) for c in behaviour.moved(how, looks.groups, looks.loads)), np.zeros_like(whole)
        )
        return float(stats.multivariate_normal(cov=contrast @ whole @ contrast.T).logpdf(contrast @ looks.values))

    for how in others:
        found = looks.view(how).likely - steady.likely
        assert found == pytest.approx(density(how) - density(behave()), abs=1e-7)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_mean_is_that_of_the_joint_fits_under_every_behaviour_with_every_set_of_changes(seed):
    """Value and variance of the mixture, each part of it fitted anew by the normal equations."""
    looks = Looks(seed)
    looks.values = looks.values + np.where(np.arange(COUNT) < 3, 0.0, 4.0)
    seen = [looks.view(behave()), looks.view(behave(walk=0.0005, times=3.0)), looks.view(behave(slope=0.001))]
    sets = average.sets_of(seen, COUNT - 1)
    weights = np.array([precision.best_weights(view.told.matrix) for view in seen])
    own = np.array([1.0 / view.told.matrix.sum() for view in seen])
    mean = average.averaged(sets, weights, looks.values)
    fits = []
    for at in range(len(sets.chance)):
        shapes = [misfit.column(COUNT, each) for each in (int(sets.a[at]), int(sets.b[at])) if each >= 0]
        if sets.off[at]:
            of = [int(sets.a[at]), int(sets.b[at])].index(COUNT - 2)
            shapes[of] = np.eye(COUNT)[-1]
        design, matrix = np.column_stack([np.ones(COUNT), *shapes]), seen[sets.view[at]].told.matrix
        doubt = np.linalg.inv(design.T @ matrix @ design)
        fits.append((sets.chance[at], (doubt @ design.T @ matrix @ looks.values)[0], doubt[0, 0]))
    chance, value, variance = np.array(fits).T
    assert chance.sum() == pytest.approx(1.0)
    assert mean.values == pytest.approx(value, rel=1e-7, abs=1e-7)
    assert mean.weights @ looks.values == pytest.approx(chance @ value, rel=1e-7)
    found = average.mixed(sets, mean, mean, average.covariance_by_set(sets, mean, mean, own))
    assert found == pytest.approx(chance @ (variance + (value - chance @ value) ** 2), rel=1e-7)


def test_a_quantile_of_a_spread_is_that_of_so_many_drawn_from_it():
    """Monte Carlo (JCGM 101:2008, 7): three answers, within four standard deviations of counting."""
    random = np.random.default_rng(20261129)
    chance, off, variance = np.array([0.6, 0.3, 0.1]), np.array([0.0, 3.0, -1.5]), np.array([0.25, 0.16, 4.0])
    spread = mixture.spread_of(chance, off, variance, about=1.0)
    draws = 400_000
    which = random.choice(3, draws, p=chance)
    drawn = 900.0 + off[which] + random.normal(0.0, np.sqrt(variance[which]))
    for bound in (897.0, 899.5, 900.4, 902.0):
        p = mixture.chance_below(bound, 900.0, 1.0, spread)
        assert abs(np.mean(drawn < bound) - p) < 4.0 * sqrt(p * (1.0 - p) / draws)
    for risk in (0.01, 0.05, 0.3):
        value = mixture.value_for(900.0, 1.0, spread, risk)
        assert mixture.chance_below(900.0, value, 1.0, spread) == pytest.approx(risk, rel=1e-9)
        assert abs(np.mean(drawn - 900.0 + value < 900.0) - risk) < 4.0 * sqrt(risk * (1.0 - risk) / draws)


def test_answers_near_each_other_are_taken_together_without_moving_mean_or_variance():
    random = np.random.default_rng(3)
    chance = random.dirichlet(np.ones(500))
    off, variance = random.normal(0.0, 1.0, 500), random.uniform(0.5, 2.0, 500)
    spread = mixture.spread_of(chance, off, variance, about=0.7)
    assert len(spread) < 60
    mean = sum(each.chance * each.off for each in spread)
    assert mean == pytest.approx(chance @ off)
    whole = sum(each.chance * (0.7 + each.more + (each.off - mean) ** 2) for each in spread)
    assert whole == pytest.approx(chance @ (variance + (off - mean) ** 2))


@pytest.mark.parametrize("freedom", [1, 2, 5, 11, 60])
def test_scatter_is_more_than_the_records_allow_where_chance_reaches_it_once_in_twenty(freedom):
    """The cube root of Wilson and Hilferty against scipy's χ²."""
    assert scatter.most(freedom) == pytest.approx(stats.chi2.ppf(0.95, freedom), rel=0.03)


def test_the_birge_ratio_of_a_published_average():
    """The charged kaon's mass, Review of Particle Physics (Particle Data Group): 493.677 MeV, scale factor 2.4.

    The five of its measurements that count in the factor; from memory.
    """
    mass = np.array([493.696, 493.636, 493.670, 493.657, 493.691])
    u = np.array([0.007, 0.011, 0.029, 0.020, 0.040])
    seen = views.view(behave(), views.root(np.diag(u**2), list(range(5))), [], mass - mass[-1])
    assert mass[-1] + precision.best_weights(seen.told.matrix) @ (mass - mass[-1]) == pytest.approx(493.677, abs=5e-4)
    assert scatter.birge(seen, 0) == pytest.approx(2.4, abs=0.05)


def test_behaviours_have_one_chance_among_them():
    every = behaviour.behaviours((Group("pads", (0, 1), (0.0, 1.0), (0, 1)),))
    assert sum(np.exp(each.likely) for each in every) == pytest.approx(1.0)
    assert every[0] == Behaviour(0.0, 0.0, 0.0, 1.0, every[0].likely)
    assert len(behaviour.behaviours(())) == 2
    assert every[0].likely == pytest.approx(log((1 - 0.5) * (1 - 0.25) * (1 - 0.15)))


def test_a_weigh_in_that_nobody_dated_is_a_month_after_the_one_before_and_before_the_first_that_is():
    def made(*days: str | None) -> list[Weighed]:
        lists = {
            "weigh_ins": [{"id": f"k{n}", "layout": "total", "trim": "event", "at": day} for n, day in enumerate(days)]
        }
        book = read_garage({"trim": "event", **lists})
        return list(given_by(book, masses(book)).weighed)

    def months(*days: str | None) -> list[float]:
        order = {each.record.id: month for each, month in zip(made(*days), behaviour.months(made(*days)), strict=True)}
        return [order[f"k{n}"] for n in range(len(days))]

    dated = months("2026-05-02", "2026-06-02T10:00:00Z", None)
    assert dated[1] - dated[0] == pytest.approx(31 / 30.4375)
    assert dated[2] - dated[1] == 1.0
    odd = months("2026-02-30", "2026-03-02")
    assert odd[1] - odd[0] == 1.0
    assert months(None, None) == [0.0, 1.0]


def test_the_age_of_a_check_is_not_asked_of_weigh_ins_that_nobody_dated():
    """A weigh-in that is being typed has no day yet: its scale has not aged two thousand years."""
    lists = {
        "scales": [{"id": "pads", "kind": "corner_pads"}],
        "scale_checks": [{"id": "c", "scale": "pads", "known": "400 kg", "known_within": "0.1 kg", "shown": "400.1 kg",
                          "at": "2026-05-02"}],
        "weigh_ins": [{"id": "k", "layout": "total", "total": "930 kg", "trim": "event", "scale": "pads"}],
    }  # fmt: skip
    book = read_garage({"trim": "event", **lists})
    known = masses(book)
    assert known.scales["pads"].checked == "2026-05-02"
    assert behaviour.groups(book, known.scales, given_by(book, known).weighed)[0].months == (0.0,)
