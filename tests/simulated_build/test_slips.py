"""Each slip changes the records it should and no others, is large enough to be seen, and leaves the truth alone."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import sqrt

import numpy as np
import pytest

from tests.simulated_build.evidence import evidence_of
from tests.simulated_build.garage import READY, records
from tests.simulated_build.garages import WANDERS, with_garage
from tests.simulated_build.readings import car_looks
from tests.simulated_build.run import world_of
from tests.simulated_build.scenarios import SCENARIOS
from tests.simulated_build.setting import Setting
from tests.simulated_build.slips import CHANCES, DRAWS, SEEN, effect_of, with_slip
from tests.simulated_build.world import CAR_SCALES, HOME, World, draw

SEED, WORLDS, WEIGH_INS = 20261125, 200, 6
MORE_THAN_ONE = {"other_scale", "unlogged", "twice", "pounds", "unit", "container", "part_off"}
READINGS = {"lf", "rf", "lr", "rr", "front", "rear", "total"}
# Kind → how many records of each list it adds, and the fields it changes in how many.
ONE_WEIGH_IN: Mapping[str, int | None] = {"weigh_ins": 1}
ADDED = ("parts", "jobs", "job_parts", "weighings")  # where a job is entered twice with a part of its own
CHANGED: dict[str, tuple[set[str], Mapping[str, int | None]]] = {
    "unlogged": (READINGS, {"weigh_ins": None}),
    "twice": ({"jobs"}, {"weigh_ins": None}),
    "wrong_side": ({"jobs"}, ONE_WEIGH_IN),
    "pounds": ({"shown", "shown_empty"}, {"weighings": 1}),
    "unit": ({"shown", "shown_empty"}, {"weighings": 1}),
    "container": ({"method", "shown_empty"}, {"weighings": 1}),
    "other_scale": ({"scale", "official"}, ONE_WEIGH_IN),
    "other_driver": (READINGS, ONE_WEIGH_IN),
    "somebody": (READINGS, ONE_WEIGH_IN),
    "fuel": ({"fuel"}, ONE_WEIGH_IN),
    "ballast": ({"ballast"}, ONE_WEIGH_IN),
    "wet": (READINGS, ONE_WEIGH_IN),
    "part_off": (READINGS, {"weigh_ins": None}),
    "zero": (READINGS, ONE_WEIGH_IN),
}


def clean(kind: str, seed: int) -> World:
    random = np.random.default_rng([SEED, seed])
    return with_garage(random, draw(random, Setting(weigh_ins=WEIGH_INS, slip=kind)))


def slipped(kind: str) -> Iterator[tuple[World, World]]:
    """Worlds without and with the slip."""
    for seed in range(12):
        world = clean(kind, seed)
        found = with_slip(np.random.default_rng([SEED, seed, 1]), world)
        if found is not None:
            yield world, found


def fields_that_differ(before: dict[str, object], after: dict[str, object]) -> set[str]:
    return {name for name in before.keys() | after.keys() if before.get(name) != after.get(name)}


def test_every_kind_of_slip_is_drawn_and_checked():
    assert DRAWS.keys() == CHANGED.keys() == CHANCES.keys() | {"pounds"}
    assert sum(CHANCES.values()) == pytest.approx(1.0)


@pytest.mark.parametrize("kind", DRAWS)
def test_a_slip_changes_the_records_it_should_and_no_others(kind):
    fields, many = CHANGED[kind]
    worlds = list(slipped(kind))
    assert len(worlds) >= 6
    for world, found in worlds:
        before, after = records(world), records(found)
        own = {name for name in ADDED if found.parts[-1].same_as is None or name in ("jobs", "job_parts")}
        changed: dict[str, int] = {}
        for name in (name for name, kept in before.items() if isinstance(kept, list)):
            then, now = ({each["id"]: each for each in every[name]} for every in (before, after))
            assert then.keys() <= now.keys()
            assert len(now) - len(then) == (kind == "twice" and name in own)
            differ = [fields_that_differ(then[each], now[each]) for each in then if then[each] != now[each]]
            assert all(each <= fields for each in differ)
            changed.update({name: len(differ)} if differ else {})
        assert changed.keys() == many.keys()
        assert all(count in (None, changed[name]) for name, count in many.items())


@pytest.mark.parametrize("kind", DRAWS)
def test_a_slip_can_be_seen_and_only_what_is_unlogged_moves_the_truth(kind):
    for world, found in slipped(kind):
        assert found.slip is not None
        assert found.slip.kind == kind
        assert evidence_of(world).seen(np.array(found.slip.effect)) >= SEEN
        assert found.truth == pytest.approx(world.truth + sum(found.steps.values()))
        assert bool(found.steps) == (kind == "unlogged" or (kind == "part_off" and not found.extra))


@pytest.mark.parametrize("kind", sorted(DRAWS.keys() - MORE_THAN_ONE))
def test_what_is_wrong_with_one_weigh_in_moves_that_reading_alone(kind):
    for _, found in slipped(kind):
        assert found.slip is not None
        moved = np.abs(found.slip.effect)
        assert np.sum(moved > 1e-9) == 1
        assert found.slip.gaps == tuple(gap for gap in (moved.argmax() - 1, moved.argmax()) if 0 <= gap < WEIGH_INS - 1)


def test_a_job_entered_twice_makes_every_reading_before_it_too_low():
    for world, found in slipped("twice"):
        part = found.parts[-1]
        off = evidence_of(found).z - evidence_of(world).z
        entered = next(k for k, jobs in enumerate(found.lists) if part.job in jobs)
        assert off == pytest.approx([part.signed * part.mass] * entered + [0.0] * (WEIGH_INS - entered), rel=0.05)


def test_another_scale_than_noted_is_off_by_what_the_two_differ():
    for world, found in slipped("other_scale"):
        k = next(k for k in range(WEIGH_INS) if found.on[k] != found.noted_on[k])
        as_noted = replace(world, on=found.noted_on)
        off = world.load(k) * (world.gain_at(k) - as_noted.gain_at(k))
        assert effect_of(world, found, evidence_of(world))[k] == pytest.approx(off)


@pytest.mark.parametrize("name", HOME)
def test_a_scale_at_home_walks_as_far_as_stated_and_the_official_one_not_at_all(name):
    far = []
    for seed in range(WORLDS):
        random = np.random.default_rng([SEED, seed])
        world = with_garage(random, draw(random, Setting(weigh_ins=WEIGH_INS, wander="walk")))
        assert "platform" not in world.drift
        assert world.drift[name][0] == 0.0
        far.append(np.diff(world.drift[name]))
    steps = np.array(far) / WANDERS
    assert abs(steps.mean()) < 4 / sqrt(steps.size)
    assert abs((steps**2).mean() - 1) < 4 * sqrt(2 / steps.size)
    # Each step is a new one: a walk is as far off as its steps' number has the root of.
    whole = steps.sum(axis=1)
    assert abs((whole**2).mean() / (WEIGH_INS - 1) - 1) < 4 * sqrt(2 / WORLDS)


def test_a_slope_goes_one_way_and_moves_the_displays_by_it():
    random = np.random.default_rng(SEED)
    world = with_garage(random, draw(random, Setting(weigh_ins=WEIGH_INS, wander="slope", home=True)))
    assert np.abs(np.diff(world.drift["pads"])) == pytest.approx([WANDERS] * (WEIGH_INS - 1))
    still = replace(world, drift={})
    for k in range(WEIGH_INS):
        more = sum(car_looks(world, k)) - sum(car_looks(still, k))
        assert more == pytest.approx(world.load(k) * world.drift["pads"][k], abs=0.4)


@pytest.mark.parametrize("asked", [False, True])
def test_pads_that_were_not_zeroed_are_off_by_as_much_in_all_and_the_record_says_so_where_asked(asked):
    random = np.random.default_rng(SEED)
    world = with_garage(random, draw(random, Setting(weigh_ins=WEIGH_INS, zero=4.0, asked=asked)))
    zeroed = replace(world, zeros={})
    for k, record in enumerate(records(world)["weigh_ins"]):
        off = sum(car_looks(world, k)) - sum(car_looks(zeroed, k))
        pads = world.on[k] == "pads"
        assert abs(off) == pytest.approx(4.0 if pads else 0.0, abs=0.4)
        expected = [point for point in READY if not (pads and point == "zeroed")] if asked else None
        assert record.get("ready") == expected
    assert "pads" in world.on


def test_checks_of_the_car_s_scales_are_recorded_with_what_they_showed():
    world = world_of(SCENARIOS["noted-6"], SEED, 0)
    checks = {each["scale"]: each for each in records(world)["scale_checks"] if each["scale"] in CAR_SCALES}
    assert checks.keys() == set(HOME)
    for name, check in checks.items():
        assert float(check["shown"].split()[0]) == pytest.approx(
            world.known[name][0] * (1 + world.gains[name]), abs=0.51 * CAR_SCALES[name].division
        )
