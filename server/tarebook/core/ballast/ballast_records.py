"""Ballast from a garage's records: the car without any, the places, what is wanted, and what to move.

The whole ballast is chosen anew, so what is on board comes off first: off the weight (`core/standing`) as much as is
counted in it, and off the shares what was there when they were weighed (`core/ballast/ballast_car`).
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tarebook.core.ballast.ballast import Ballast, Carried, Place, Wanted, ballast
from tarebook.core.ballast.ballast_answer import Share, mean_track, share_between
from tarebook.core.ballast.ballast_car import bare_car, place_of_record
from tarebook.core.garage.records import Car, Garage, Warned, warned
from tarebook.core.numbers.uncertain import Uncertain, multiply, subtract
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.weighing.weighing import Masses, masses


@dataclass(frozen=True, slots=True)
class BallastQuestion:
    """What is given in the records' stead: kg, m and fractions. `most`: ceiling of the car's weight."""

    places: tuple[Place, ...] | None = None
    total: float | None = None
    minimum: float | None = None
    guard: float | None = None
    most: float | None = None
    more: float | None = None
    height: float | None = None
    front_share: float | None = None
    left_share: float | None = None
    roll_front: float | None = None
    front: Share | None = None
    left: Share | None = None
    prefer: str | None = None


@dataclass(frozen=True, slots=True)
class BallastChoice:
    """`car`: without ballast; `wanted` of it. `aboard`: kg of ballast the weight now has in it.

    `fitted`: blocks by place now; `moves`: how many more each place wants, negative to take out. `reason`: why no
    ballast was looked for.
    """

    car: Carried | None
    wanted: Wanted | None
    aboard: float
    fitted: dict[str, int]
    found: Ballast | None
    moves: dict[str, int]
    reason: Warned | None
    warnings: tuple[Warned, ...]


def ballast_choice(
    garage: Garage,
    question: BallastQuestion | None = None,
    known: Masses | None = None,
    now: Standing | None = None,
) -> BallastChoice:
    """The best ballast for the garage's car. `known`, `now`: its masses and standing, when they are at hand already."""
    question, known = _filled(question or BallastQuestion(), garage.car), known or masses(garage)
    now = now or standing(garage, known)
    places, unfinished = (question.places, []) if question.places is not None else places_of(garage)
    car, about_car = _carried(garage, question, known, now)
    wanted, about_wanted = _wanted(garage, question, now, car)
    found = _found(car, places, wanted)
    answer = found if isinstance(found, Ballast) else None
    fitted = {each.id: each.fitted for each in garage.ballast_places.values() if each.fitted}
    return BallastChoice(
        car=car,
        wanted=wanted,
        aboard=now.ballast,
        fitted=fitted,
        found=answer,
        moves=_moves(answer, fitted) if answer else {},
        reason=None if isinstance(found, Ballast) else found,
        warnings=(*unfinished, *about_car, *about_wanted),
    )


def places_of(garage: Garage) -> tuple[tuple[Place, ...], list[Warned]]:
    """The car's places in order of id, and a warning for each that lacks something."""
    read = [(each, place_of_record(each)) for each in garage.ballast_places.values()]
    places = tuple(place for _, place in read if place)
    return places, [warned("ballast_place_open", name=each.name or each.id) for each, place in read if not place]


def _found(car: Carried | None, places: Sequence[Place], wanted: Wanted | None) -> Ballast | Warned:
    if car is None:
        return warned("ballast_unweighed")
    return warned("no_minimum") if wanted is None else ballast(car, places, wanted)


def _moves(found: Ballast, fitted: dict[str, int]) -> dict[str, int]:
    changes = {each: found.put.get(each, 0) - fitted.get(each, 0) for each in sorted({*found.put, *fitted})}
    return {each: count for each, count in changes.items() if count}


def _filled(question: BallastQuestion, car: Car | None) -> BallastQuestion:
    """With the car's own wishes where nothing else is asked; its ranges apart."""
    if car is None:
        return question
    roll, more = car.roll_front, car.ballast_more
    return replace(
        question,
        prefer=question.prefer or car.ballast_for,
        more=more.value if question.more is None and more else question.more,
        roll_front=float(roll) if question.roll_front is None and roll is not None else question.roll_front,
    )


def _wanted(
    garage: Garage, question: BallastQuestion, now: Standing, car: Carried | None
) -> tuple[Wanted | None, list[Warned]]:
    """None without a minimum. A range of the car's own that cannot be aimed at is left out, and said so."""
    minimum = question.minimum if question.minimum is not None else now.minimum
    if minimum is None:
        return None, []
    in_hand = now.official.in_hand if now.official and question.minimum is None else 0.0
    can_front = bool(car and car.front and car.wheelbase)
    can_left = bool(car and car.left and mean_track(car))
    front, no_front = _aim(question.front, _range(garage.car, "front"), can_front)
    left, no_left = _aim(question.left, _range(garage.car, "left"), can_left)
    wanted = Wanted(
        least=minimum + (in_hand if question.guard is None else question.guard),
        most=question.most,
        front=front,
        left=left,
        prefer=question.prefer or "mass",
        more=question.more,
    )
    unaimed = (("ballast_no_front", no_front), ("ballast_no_left", no_left))
    return wanted, [warned(code) for code, is_so in unaimed if is_so]


def _aim(given: Share | None, own: Share | None, can_be: bool) -> tuple[Share | None, bool]:
    """The range to aim at, and whether the car's own was left out."""
    if given is not None or can_be:
        return given or own, False
    return None, own is not None


def _range(car: Car | None, side: str) -> Share | None:
    ends = (getattr(car, f"{side}_{end}") if car else None for end in ("from", "to"))
    return share_between(*(None if end is None else float(end) for end in ends))


def _carried(
    garage: Garage, question: BallastQuestion, known: Masses, now: Standing
) -> tuple[Carried | None, list[Warned]]:
    """The car without ballast: its weight, shares and height as given, else the standing's and as it runs."""
    weighed = subtract(now.weight, Uncertain(now.ballast)) if now.weight else None
    total = Uncertain(question.total) if question.total is not None else weighed
    if total is None:
        return None, []
    car = garage.car
    bare = bare_car(garage, known, now)
    front = Uncertain(question.front_share) if question.front_share is not None else bare.front
    left = Uncertain(question.left_share) if question.left_share is not None else bare.left
    is_given = question.front_share is not None and question.left_share is not None
    carried = Carried(
        total=total,
        front=multiply(total, front) if front else None,
        left=multiply(total, left) if left else None,
        height=question.height if question.height is not None else bare.height,
        wheelbase=car.wheelbase.value if car and car.wheelbase else None,
        track_front=car.track_front.value if car and car.track_front else None,
        track_rear=car.track_rear.value if car and car.track_rear else None,
        roll_front=question.roll_front,
    )
    return carried, [] if is_given else list(bare.notes)
