"""Slips at a weigh-in: who sat in it, what was on board, what was noted of it, and what the scales were like."""

from tarebook.core.causes.looks import Looks
from tarebook.core.causes.other_scale import try_other_scales
from tarebook.core.causes.priors import FACTORS, RANGES, RATES, SOMEBODY, SPREADS
from tarebook.core.causes.slip import Tried
from tarebook.core.causes.trail import Trail
from tarebook.core.whole_car.fuel import density_of
from tarebook.core.whole_car.weigh_in import LOOKS
from tarebook.core.whole_car.weighed import Weighed

_MANY_BLOCKS = 8
_AS_BEFORE = 2.0  # how much likelier an amount that was there before is than one more block
_ASKED = 0.3  # how much rarer a unit slips in a weigh-in, which is asked about, than in a part


def try_weigh_ins(trail: Trail, looks: Looks, tried: Tried) -> None:
    for at, weighed in enumerate(trail.counted):
        for each in (_driver, _fuel, _ballast, _reading, _as_it_stood):
            each(trail, weighed, At(looks, tried, at, weighed.record.id))
    try_other_scales(trail, looks, tried)
    for gap in range(looks.count - 1):
        here, there = trail.counted[gap].record.id, trail.counted[gap + 1].record.id
        for spread in SPREADS["unwritten"]:
            tried.add(looks.about(looks.steps[gap], 0.0, spread), "unwritten", {"weigh_in": here, "until": there})


class At:
    """Tries slips that put so much too much into one look."""

    def __init__(self, looks: Looks, tried: Tried, at: int, weigh_in: str) -> None:
        self._looks, self._tried, self._weigh_in = looks, tried, weigh_in
        self._shape = looks.singles[at]

    def about(self, code: str, size: float, doubt: float = 0.0, weight: float = 1.0, **of: str | None) -> None:
        likely = self._looks.about(self._shape, size, doubt)
        self._tried.add(likely, code, {"weigh_in": self._weigh_in, "kg": size or None, **of}, weight)

    def between(self, code: str, low: float, high: float) -> None:
        self._tried.add(self._looks.between(self._shape, low, high), code, {"weigh_in": self._weigh_in})


def _driver(trail: Trail, weighed: Weighed, at: At) -> None:
    """Another than noted; nobody; somebody beside."""
    record, noted = weighed.record, weighed.aboard.driver
    others = [
        (each, mass)
        for each in trail.garage.drivers
        if each != record.driver and (mass := trail.known.of[each].mass) is not None
    ]
    if record.driver is not None and record.driver_in is not False and noted is not None:
        at.about("person", -noted.value, noted.u, driver=record.driver, way="off")
        for each, mass in others:
            at.about("other_driver", mass.value - noted.value, mass.u, driver=each)
    elif record.driver_in is not False and others:
        return  # anybody known, or nobody: the look's own doubt holds that
    at.about("person", SOMEBODY[0], SOMEBODY[1], way="on")
    for each, mass in others:
        at.about("person", mass.value, mass.u, driver=each, way="on")


def _fuel(trail: Trail, weighed: Weighed, at: At) -> None:
    """Anything between empty and full."""
    noted, car = weighed.record.fuel, trail.garage.car
    if noted is None:
        return
    middle = density_of(car.fuel_kind if car else None).middle
    tank = car.tank_size.value * middle if car and car.tank_size else RANGES["tank"][1]
    at.between("fuel", -noted.value * middle, max(0.0, tank - noted.value * middle))


def _ballast(trail: Trail, weighed: Weighed, at: At) -> None:
    """As much as at another weigh-in, or none; or so many blocks more at a place."""
    noted = _noted(weighed)
    for kg in sorted({0.0, *map(_noted, trail.counted)}):
        if kg != noted:
            at.about("ballast", kg - noted, weight=_AS_BEFORE, way="on" if kg > noted else "off")
    for place in trail.garage.ballast_places.values():
        most = min(_MANY_BLOCKS, max(place.most or 0, place.fitted or 0, 1))
        for blocks in range(1, most + 1) if place.block else ():
            at.about("ballast", blocks * place.block.value if place.block else 0.0, place=place.id, way="on")


def _noted(weighed: Weighed) -> float:
    return weighed.record.ballast.value if weighed.record.ballast else 0.0


def _reading(_trail: Trail, weighed: Weighed, at: At) -> None:
    """One of the readings in another unit."""
    through = 1.0 + weighed.loads.gain.value
    for name in LOOKS[weighed.record.layout]:
        shown = getattr(weighed.record, name)
        for unit, factor in FACTORS.items() if shown is not None else ():
            size = (1.0 - factor) * shown.value / through
            at.about("unit", size, weight=_ASKED * RATES.get(unit, 1.0), field=name, unit=unit)


def _as_it_stood(_trail: Trail, _weighed: Weighed, at: At) -> None:
    at.between("wet", *RANGES["wet"])
    for code in ("zero", "misread"):
        for spread in SPREADS[code]:
            at.about(code, 0.0, spread)
