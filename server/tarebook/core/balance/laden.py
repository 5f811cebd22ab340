"""The car as it runs: balanced with the driver the class counts, and with any amount of fuel in the tank.

It starts from the car of a weigh-in with the jobs now in it (`core/balance`, the state "now"). The fuel it was weighed
with comes out at the tank, the driver is exchanged at the driver's seat, and fuel goes back in at the tank. Fuel that
comes out and goes in shares its density and the tank's place, so that a car weighed with ten litres is known best with
ten litres in it. Every axis is taken on its own: without the tank's height there is still a front share.

The fuel's centre is taken at the tank's, whatever is in it; how far the two are apart is allowed for
(`core/balance/aboard`).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from tarebook.core.balance.aboard import place_aboard
from tarebook.core.balance.balance import Question, balance, track_of, wheelbase_of
from tarebook.core.balance.body import Body, Load, changed
from tarebook.core.garage.records import Car, Garage, Warned, WeighIn, warned
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, subtract, total
from tarebook.core.weighing.weighing import Masses
from tarebook.core.whole_car.aboard import driver_in, fuel_in
from tarebook.core.whole_car.condition import Condition

_NOT_OF_IT = ("centre_as_weighed", "level_unsure")  # what a balance says that is not so of the car as it runs
_NOWHERE = Body(Uncertain(0.0), None, None, None)


@dataclass(frozen=True, slots=True)
class Laden:
    """The car without fuel: `body`, and what stands on the front axle and the left side, kg; None where not known.

    `at`: the empty load at the tank, with its place. `reasons`: why "x", "y", "z", "front" or "left" is missing.
    `warnings`: what was taken on trust for it.
    """

    body: Body
    front: Uncertain | None
    left: Uncertain | None
    at: Load
    levers: tuple[Uncertain | None, Uncertain | None]
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


def laden(garage: Garage, condition: Condition, known: Masses) -> Laden:
    """The car of the garage as it runs, without fuel. Never raises over data."""
    found = balance(garage, Question(jobs=()), known)
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
    sides = {name: _side(garage.car, name, state.loads.get(name), exchanged) for name in ("front", "left")}
    levers = (_lever(garage.car, "front", tank), _lever(garage.car, "left", tank))
    return Laden(
        body=body,
        front=sides["front"],
        left=sides["left"],
        at=tank,
        levers=levers,
        reasons=_reasons(state.reasons, body, sides, tank, levers),
        warnings=tuple(warning for warning in found.warnings if warning["code"] not in _NOT_OF_IT),
    )


def with_fuel(car: Laden, fuel: Uncertain) -> Trimmed:
    """The car with so much fuel (kg) in its tank."""
    body = changed(car.body, [Load(fuel, car.at.x, car.at.y, car.at.z)])
    front, left = (
        _share(side, lever, fuel, body.mass) for side, lever in zip((car.front, car.left), car.levers, strict=True)
    )
    return Trimmed(body.x, body.y, body.z, front, left)


def _share(side: Uncertain | None, lever: Uncertain | None, fuel: Uncertain, mass: Uncertain) -> Uncertain | None:
    if side is None or lever is None or mass.value <= 0.0:
        return None
    return divide(total([side, multiply(fuel, lever)]), mass)


def _unknown(tank: Load, reason: Warned) -> Laden:
    names = ("x", "y", "z", "front", "left")
    return Laden(_NOWHERE, None, None, tank, (None, None), dict.fromkeys(names, reason))


def _exchanged(garage: Garage, record: WeighIn, condition: Condition, known: Masses, tank: Load) -> list[Load] | Warned:
    """What leads from the car as weighed to the car without fuel and with the driver who counts."""
    fuel = fuel_in(garage, record)
    if fuel is None:
        return warned("fuel_unknown", weigh_in=record.id)
    loads = [Load(subtract(Uncertain(0.0), fuel), tank.x, tank.y, tank.z)]
    driver = _driver_change(record, condition, known)
    if isinstance(driver, dict):
        return driver
    if driver.value or driver.sources:
        seat = place_aboard(garage.car, "driver")
        loads.append(Load(driver, seat.x, seat.y, seat.z))
    return loads


def _driver_change(record: WeighIn, condition: Condition, known: Masses) -> Uncertain | Warned:
    then = driver_in(record, known)
    if condition.driver == "out":
        return warned("driver_unknown", weigh_in=record.id) if then is None else subtract(Uncertain(0.0), then)
    if then is None:
        return Uncertain(0.0)  # whoever sat in the car counts
    return warned("no_driver") if condition.driver_mass is None else subtract(condition.driver_mass, then)


def _lever(car: Car | None, name: str, load: Load) -> Uncertain | None:
    """What share of the load the front axle or the left side carries: 1 − x/L, ½ − y/t."""
    whole, arm, start = (wheelbase_of(car), load.x, 1.0) if name == "front" else (track_of(car), load.y, 0.5)
    return None if whole is None or arm is None else subtract(Uncertain(start), divide(arm, whole))


def _side(car: Car | None, name: str, weighed: Uncertain | None, loads: Sequence[Load]) -> Uncertain | None:
    levers = [(load.mass, _lever(car, name, load)) for load in loads]
    known = [multiply(mass, lever) for mass, lever in levers if lever is not None]
    return None if weighed is None or len(known) < len(levers) else total([weighed, *known])


def _reasons(
    before: dict[str, Warned],
    body: Body,
    sides: dict[str, Uncertain | None],
    tank: Load,
    levers: tuple[Uncertain | None, Uncertain | None],
) -> dict[str, Warned]:
    """Why an axis or a share is missing: the car was not known so far, else the tank's place, else the driver's."""
    found: dict[str, Warned] = {}
    for axis in ("x", "y", "z"):
        if getattr(body, axis) is None or getattr(tank, axis) is None:
            found[axis] = _why(before.get(axis), getattr(tank, axis))
    for name, axis, lever in (("front", "x", levers[0]), ("left", "y", levers[1])):
        if sides[name] is None or lever is None:
            found[name] = _why(before.get(axis), getattr(tank, axis))
    return found


def _why(before: Warned | None, tank: Uncertain | None) -> Warned:
    return before or warned("tank_place_unknown" if tank is None else "driver_place_unknown")
