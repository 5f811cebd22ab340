"""The simulated builds are what they are said to be: drawn values have the means and variances that are stated."""

from dataclasses import replace
from math import sqrt

import numpy as np
import pytest

from tests.simulated_build.evidence import MIDDLE, evidence_of, u_of_steps
from tests.simulated_build.readings import car_looks, official_look, part_looks
from tests.simulated_build.run import world_of
from tests.simulated_build.scenarios import SCENARIOS
from tests.simulated_build.setting import MOST_WEIGH_INS, Setting
from tests.simulated_build.unlogged import with_steps
from tests.simulated_build.world import (
    CAR_SCALES,
    DENSITY,
    GUESS_BIAS,
    GUESS_WITHIN,
    JOBS,
    JOBS_AFTER,
    PART_SCALES,
    World,
    draw,
)

SEED, WORLDS, WEIGH_INS = 20261125, 400, MOST_WEIGH_INS
SETTING = Setting(repeats=0.5, stated=0.5, fuel_within=1.0, guessed=10)


@pytest.fixture(scope="module")
def worlds() -> list[World]:
    return [draw(np.random.default_rng([SEED, n]), SETTING) for n in range(WORLDS)]


def assert_spread(values: list[float], deviation: float, kurtosis: float = 3.0) -> None:
    """Mean zero and the deviation stated, each within four of its own standard errors."""
    off, n = np.array(values) / deviation, len(values)
    assert abs(off.mean()) < 4.0 / sqrt(n)
    assert abs((off**2).mean() - 1.0) < 4.0 * sqrt((kurtosis - 1.0) / n)


@pytest.mark.parametrize("name", [*CAR_SCALES, *PART_SCALES])
def test_a_scale_s_gain_has_the_spread_stated_for_its_kind(worlds, name):
    stated = {**CAR_SCALES, **PART_SCALES}[name].gain
    assert_spread([world.gains[name] for world in worlds], stated)


@pytest.mark.parametrize("name", CAR_SCALES)
def test_a_car_s_displays_have_the_variance_of_rounding_and_repeating(worlds, name):
    scale = CAR_SCALES[name]
    off = [
        sum(car_looks(world, k)) - world.load(k) * (1 + world.gains[name])
        for world in worlds
        for k in range(WEIGH_INS)
        if world.on[k] == name
    ]
    assert_spread(off, sqrt(scale.looks * scale.division**2 / 12 + SETTING.repeats**2))


def test_pads_only_or_once_at_an_event_is_what_the_car_stands_on():
    random = np.random.default_rng(SEED)
    assert draw(random, Setting(weigh_ins=4, home=True)).on == ("pads",) * 4
    assert draw(random, Setting(weigh_ins=4, event=True)).on == ("pads", "pads", "platform", "pads")


