"""The car without ballast, as it runs: the shares of its front and left, and the height of its centre.

They are those of the car with the driver and the fuel the class weighs it with (`core/balance/laden`); where that is
not known, of the car as it was weighed. What ballast was on board at that weigh-in is taken out at the places where
blocks are fitted now, if these weigh as much as was noted then; else nobody knows where it stood, and shares and height
stay as they are, as if it had stood at the car's own centre.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import fsum

from tarebook.core.balance.balance import Question, State, balance
from tarebook.core.balance.laden import laden, with_fuel
from tarebook.core.ballast.ballast_answer import Place
from tarebook.core.garage.records import BallastPlace, Car, Garage, Warned, WeighIn, warned
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, subtract
from tarebook.core.standing.standing import Standing
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import fuel_in


@dataclass(frozen=True, slots=True)
class Bare:
    """`whole` (kg) with shares of the `front` axle and the `left` side, and the `height` of its centre (m)."""

    whole: Uncertain
    front: Uncertain | None
    left: Uncertain | None
    height: float | None
    notes: tuple[Warned, ...] = ()


def bare_car(garage: Garage, known: Masses, now: Standing) -> Bare:
    """The garage's car without ballast. Never raises over data: what cannot be told is None."""
    found = balance(garage, Question(jobs=()), known, now)
    state = found.states.get("now") or found.states.get("weighed")
    if state is None or found.weigh_in is None:
        return Bare(Uncertain(0.0), None, None, None)
    record = garage.weigh_ins[found.weigh_in]
    told = _as_it_runs(garage, record, known, now, state) or _as_weighed(state)
    if record.ballast is None or not record.ballast.value:
        return told
    stood = _stood(garage, record)
    if stood is None:
        return replace(told, notes=(*told.notes, warned("ballast_then_anywhere", weigh_in=record.id)))
    return _taken_out(garage.car, told, stood)


def place_of_record(each: BallastPlace) -> Place | None:
    """None while it lacks anything."""
    x, y, z, block, most = each.x, each.y, each.z, each.block, each.most
    if not (x and y and z and block and block.value > 0.0 and most is not None):
        return None
    return Place(each.id, x.value, y.value, z.value, block.value, most)


def _as_it_runs(garage: Garage, record: WeighIn, known: Masses, now: Standing, state: State) -> Bare | None:
    """None when neither share is known so; one that is not stays as weighed."""
    condition = now.condition
    car = laden(garage, condition, known, now)
    fuel = fuel_in(garage, record) if condition.fuel == "as_it_is" else condition.fuel_mass
    if fuel is None or all(side is None for side in car.sides.values()):
        return None
    trimmed, weighed = with_fuel(car, fuel), _as_weighed(state)
    is_weighed = any(getattr(trimmed, side) is None and side in state.shares for side in ("front", "left"))
    return Bare(
        whole=Uncertain(car.body.mass.value + fuel.value),
        front=trimmed.front or weighed.front,
        left=trimmed.left or weighed.left,
        height=trimmed.z.value if trimmed.z else weighed.height,
        notes=weighed.notes if is_weighed else (),
    )


def _as_weighed(state: State) -> Bare:
    height = state.body.z.value if state.body.z else None
    notes = (warned("centre_as_weighed"),)
    return Bare(Uncertain(state.body.mass.value), state.shares.get("front"), state.shares.get("left"), height, notes)


_LAST_BITS = 1e-9  # kg: what adding up may cost
_Stood = list[tuple[float, Place]]


def _stood(garage: Garage, record: WeighIn) -> _Stood | None:
    """Where the ballast of a weigh-in stood: at the places of today, if it weighs the same to its last digit."""
    read = [(each.fitted, place_of_record(each)) for each in garage.ballast_places.values() if each.fitted]
    stood = [(fitted * place.block, place) for fitted, place in read if fitted and place]
    noted = record.ballast
    if noted is None or abs(fsum(kg for kg, _ in stood) - noted.value) > 0.5 * noted.last_digit + _LAST_BITS:
        return None
    return stood


def _taken_out(car: Car | None, told: Bare, stood: _Stood) -> Bare:
    base = car.wheelbase.value if car and car.wheelbase else None
    track = track_of_both(car)
    rest = subtract(told.whole, Uncertain(_sum(stood, lambda place: 1.0)))
    front = _less(told, told.front, rest, _sum(stood, lambda place: 1.0 - place.x / base)) if base else None
    left = _less(told, told.left, rest, _sum(stood, lambda place: 0.5 - place.y / track)) if track else None
    height = told.height
    if height is not None:
        height = (told.whole.value * height - _sum(stood, lambda place: place.z)) / rest.value
    return Bare(rest, front, left, height, told.notes)


def track_of_both(car: Car | None) -> float | None:
    """The mean track, m, when both are known."""
    if car is None or car.track_front is None or car.track_rear is None:
        return None
    return 0.5 * (car.track_front.value + car.track_rear.value)


def _sum(stood: _Stood, lever: Callable[[Place], float]) -> float:
    return fsum(kg * lever(place) for kg, place in stood)


def _less(told: Bare, share: Uncertain | None, rest: Uncertain, onto: float) -> Uncertain | None:
    """The share once `onto` kg of the load is taken out and the `rest` remains."""
    return None if share is None else divide(subtract(multiply(share, told.whole), Uncertain(onto)), rest)
