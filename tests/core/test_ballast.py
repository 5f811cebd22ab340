"""Ballast against full enumeration on seeded instances, and by its laws."""

from itertools import product
from math import ceil
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tarebook.core.ballast.ballast import Ballast, Carried, Place, Wanted, ballast
from tarebook.core.ballast.programme import Effort
from tarebook.core.numbers.uncertain import Uncertain

SEED = 20_261_125
CAR = Carried(Uncertain(900.0), Uncertain(480.0), Uncertain(460.0), 0.48, 2.42, 1.43, 1.395, 0.55)
BLOCKS = (0.467, 0.5, 0.907, 1.0, 1.134, 2.268, 2.5, 5.0)


def places(random: Random, count: int, most: int) -> list[Place]:
    alike = random.choice((None, 1.0, 2.5))
    return [
        Place(
            f"p{at}",
            round(random.uniform(-0.6, 3.2), 3),
            round(random.uniform(-0.6, 0.6), 3),
            random.choice((0.15, 0.2, round(random.uniform(0.1, 0.6), 3))),
            alike or random.choice(BLOCKS),
            random.randrange(most + 1),
        )
        for at in range(count)
    ]


def wanted(random: Random, room: float) -> Wanted:
    least = 900.0 + random.uniform(0.1, 0.9) * room
    front, left = 0.533 + random.uniform(-0.02, 0.015), 0.511 + random.uniform(-0.01, 0.005)
    return Wanted(
        least,
        random.choice((None, least + random.uniform(0.0, 20.0))),
        (front, front + random.uniform(0.002, 0.02)) if random.random() < 0.6 else None,
        (left, left + random.uniform(0.002, 0.01)) if random.random() < 0.6 else None,
        random.choice(("mass", "mass", "centre", "cross")),
    )


def reached(counts: tuple[int, ...], at: list[Place], aim: Wanted) -> tuple[int, ...] | None:
    """What a choice comes to, the first to be made least first, then as it is written down; None when not allowed."""
    put = [(place, place.block * count) for place, count in zip(at, counts, strict=True)]
    mass = sum(kg for _, kg in put)
    total = 900.0 + mass
    front = (480.0 + sum(kg * (1 - place.x / 2.42) for place, kg in put)) / total
    left = (460.0 + sum(kg * (0.5 - place.y / 1.4125) for place, kg in put)) / total
    # A share within a millionth and a mass within a milligram of its end is on it: masses are whole milligrams.
    fits = [total >= aim.least - 1e-6, aim.most is None or total <= aim.most + 1e-6]
    fits += [aim.front is None or aim.front[0] - 1e-7 <= front <= aim.front[1] + 1e-7]
    fits += [aim.left is None or aim.left[0] - 1e-7 <= left <= aim.left[1] + 1e-7]
    if not all(fits):
        return None
    grams = ceil(mass * 1000 - 1e-6)
    height = ceil(sum(kg * place.z for place, kg in put) * 10 - 1e-6)
    cross = max(1, ceil(abs(sum(kg * place.y for place, kg in put)) * 2 - 1e-6))
    centre = ceil((900.0 * 0.48 + sum(kg * place.z for place, kg in put)) / total * 10_000 - 1e-6)
    order = {"mass": (grams, height, cross), "centre": (centre, grams, cross), "cross": (cross, grams, height)}
    free = {**order, "centre": order["mass"], "cross": (grams, cross, height)}
    return (*(free if aim.most is None else order)[aim.prefer], *(-count for count in counts))


def test_no_choice_of_all_there_are_is_better():
    random, solved, refused = Random(SEED), 0, 0
    for _ in range(200):
        at = places(random, random.randrange(1, 6), 4)
        aim = wanted(random, sum(place.block * place.most for place in at))
        found = ballast(CAR, at, aim)
        assert isinstance(found, Ballast)
        assert found.proven
        every = [reached(counts, at, aim) for counts in product(*(range(place.most + 1) for place in at))]
        allowed = [each for each in every if each is not None]
        ours = tuple(found.put.get(place.id, 0) for place in at)
        if allowed:
            assert reached(ours, at, aim) == min(allowed)  # of those alike the one with the most at the first place
            assert found.missing == ()
            solved += 1
        else:
            assert found.missing
            refused += 1
    assert solved > 50
    assert refused > 50


def test_what_is_missing_is_what_even_all_of_it_leaves_missing():
    at = [Place("a", 1.0, 0.0, 0.2, 2.5, 4), Place("b", 2.0, 0.0, 0.2, 1.0, 3)]
    found = ballast(CAR, at, Wanted(920.0))
    assert isinstance(found, Ballast)
    assert found.put == {"a": 4, "b": 3}
    assert found.missing[0]["code"] == "ballast_short"
    assert found.missing[0]["data"]["kg"] == pytest.approx(7.0)


@settings(max_examples=40, deadline=None)
@given(st.randoms(use_true_random=False))
def test_one_place_more_never_makes_it_heavier(random):
    at = places(random, 4, 6)
    aim = Wanted(900.0 + random.uniform(0.0, 10.0), front=(0.5, 0.56))
    fewer, more = ballast(CAR, at[:3], aim), ballast(CAR, at, aim)
    assert isinstance(fewer, Ballast)
    assert isinstance(more, Ballast)
    if not fewer.missing:
        assert not more.missing
        assert more.added <= fewer.added + 0.001


@settings(max_examples=40, deadline=None)
@given(st.randoms(use_true_random=False))
def test_what_is_said_of_the_car_afterwards_is_what_its_corners_say(random):
    """Loads summed place by place: front and rear moments about the axles, left and right about the wheels."""
    at = places(random, 5, 6)
    found = ballast(CAR, at, Wanted(905.0))
    assert isinstance(found, Ballast)
    put = [(place, place.block * found.put.get(place.id, 0)) for place in at]
    rear_moment = 420.0 * 2.42 + sum(kg * place.x for place, kg in put)
    assert found.front.value == pytest.approx(1 - rear_moment / 2.42 / found.total.value)
    assert found.total.value == pytest.approx(900.0 + sum(kg for _, kg in put))
    assert found.cross == pytest.approx(sum(kg * place.y for place, kg in put))
    assert found.cross_load == pytest.approx(found.cross * (0.55 / 1.43 - 0.45 / 1.395))


def test_searches_share_what_they_may_look_at_and_one_cut_short_proves_nothing():
    effort = Effort()
    assert effort.share() == 10_000
    effort.spend(29_500, True)
    assert (effort.share(), effort.is_proven) == (500, True)
    effort.spend(500, False)
    effort.spend(1, True)
    assert (effort.share(), effort.is_proven) == (200, False)