@pytest.mark.parametrize(("name", "looks"), [("kitchen", 1), ("hook", 1), ("floor", 2)])
def test_a_part_s_displays_have_the_variance_of_their_rounding(worlds, name, looks):
    off = []
    for world in worlds:
        for part in world.parts:
            if part.scale == name and part.guess is None:
                full, empty = part_looks(world, part)
                off.append(full - empty - part.mass * (1 + world.gains[name]))
    # The person's own rounding is one and the same for all parts of a world, so far fewer are independent.
    kept = off if looks == 1 else off[:: len(off) // WORLDS]
    assert_spread(kept, PART_SCALES[name].division * sqrt(looks / 12), kurtosis=2.4)


def test_litres_and_density_lie_evenly_within_what_is_said(worlds):
    noted = np.concatenate([world.noted - world.litres for world in worlds])
    assert np.abs(noted).max() <= SETTING.fuel_within
    assert_spread(list(noted), SETTING.fuel_within / sqrt(3), kurtosis=1.8)
    densities = [world.density for world in worlds]
    assert DENSITY[0] <= min(densities) <= max(densities) <= DENSITY[1]
    assert_spread([density - MIDDLE for density in densities], (DENSITY[1] - DENSITY[0]) / sqrt(12), kurtosis=1.8)


def test_guesses_have_a_width_of_their_own_and_a_bias_they_share(worlds):
    off = [[part.mass / part.guess - 1 for part in world.parts if part.guess is not None] for world in worlds]
    assert {len(each) for each in off} == {SETTING.guessed}
    own = GUESS_WITHIN / sqrt(3)
    assert_spread([each[0] for each in off], sqrt(GUESS_BIAS**2 + own**2))
    assert_spread([float(np.mean(each)) for each in off], sqrt(GUESS_BIAS**2 + own**2 / SETTING.guessed))


def test_the_jobs_and_the_scales_are_as_told(worlds):
    for world in worlds[:50]:
        assert {part.job for part in world.parts} == set(range(JOBS))
        assert {world.on.count(name) for name in CAR_SCALES} == {4}
        assert len(world.inside[WEIGH_INS]) == JOBS - 2
        assert world.inside[0] == frozenset()


@pytest.mark.parametrize("weigh_ins", [2, 4, 6, 12])
def test_however_few_weigh_ins_have_all_jobs_between_them_but_the_last_five(weigh_ins):
    for n in range(50):
        world = draw(np.random.default_rng([SEED, n]), Setting(weigh_ins=weigh_ins))
        first_in = [next(k for k, jobs in enumerate(world.inside) if job in jobs) for job in range(JOBS)]
        between = np.bincount(first_in, minlength=weigh_ins + 1)[1:-1]
        assert between.max() - between.min() <= 1
        assert first_in.count(weigh_ins) == JOBS_AFTER
        assert len(world.inside[-1]) == JOBS - 2
        assert len(world.on) == len(world.litres) == len(world.jitter) == weigh_ins


@pytest.mark.parametrize("weigh_ins", [2, 4, 6, 12])
def test_the_covariance_says_how_far_the_readings_are_off(weigh_ins):
    """Propagation against the draws: (z − truth)ᵀ S⁻¹ (z − truth) has the mean of a χ² with a freedom a weigh-in."""
    distances = []
    for n in range(WORLDS):
        world = draw(np.random.default_rng([SEED, n]), replace(SETTING, weigh_ins=weigh_ins))
        evidence = evidence_of(world)
        off = evidence.z - world.truth
        distances.append(float(off @ np.linalg.solve(evidence.s, off)))
    assert abs(np.mean(distances) - weigh_ins) < 4 * sqrt(2 * weigh_ins / WORLDS)


def test_the_official_platform_shows_a_car_as_its_own_gain_division_and_repeating_have_it(worlds):
    division, random = CAR_SCALES["platform"].division, np.random.default_rng(SEED)
    off = [official_look(random, world, 950.3) - 950.3 * (1 + world.gains["platform"]) for world in worlds]
    assert_spread(off, sqrt(division**2 / 12 + SETTING.repeats**2))


def test_the_fit_is_that_of_least_squares_with_every_error_as_an_unknown(worlds):
    for world in worlds[:20]:
        evidence, gaps = evidence_of(world), (2, 7)
        own = len(gaps) + 1
        sources = evidence.a.shape[1]
        design = np.column_stack([np.ones(WEIGH_INS), *(evidence.step(gap) for gap in gaps), evidence.a])
        # Readings are exact once all their errors are unknowns; a heavy weight says so.
        told = np.column_stack([np.zeros((sources, own)), np.eye(sources)])
        heavy = 1e6
        solved = np.linalg.lstsq(
            np.vstack([heavy * design, told]), np.concatenate([heavy * evidence.z, np.zeros(sources)]), rcond=None
        )[0]
        assert solved[:own] == pytest.approx(evidence.fit(gaps)[0], abs=1e-4)


def test_unlogged_changes_are_as_large_as_stated_in_gaps_of_every_place():
    seen: set[int] = set()
    for n in range(100):
        world = world_of(SCENARIOS["plain-two"], SEED, n)
        gaps = tuple(world.steps)
        sizes = np.abs(list(world.steps.values())) / u_of_steps(evidence_of(replace(world, steps={})), gaps)
        assert len(gaps) == 2
        assert (sizes >= 4.3 - 1e-9).all()
        assert (sizes <= 8.0 + 1e-9).all()
        seen.update(gaps)
    assert seen == set(range(WEIGH_INS - 1))


def test_the_u_of_one_step_is_that_of_its_quadratic_form(worlds):
    """u(δ)⁻² = hᵀWh with W = S⁻¹ − S⁻¹11ᵀS⁻¹/(1ᵀS⁻¹1): the weight now taken out of the covariance's inverse."""
    evidence = evidence_of(worlds[0])
    inverse, ones = np.linalg.inv(evidence.s), np.ones(WEIGH_INS)
    w = inverse - np.outer(inverse @ ones, inverse @ ones) / (ones @ inverse @ ones)
    for gap in range(WEIGH_INS - 1):
        h = evidence.step(gap)
        assert u_of_steps(evidence, (gap,))[0] == pytest.approx((h @ w @ h) ** -0.5, rel=1e-6)


def test_an_unlogged_change_moves_every_weigh_in_after_it_and_the_truth(worlds):
    world = worlds[0]
    changed = replace(world, steps={4: 3.0})
    moved = [changed.load(k) - world.load(k) for k in range(WEIGH_INS)]
    assert moved == pytest.approx([0.0] * 5 + [3.0] * 7)
    assert changed.truth - world.truth == pytest.approx(3.0)


def test_the_same_seed_and_number_draw_the_same_run_and_others_another():
    scenario = SCENARIOS["guesses-two"]
    again = [world_of(scenario, seed, number).truth for seed, number in ((1, 7), (1, 7), (1, 8), (2, 7))]
    assert again[0] == again[1]
    assert len(set(again)) == 3
    assert with_steps(np.random.default_rng(1), draw(np.random.default_rng(1), Setting())).steps == {}
