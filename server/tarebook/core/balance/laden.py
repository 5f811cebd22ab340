"""The car as it runs: balanced with the driver the class counts, and with any amount of fuel in the tank.

It starts from the car of a weigh-in with the jobs now in it (`core/balance`, the state "now"). The fuel it was weighed
with comes out at the tank, the driver is exchanged at the driver's seat, and fuel goes back in at the tank. Fuel that
comes out and goes in shares its density and the tank's place, so that a car weighed with ten litres is known best with
ten litres in it. Every axis is taken on its own: without the tank's height there is still a front share.

The fuel's centre is taken at the tank's, whatever is in it; how far the two are apart is allowed for
(`core/balance/aboard`).
"""

from collections.abc import Mapping
from dataclasses import dataclass

from tarebook.core.balance.aboard import place_aboard
from tarebook.core.balance.balance import Question, balance, lever_of, side_of
from tarebook.core.balance.body import Body, Load, changed
from tarebook.core.balance.place import AXES
from tarebook.core.garage.records import Garage, Warned, WeighIn, warned
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, subtract, total
from tarebook.core.standing.standing import Standing
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import aboard
from tarebook.core.whole_car.condition import Condition, driver_change

_NOT_OF_IT = ("centre_as_weighed", "level_unsure")  # what a balance says that is not so of the car as it runs
_NOWHERE = Body(Uncertain(0.0), None, None, None)
SIDES = ("front", "left")
Sides = Mapping[str, Uncertain | None]


@dataclass(frozen=True, slots=True)
class Laden:
    """The car without fuel: `body`, and what stands on the front axle and the left side, kg; None where not known.

    `at`: the empty load at the tank, with its place. `reasons`: why "x", "y", "z", "front" or "left" is missing.
    `warnings`: what was taken on trust for it.
    """

    body: Body
    sides: Sides
    at: Load
    levers: Sides
    reasons: dict[str, Warned]
    warnings: tuple[Warned, ...] = ()


@dataclass(frozen=True, slots=True)
class Trimmed:
    """The centre of gravity, m, and the shares of the front axle and the left side with some fuel in the tank."""

    x: Uncertain | None
    y: Uncertain | None
    z: Uncertain | None
    front: Uncertain | None
    left: Uncertain | None


def laden(garage: Garage, condition: Condition, known: Masses, stand: Standing) -> Laden:
    """The car of the garage as it runs, without fuel. Never raises over data. `stand`: the standing of it."""
    found = balance(garage, Question(jobs=()), known, stand)
    state = found.states.get("now")
    tank = place_aboard(garage.car, "tank")
    if state is None or found.weigh_in is None:
        return _unknown(tank, found.reasons["now"])
    record = garage.weigh_ins[found.weigh_in]
    exchanged = _exchanged(garage, record, condition, known, tank)
    if isinstance(exchanged, dict):
        return _unknown(tank, exchanged)
    body = changed(state.body, exchanged)
    if body.mass.value <= 0.0:
        return _unknown(tank, warned("nothing_left"))
    sides = {name: side_of(garage.car, name, state.loads.get(name), exchanged) for name in SIDES}
    levers = {name: lever_of(garage.car, name, tank) for name in SIDES}
    return Laden(
        body=body,
        sides=sides,
        at=tank,
        levers=levers,
        reasons=_reasons(state.reasons, body, sides, tank, levers),
        warnings=tuple(warning for warning in found.warnings if warning["code"] not in _NOT_OF_IT),
    )


def with_fuel(car: Laden, fuel: Uncertain) -> Trimmed:
    """The car with so much fuel (kg) in its tank."""
    body = changed(car.body, [Load(fuel, car.at.x, car.at.y, car.at.z)])
    shares = {name: _share(car.sides[name], car.levers[name], fuel, body.mass) for name in SIDES}
    return Trimmed(body.x, body.y, body.z, **shares)


def _share(side: Uncertain | None, lever: Uncertain | None, fuel: Uncertain, mass: Uncertain) -> Uncertain | None:
    if side is None or lever is None:
        return None
    return divide(total([side, multiply(fuel, lever)]), mass)


def _unknown(tank: Load, reason: Warned) -> Laden:
    none: Sides = dict.fromkeys(SIDES)
    return Laden(_NOWHERE, none, tank, none, dict.fromkeys((*AXES, *SIDES), reason))


def _exchanged(garage: Garage, record: WeighIn, condition: Condition, known: Masses, tank: Load) -> list[Load] | Warned:
    """What leads from the car as weighed to the car without fuel and with the driver who counts."""
    then = aboard(garage, record, known)
    if then.fuel is None:
        return warned("fuel_unknown", weigh_in=record.id)
    loads = [Load(subtract(Uncertain(0.0), then.fuel), tank.x, tank.y, tank.z)]
    driver = driver_change(then, condition)
    if isinstance(driver, dict):
        return driver
    if driver and (driver.value or driver.sources):
        seat = place_aboard(garage.car, "driver")
        loads.append(Load(driver, seat.x, seat.y, seat.z))
    return loads


def _reasons(before: dict[str, Warned], body: Body, sides: Sides, tank: Load, levers: Sides) -> dict[str, Warned]:
    """Why an axis or a share is missing: the car was not known so far, else the tank's place, else the driver's."""
    missing = [(axis, axis) for axis in AXES if getattr(body, axis) is None or getattr(tank, axis) is None]
    arms = zip(SIDES, AXES, strict=False)
    missing += [(name, axis) for name, axis in arms if sides[name] is None or levers[name] is None]
    places = {axis: "tank_place_unknown" if getattr(tank, axis) is None else "driver_place_unknown" for axis in AXES}
    return {name: before.get(axis) or warned(places[axis]) for name, axis in missing}
