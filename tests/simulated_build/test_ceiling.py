"""The ceiling is Bayes' rule, and what is told of causes is counted as it was told."""

from dataclasses import replace
from math import log, sqrt
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from scipy.stats import multivariate_normal

from tests.simulated_build.blamed import Blamed, calibration, score, told_of
from tests.simulated_build.ceiling import Idea, ideas, likely, odds, shared_out
from tests.simulated_build.evidence import Evidence
from tests.simulated_build.garage import weigh_in_id
from tests.simulated_build.run import world_of
from tests.simulated_build.scenarios import SCENARIOS
from tests.simulated_build.slips import CHANCES, DRAWS

SEED, WORLDS = 20261125, 60
EVEN = 0.1  # where every chance is nearly none or all
A = np.array([[0.5, 0.3, 0.0, 0.0], [0.0, 0.3, 0.4, 0.0], [0.2, 0.0, 0.0, 0.6]])
OFF, STEP = np.array([0.0, 4.0, 0.0]), np.array([0.0, 1.0, 1.0])


def test_two_hypotheses_have_the_odds_of_their_densities():
    """Against densities of the differences between readings (scipy), in which the unknown weight is gone."""
    z = np.array([900.0, 903.8, 902.1])
    one, two = (
        Idea("off", OFF, np.array([0.3]), np.ones(1)),
        Idea("step", STEP, np.array([0.5, 0.2]), np.array([3.0, 5.0])),
    )
    differences = np.array([[-1.0, 1.0, 0.0], [-1.0, 0.0, 1.0]])
    spread = differences @ A @ A.T @ differences.T
    density = {
        kind: sum(
            chance * multivariate_normal(differences @ shape * size, spread).pdf(differences @ z)
            for chance, size in sizes
        )
        for kind, shape, sizes in (("off", OFF, [(0.3, 1.0)]), ("step", STEP, [(0.5, 3.0), (0.2, 5.0)]))
    }
    found = shared_out(likely(Evidence(z, A), iter([one, two])))
    assert found["off"] / found["step"] == pytest.approx(density["off"] / density["step"], rel=1e-9)
    assert sum(found.values()) == pytest.approx(1.0)


def test_what_is_too_small_to_be_seen_has_no_odds():
    evidence = Evidence(np.array([900.0, 903.8, 902.1]), A)
    least = 4.3 / sqrt(float(STEP @ evidence.w @ STEP))
    sizes = np.array([0.99 * least, 1.01 * least])
    both = likely(evidence, iter([Idea("step", STEP, np.array([0.5, 0.5]), sizes)]))
    larger = likely(evidence, iter([Idea("step", STEP, np.array([0.5]), sizes[1:])]))
    assert [weight for _, weight in both] == pytest.approx([weight for _, weight in larger])
    assert likely(evidence, iter([Idea("step", STEP, np.array([0.5]), sizes[:1])])) == []


@pytest.mark.parametrize("kind", sorted(DRAWS.keys() - {"other_scale", "pounds"}))
def test_every_slip_that_is_drawn_is_one_of_those_weighed(kind):
    """Another scale than noted moves no reading and has a rule of its own."""
    scenario = SCENARIOS["mix-6"]
    scenario = replace(scenario, setting=replace(scenario.setting, slip=kind))
    for number in range(4):
        world = world_of(scenario, SEED, number)
        assert world.slip is not None
        effect = np.array(world.slip.effect)
        away = np.inf
        for idea in ideas(world):
            if idea.kind == kind:
                for size in idea.sizes:
                    apart = idea.shape * size - effect
                    away = min(away, float(np.abs(apart - apart[0]).max()))
        assert away < 0.8  # displays of half a kilogram, and the steps between the sizes tried


def test_the_odds_are_as_often_right_as_they_say():
    """Of the kinds told first with a chance p, p are true, and of each kind as many as its chances come to.

    Within four standard errors, over drawn worlds.
    """
    told, kinds = [], dict.fromkeys(CHANCES, (0.0, 0.0))
    for number in range(WORLDS):
        world = world_of(SCENARIOS["mix-4"], SEED, number)
        found = odds(world)
        assert world.slip is not None
        first = next(iter(found))
        told.append((found[first], first == world.slip.kind, found.get(world.slip.kind, 0.0)))
        for kind, each in found.items():
            more, variance = kinds[kind]
            kinds[kind] = (more + (kind == world.slip.kind) - each, variance + each * (1.0 - each))
    chance, true, of_true = map(np.array, zip(*told, strict=True))
    assert abs(np.sum(true - chance)) < 4.0 * sqrt(np.sum(chance * (1.0 - chance)))
    assert all(abs(more) < 4.0 * sqrt(variance) + EVEN for more, variance in kinds.values())
    assert (of_true > 0.0).all()
    assert np.mean(np.log(of_true)) > log(1.0 / 13.0)


def fused(*changes: tuple[int, int, float, tuple[object, ...]]) -> Any:
    """What the product says: (weigh-ins beside, size, causes) of each change."""
    return SimpleNamespace(
        counted=range(6),
        changes=[
            SimpleNamespace(
                earliest=weigh_in_id(first), latest=weigh_in_id(last), first=weigh_in_id(first),
                second=weigh_in_id(last), size=SimpleNamespace(value=size), causes=causes,
            )
            for first, last, size, causes in changes
        ],
    )  # fmt: skip


def test_the_causes_are_those_of_the_largest_change_where_the_slip_shows():
    cause = SimpleNamespace
    said = fused(
        (0, 1, 9.0, (cause(code="wet", odds=1.0),)),
        (3, 4, -5.0, (cause(code="tare", odds=0.5), cause(code="chance", odds=0.2), cause(code="person", odds=0.1))),
        (3, 4, 2.0, (cause(code="fuel", odds=1.0),)),
    )
    assert told_of(said, (3,)) == (("container", 0.5), ("somebody", 0.1))
    assert told_of(said, (2,)) is None


def test_causes_without_odds_are_kept_in_order_and_those_of_one_kind_are_one():
    said = fused((3, 4, 2.0, ("put_in", "job_list", "somebody_in", "driver_missing")))
    assert told_of(said, (3,)) == (("unlogged", None), ("wrong_side", None), ("somebody", None))


def test_causes_are_counted_by_what_went_wrong_and_by_their_odds():
    best = (("wet", 0.9), ("fuel", 0.1))
    blamed = [
        Blamed("wet", (("fuel", 0.7), ("unit", 0.2), ("wet", 0.1)), best),
        Blamed("wet", (("wet", 0.7), ("fuel", 0.3)), best),
        Blamed("fuel", None, best),
        Blamed("fuel", (("a", 0.1), ("b", 0.1), ("c", 0.1), ("fuel", 0.05)), best),
    ]
    rows = {
        row.split("|")[1].strip(): [cell.strip() for cell in row.split("|")[2:-1]] for row in score(blamed).split("\n")
    }
    shares = {kind: [cell.split(" ")[0] for cell in rows[kind]] for kind in ("wet", "fuel", "any")}
    assert shares["wet"] == ["2", "100.0", "50.0", "100.0", "100.0", "100.0"]
    assert shares["fuel"] == ["2", "50.0", "0.0", "0.0", "0.0", "100.0"]
    assert shares["any"] == ["4", "75.0", "25.0", "50.0", "50.0", "100.0"]
    line = next(row for row in calibration(blamed).split("\n") if "60 to 80" in row)
    assert [cell.strip().split(" ")[0] for cell in line.split("|")[2:5]] == ["2", "70", "50.0"]
