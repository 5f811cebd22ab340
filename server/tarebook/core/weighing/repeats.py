"""Several readings of one thing, lifted or rolled off and on again: they measure how a scale repeats.

A repeat is a reading of what a weighing or a weigh-in weighed, of all of it or of one wheel; what was the same for all
of them (tare, fuel, driver, jobs, how the car settled) stays one doubt, and only the looks' own part is averaged:

- A look's variance is d²/12 + r², its rounding and how the scale repeats. The mean of n has r²/n; its rounding too is
  averaged where the readings differ by more than a division, else all of them share it.
- r² is pooled by degrees of freedom (JCGM 100:2008, 4.2.4): what was noted or assumed of the scale, worth a stated
  number of them, and what all repeats on it show, Σ(x − mean)² less what rounding explains of it, ν·d²/12 (Sheppard).
  Such a pooled variance is the mean of what is believed of r² (Gelman et al., Bayesian Data Analysis, 2.6): two
  readings that agree by luck never make a scale perfect, and twice its root keeps to about 95 %.
- Readings that differ by more than a division and more than the scale's record allows widen their own mean (the Birge
  ratio), as several weighings of a part do.

Of four corners, how the car settled moves load along + − − + and no total: that part is taken out of what the repeats
show of a whole car. Only repeats with every look of the first tell of the scale; one wheel again has its own mean.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import sqrt

from tarebook.core.garage.records import Garage, Repeat, WeighIn, Weighing
from tarebook.core.numbers.plain import dot, plain_sum
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import resolution

LAYOUTS = {"corners": ("lf", "rf", "lr", "rr"), "axles": ("front", "rear"), "total": ("total",)}
PART_LOOKS = ("shown", "shown_empty", "shown_far")
_SETTLES = (1.0, -1.0, -1.0, 1.0)
# How many degrees of freedom a repeatability is worth: an assumed one may be off by half of it (JCGM 100:2008, G.3);
# a noted one comes of a few tries, five or so: common practice, no source.
ASSUMED_WORTH, NOTED_WORTH = 2.0, 4.0
APART = 1.5  # divisions: a display differs by whole ones; the half leaves out what computing adds


Weighed = Weighing | WeighIn
Rows = Sequence[Sequence[float | None]]


@dataclass(frozen=True, slots=True)
class Scatter:
    """What repeats show of one scale: so many `readings`, their degrees of `freedom`, and Σ(x − mean)² less rounding.

    `squares` in kg²: of one look for parts, of the whole car's weight for weigh-ins; below zero where the rounding
    alone would scatter more.
    """

    readings: int = 0
    freedom: int = 0
    squares: float = 0.0


NONE = Scatter()


@dataclass(frozen=True, slots=True)
class Read:
    """One reading of one look: `of` is the record it stands in."""

    of: str
    shown: Quantity
    left_out: bool


def _rows(garage: Garage, record: Weighed) -> list[Weighed | Repeat]:
    return [record, *garage.repeats_of.get(record.id, [])]


def readings(garage: Garage, record: Weighed, look: str) -> list[Read]:
    """Every reading of one look of a weighing or weigh-in, the first one first, those left out among them."""
    read = [(row.id, getattr(row, look, None)) for row in _rows(garage, record)]
    return [Read(of, shown, _is_left_out(garage, of, look)) for of, shown in read if shown is not None]


def _is_left_out(garage: Garage, of: str, look: str) -> bool:
    return any(each.reading == look for each in garage.omissions_of.get(of, ()))


def counted(garage: Garage, record: Weighed, look: str) -> list[Quantity]:
    """The readings of one look that count; with every one of them left out, all do."""
    if record.id not in garage.repeats_of:
        only = getattr(record, look)
        return [] if only is None else [only]
    read = readings(garage, record, look)
    return [each.shown for each in read if not each.left_out] or [each.shown for each in read]


def mean(shown: Sequence[Quantity]) -> float:
    return shown[0].value if len(shown) == 1 else _average([each.value for each in shown])


def _average(values: Sequence[float]) -> float:
    return values[0] if len(values) == 1 else plain_sum(values) / len(values)


def _are_apart(values: Sequence[float], division: float) -> bool:
    """Whether readings of one look differ by more than a division."""
    return max(values) - min(values) > APART * division


def _averaged_over(shown: Sequence[Quantity], division: float) -> int:
    return len(shown) if _are_apart([each.value for each in shown], division) else 1


def rounding(shown: Sequence[Quantity], division: float) -> float:
    """Standard uncertainty (kg) of the mean by rounding alone: shared by readings that agree within a division."""
    return resolution(division) / sqrt(_averaged_over(shown, division))


def averaged(shown: Sequence[Quantity], division: float, repeats: float) -> float:
    """Standard uncertainty (kg) of the mean of one look's readings. `repeats`: the scale's, of one look."""
    if len(shown) == 1:
        return sqrt(division * division / 12.0 + repeats * repeats)
    variance = max(repeats * repeats, beyond([[each.value] for each in shown], division))
    steps = division * division / 12.0 / _averaged_over(shown, division)
    return sqrt(steps + variance / len(shown))


def repeats_to(noted: float, assumed: float, scatter: Scatter) -> float:
    """Standard deviation (kg): as noted, or assumed and worth less, pooled by freedom with what repeats show."""
    prior, worth = (noted, NOTED_WORTH) if noted else (assumed, ASSUMED_WORTH)
    if not scatter.freedom:
        return prior
    return sqrt(max(0.0, (worth * prior * prior + scatter.squares) / (worth + scatter.freedom)))


def scatter_of(rows: Rows, division: float, is_car: bool = False) -> Scatter:
    """What complete rows show, a row a repeat and a column a look. `is_car`: of the weight of all looks together."""
    whole = [row for each in rows if len(row := [value for value in each if value is not None]) == len(each)]
    if len(whole) < 2:
        return NONE
    looks = len(whole[0])
    means = [_average([row[at] for row in whole]) for at in range(looks)]
    squares, settles = 0.0, is_car and looks == len(_SETTLES)
    for row in whole:
        off = [value - middle for value, middle in zip(row, means, strict=True)]
        along = dot(off, _SETTLES) if settles else 0.0
        squares += dot(off, off) - along * along / looks
    freedom = (len(whole) - 1) * (looks - settles)
    less = squares - freedom * division * division / 12.0
    return Scatter(len(whole) * looks, freedom, less * looks if is_car else less)


def beyond(rows: Rows, division: float, is_car: bool = False) -> float:
    """Variance (kg²) of one look by its own readings alone, less rounding; nothing where they agree within a division.

    Where not every look of a car was read as often, what settled otherwise between the readings no longer falls out of
    the total, and counts with the rest.
    """
    columns = [[value for value in column if value is not None] for column in zip(*rows, strict=True)]
    if not any(column and _are_apart(column, division) for column in columns):
        return 0.0
    if is_car and all(len(column) == len(rows) for column in columns):
        own = scatter_of(rows, division, is_car)
        return own.squares / len(columns) / own.freedom
    own = added(scatter_of([[value] for value in column], division) for column in columns)
    return own.squares / own.freedom


def added(scatters: Iterable[Scatter]) -> Scatter:
    every = list(scatters)
    squares = plain_sum(each.squares for each in every)
    return Scatter(sum(each.readings for each in every), sum(each.freedom for each in every), squares)


def rows_of(garage: Garage, record: Weighed, looks: Sequence[str]) -> list[list[float | None]]:
    """The readings that count, a row a repeat."""
    columns = [{each.of: each for each in readings(garage, record, look)} for look in looks]
    rows = [[column.get(row.id) for column in columns] for row in _rows(garage, record)]
    return [[each.shown.value if each and not each.left_out else None for each in row] for row in rows]


def scatters_on(garage: Garage) -> tuple[dict[str, Scatter], dict[str, Scatter]]:
    """By scale id, what repeats show: of parts and drivers, and of a whole car on named scales and those of our own."""
    parts: dict[str, Scatter] = {}
    cars: dict[str, Scatter] = {}
    for of in garage.repeats_of:
        part, car = garage.weighings.get(of), garage.weigh_ins.get(of)
        record = part or car
        if record is None or (car and car.official and not car.scale):
            continue
        named = garage.scales.get(record.scale or "")
        noted = named.division.value if named and named.division else None
        for looks in [LAYOUTS[car.layout]] if car else [(look,) for look in PART_LOOKS]:
            first = next((each for look in looks for each in counted(garage, record, look)), None)
            division = noted or (first.last_digit if first else 0.0)
            on, scale = cars if car else parts, record.scale or ""
            scatter = scatter_of(rows_of(garage, record, looks), division, is_car=car is not None)
            on[scale] = added([on.get(scale, NONE), scatter])
    return parts, cars
