"""From what a scale showed to what one piece weighs, and how sure that is.

Every weighing tells the mass of ONE piece, by its method:

    direct      shown
    difference  shown − shown_empty: a person with the part less the person alone; two looks
    container   shown − shown_empty: full less empty; two looks
    batch       shown ÷ pieces: equal pieces weighed together, each as uncertain as the batch, ÷ pieces
    ends        shown + shown_far: one end at a time for what is too long. The part lies level on two supports, one on
                the scale, the other a block of the same height, both at the same places for both looks; by the lever's
                rule the two supports carry the whole between them, wherever its centre is; two looks

(`pieces` divides in every method.) The scale's gain acts on the net, so a difference carries no error of the person's
own weight. A look read again counts as the mean of its readings (`repeats`). Looks at one load on one scale that show
the same share their rounding; several weighings of one part make a weighted mean. Without a weighing, a part has what
was claimed of it (`claims`), less what this garage's claims have run off by (`lessons`). Weighed beats claimed.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import sqrt

from tarebook.core.garage.records import Driver, Garage, Part, Warned, Weighing, warned
from tarebook.core.numbers.plain import dot
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.weighing.claims import Lesson, claimed
from tarebook.core.weighing.lessons import learns, lessons
from tarebook.core.weighing.mean import weighted_mean
from tarebook.core.weighing.repeats import averaged, counted, mean
from tarebook.core.weighing.scale import UNNAMED, ScaleModel, distinct_looks, scale_models

_NEEDS = {"difference": "shown_empty", "container": "shown_empty", "batch": "pieces", "ends": "shown_far"}
BASES = ("weighed", "worked_out", "quoted", "guessed")


@dataclass(frozen=True, slots=True)
class Reading:
    """One weighing, read: the mass of one piece, kg. `own` is the part of its doubt no other reading shares.

    `scale`: its id, or `UNNAMED`. `division`: that of the scale, per piece, kg; `division_assumed`: nobody noted it.
    `mass`: the value with all its sources.
    """

    weighing: str
    scale: str
    value: float
    own: float
    division: float
    division_assumed: bool
    with_bolts: bool | None
    warnings: tuple[Warned, ...]
    _gain: Uncertain

    @property
    def mass(self) -> Uncertain:
        relative = {source: part / (1.0 + self._gain.value) for source, part in self._gain.sources.items()}
        sources = {source: -self.value * part for source, part in relative.items()}
        return Uncertain(self.value, {**sources, f"round:{self.weighing}": self.own})


@dataclass(frozen=True, slots=True)
class Mass:
    """What one piece of a part (or a driver) weighs, kg, with the trail that leads there.

    `mass` and `basis` are None when nobody weighed or claimed anything. `readings`: every weighing that could be read;
    `weighings`: the ids of those the mass is made from. `spread` of the readings, kg; `ratio`: the Birge ratio the mass
    was widened by, 1 when the readings agree.
    """

    of: str
    mass: Uncertain | None
    basis: str | None
    weighings: tuple[str, ...]
    readings: tuple[Reading, ...]
    spread: float
    ratio: float
    warnings: tuple[Warned, ...]


@dataclass(frozen=True, slots=True)
class Masses:
    """The mass of every part and driver by id, and the model of every scale by id (`UNNAMED` among them).

    `lessons`: what the garage's claims have run off by, by basis, and is taken out of `of`.
    """

    scales: dict[str, ScaleModel]
    of: dict[str, Mass]
    lessons: dict[str, Lesson]


def masses(garage: Garage) -> Masses:
    """The mass of every part and every driver of the garage."""
    scales = scale_models(garage)
    of = {part.id: _mass_of(garage, part, scales) for part in garage.parts.values()}
    weighed = {id_: each.mass for id_, each in of.items() if each.mass and each.basis == "weighed"}
    learned = lessons(garage.parts.values(), weighed) if learns(garage) else {}
    for part in garage.parts.values():
        if of[part.id].basis in learned:
            of[part.id] = replace(of[part.id], mass=claimed(part, learned)[0])
    drivers = {driver.id: _mass_of(garage, driver, scales) for driver in garage.drivers.values()}
    return Masses(scales, {**of, **drivers}, learned)


def _mass_of(garage: Garage, thing: Part | Driver, scales: Mapping[str, ScaleModel]) -> Mass:
    """The mass of one piece of a part, or of a driver: from its weighings, else as claimed."""
    weighings = garage.weighings_of.get(thing.id, [])
    tried = [(weighing, read_weighing(weighing, scales[weighing.scale or UNNAMED], garage)) for weighing in weighings]
    read = {weighing.id: result for weighing, result in tried if isinstance(result, Reading)}
    warnings = [result for _, result in tried if not isinstance(result, Reading)]
    if not read:
        mass, basis = claimed(thing)
        return Mass(thing.id, mass, basis, (), (), 0.0, 1.0, tuple(warnings))
    return _weighed(garage, thing, [each for each in weighings if each.id in read], read, scales, warnings)


def _weighed(
    garage: Garage,
    thing: Part | Driver,
    weighings: list[Weighing],
    read: dict[str, Reading],
    scales: Mapping[str, ScaleModel],
    warnings: list[Warned],
) -> Mass:
    readings = tuple(read.values())
    distinct = distinct_looks(
        weighings,
        lambda each: (each.scale, each.method, each.pieces or 1),
        lambda each: [mean(look) for look in _looks(each, garage)[1]],
    )
    kept = {each.id for each in distinct}
    looks = [reading for reading in readings if reading.weighing in kept]
    found = weighted_mean(thing.id, looks, {reading.scale: scales[reading.scale].gain for reading in readings})
    for reading in readings:
        warnings.extend(reading.warnings)
    if found.ratio > 1.0:
        warnings.append(warned("readings_disagree", of=thing.id, spread=found.spread, ratio=found.ratio))
    if len({bool(reading.with_bolts) for reading in readings}) > 1:
        warnings.append(warned("bolts_differ", of=thing.id))
    return Mass(thing.id, found.mass, "weighed", tuple(read), readings, found.spread, found.ratio, tuple(warnings))


def read_weighing(weighing: Weighing, model: ScaleModel, garage: Garage | None = None) -> Reading | Warned:
    """The mass of one piece, or the warning that says why there is none. `garage`: the one with its repeats, if any."""
    need = _NEEDS.get(weighing.method)
    if need is not None and getattr(weighing, need) is None:
        return warned("missing_field", list="weighings", id=weighing.id, field=need)
    signs, looks = _looks(weighing, garage)
    net = dot(signs, [mean(look) for look in looks])
    if net <= 0.0:
        return warned("not_positive", weighing=weighing.id)
    pieces = weighing.pieces or 1
    corrected = 1.0 + model.gain.value
    repeats, divisions = model.repeats, [model.division_for(look[0]) for look in looks]
    doubts = [averaged(look, division, repeats) for look, division in zip(looks, divisions, strict=True)]
    return Reading(
        weighing=weighing.id,
        scale=model.id,
        value=net / pieces / corrected,
        own=sqrt(dot(doubts, doubts)) / pieces / corrected,
        division=max(divisions) / pieces,
        division_assumed=model.division is None,
        with_bolts=weighing.with_bolts,
        warnings=_over_capacity(weighing, model),
        _gain=model.gain,
    )


def _looks(weighing: Weighing, garage: Garage | None) -> tuple[list[float], list[list[Quantity]]]:
    """The looks it took, each with all its readings that count, and how each enters what all pieces together showed."""
    second = _NEEDS.get(weighing.method)
    looks = ("shown", second) if second in ("shown_empty", "shown_far") else ("shown",)
    read = [counted(garage, weighing, look) if garage else [getattr(weighing, look)] for look in looks]
    return [1.0, 1.0 if second == "shown_far" else -1.0][: len(looks)], read


def _over_capacity(weighing: Weighing, model: ScaleModel) -> tuple[Warned, ...]:
    looks = [look for look in (weighing.shown, weighing.shown_empty, weighing.shown_far) if look]
    if model.capacity is None or all(look.value <= model.capacity for look in looks):
        return ()
    return (warned("above_capacity", weighing=weighing.id, scale=model.id),)
