"""The whole car on scales: loads, shares and the centre of gravity, each with its uncertainty.

A weigh-in is two or four looks at one scale, or one. Every look has its own rounding and its own part in how well the
scale repeats a whole car, less where it was read again (`weighing/repeats`); all of them share the scale's gain, which
therefore adds up fully in the total and cancels in every share. Four corners have a fourth freedom beside total, front
and left: how the car settles on its springs moves load from one diagonal to the other (+ − − +). It touches the corners
and the cross weight and nothing else.

Whatever is there is worked out: with two corners typed there is an axle, with all four a total. Cross weight is
(RF + LR) / total. Axes: x rearward from the front axle, y to the car's right; each axle has its own track.
"""

from dataclasses import dataclass
from math import sqrt

from tarebook.core.garage.records import Car, Garage, Warned, WeighIn, warned
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, resolution, total, weighted_sum
from tarebook.core.weighing.repeats import LAYOUTS, beyond, counted, mean, repeats_to, rounding, rows_of
from tarebook.core.weighing.scale import ASSUMED_GAIN, UNNAMED, ScaleModel
from tarebook.core.weighing.trade_scale import gain_by_class, platform_gain, whole_car_gain
from tarebook.core.weighing.weighing import Masses, masses
from tarebook.core.whole_car.aboard import aboard
from tarebook.core.whole_car.condition import Condition, at_condition, chosen_sheet, condition_of, condition_warnings
from tarebook.core.whole_car.ready import DIAGONAL, unready

LOOKS = LAYOUTS
_PAIRS = {
    "front": ("lf", "rf"),
    "rear": ("lr", "rr"),
    "left": ("lf", "lr"),
    "right": ("rf", "rr"),
    "cross": ("rf", "lr"),
}

# Standard deviation of the whole car's weight on rolling it on again, kg: common practice, no source.
ASSUMED_REPEATABILITY = {
    "kitchen": 0.5,
    "bench": 0.5,
    "hanging": 1.0,
    "bathroom": 1.0,
    "corner_pads": 0.5,
    "axle_pads": 1.0,
    "platform": 0.5,
}
ASSUMED_REPEATABILITY_UNNAMED = 2.0
SETTLING = 1.0  # standard deviation, kg a corner in the pattern + − − +: common practice, no source
_PADS = {"corner_pads": 4, "bathroom": 4, "axle_pads": 2}  # that share a car; a capacity is of one of them
_ODD = (0.4, 1.6)  # a reading outside these, as a share of the mean of all, is most likely a slip of the hand


@dataclass(frozen=True, slots=True)
class Loads:
    """What the scale said of the car as it stood on it: fuel, driver and ballast included.

    `loads` in kg by name (lf, rf, lr, rr, front, rear, left, right, cross, total), as far as they are known. `shares`:
    front, rear, left, right and cross as fractions of the total. `x_cg`, `y_cg` in m. `gain`: the scale's, taken out.
    """

    loads: dict[str, Uncertain]
    shares: dict[str, Uncertain]
    x_cg: Uncertain | None
    y_cg: Uncertain | None
    gain: Uncertain
    warnings: tuple[Warned, ...]

    @property
    def total(self) -> Uncertain | None:
        return self.loads.get("total")


@dataclass(frozen=True, slots=True)
class WholeCar:
    """One weigh-in and what follows from it. Masses in kg.

    `fuel`, `driver`: on board then, None when not known; `ballast` likewise, and kept. `weight`: at the class's
    `condition`; when None, `reason` says why.
    """

    weigh_in: str
    loads: Loads
    condition: Condition
    fuel: Uncertain | None
    driver: Uncertain | None
    ballast: float
    weight: Uncertain | None
    reason: Warned | None
    warnings: tuple[Warned, ...]


def weigh_in(
    garage: Garage, identity: str, known: Masses | None = None, class_sheet: str | None = None
) -> WholeCar | None:
    """A weigh-in of the garage by id, half typed or whole; None when there is no such weigh-in.

    `class_sheet`: id of the one whose condition is wanted, by default the newest of the car.
    """
    record = garage.weigh_ins.get(identity)
    if record is None:
        return None
    known = known or masses(garage)
    loads = loads_of(garage, record, known)
    condition = condition_of(garage, chosen_sheet(garage, class_sheet), known)
    then = aboard(garage, record, known)
    answer = at_condition(loads.total, then, condition)
    return WholeCar(
        weigh_in=identity,
        loads=loads,
        condition=condition,
        fuel=then.fuel,
        driver=then.driver,
        ballast=record.ballast.value if record.ballast else 0.0,
        weight=answer if isinstance(answer, Uncertain) else None,
        reason=None if isinstance(answer, Uncertain) else answer,
        warnings=(
            *_unread(garage, identity),
            *loads.warnings,
            *condition.warnings,
            *condition_warnings(garage, record, then, condition),
        ),
    )


def _unread(garage: Garage, identity: str) -> list[Warned]:
    """What of this record could not be read."""
    found = [warning for warning in garage.warnings if warning["data"].get("list") == "weigh_ins"]
    return [warning for warning in found if warning["data"].get("id") == identity]


def loads_of(garage: Garage, record: WeighIn, known: Masses) -> Loads:
    """The loads of one weigh-in, as many of its readings as there are, each the mean of all of it that count."""
    model = model_for(record, known)
    read = {name: looks for name in LOOKS[record.layout] if (looks := counted(garage, record, name))}
    shown = {name: looks[0] for name, looks in read.items()}
    gain = _gain_for(garage, record, model, sum(look.value for look in shown.values()))
    division = max((model.division_for(look) for look in shown.values()), default=0.0)
    repeats = _one_look(garage, record, model, division)
    loads = _sums({name: _load(garage, record, model, gain, name, looks, repeats) for name, looks in read.items()})
    whole = loads.get("total")
    shares = {name: divide(loads[name], whole) for name in _PAIRS if whole and whole.value and name in loads}
    warnings = (
        *model.warnings,
        *_missing(record, shown),
        *_above_capacity(garage, record, model, shown),
        *_odd(record, loads),
        *_assumed(garage, record, model),
    )
    return Loads(loads, shares, _x_cg(garage.car, shares), _y_cg(garage.car, loads), gain, warnings)


def model_for(record: WeighIn, known: Masses) -> ScaleModel:
    """The scale of a weigh-in. An official one without a name is a platform of its own: never two times the same."""
    if record.scale or not record.official:
        return known.scales[record.scale or UNNAMED]
    gain = Uncertain(0.0, {f"cal:official:{record.id}": ASSUMED_GAIN["platform"]})
    return ScaleModel(UNNAMED, gain, True, None, ASSUMED_REPEATABILITY["platform"], None, (), ())


def _gain_for(garage: Garage, record: WeighIn, model: ScaleModel, load: float) -> Uncertain:
    """The gain for a car of about `load` kg; an official scale without a name is a platform of unknown class."""
    if record.official and not record.scale:
        return platform_gain(f"cal:official:{record.id}", load)
    return whole_car_gain(garage, model, load)


def repeatability(garage: Garage, model: ScaleModel) -> float:
    """Standard deviation (kg) of a whole car's weight on this scale: as noted or assumed, with what repeats show."""
    return repeats_to(model.repeatability, _assumed_repeatability(garage, model), model.of_car)


def _assumed_repeatability(garage: Garage, model: ScaleModel) -> float:
    named = garage.scales.get(model.id)
    return ASSUMED_REPEATABILITY[named.kind] if named else ASSUMED_REPEATABILITY_UNNAMED


def _one_look(garage: Garage, record: WeighIn, model: ScaleModel, division: float) -> float:
    """How one of its looks repeats, standard deviation, kg: as the scale does, or worse where its readings say so."""
    looks, repeats = LOOKS[record.layout], repeatability(garage, model)
    if record.id not in garage.repeats_of:
        return repeats / sqrt(len(looks))
    own = beyond(rows_of(garage, record, looks), division, is_car=True)
    return sqrt(max(repeats * repeats / len(looks), own))


def _load(
    garage: Garage,
    record: WeighIn,
    model: ScaleModel,
    gain: Uncertain,
    name: str,
    shown: list[Quantity],
    repeats: float,
) -> Uncertain:
    """One look, the mean of its readings, with the scale's gain taken out. `repeats`: of one reading."""
    steps, one = rounding(shown, model.division_for(shown[0])), repeats / sqrt(len(shown))
    load = mean(shown) / (1.0 + gain.value)
    look = look_at(f"{record.id}:{name}", load, gain, steps, one)
    doubts = unready(garage, record, name, len(LOOKS[record.layout]))
    if record.layout == "corners":
        doubts[f"settle:{record.id}"] = SETTLING * DIAGONAL[name]
    return Uncertain(load, {**look.sources, **doubts})


def look_at(name: str, load: float, gain: Uncertain, rounding: float, repeats: float) -> Uncertain:
    """A load, kg, with the doubt of the look it was read from: the scale's gain, rounding, and how it repeats."""
    through = 1.0 + gain.value
    sources = {source: -load * part / through for source, part in gain.sources.items()}
    return Uncertain(load, {**sources, f"round:{name}": rounding / through, f"rep:{name}": repeats})


def _sums(looks: dict[str, Uncertain]) -> dict[str, Uncertain]:
    """The looks, and every sum of two of them that has both; the total when nothing is missing."""
    pairs = {name: total([looks[a], looks[b]]) for name, (a, b) in _PAIRS.items() if a in looks and b in looks}
    whole = [tuple(names) for names in LOOKS.values() if all(name in looks for name in names)]
    totals = {"total": total([looks[name] for name in whole[0]])} if whole else {}
    return {**looks, **pairs, **totals}


def _x_cg(car: Car | None, shares: dict[str, Uncertain]) -> Uncertain | None:
    """Behind the front axle: wheelbase × rear share."""
    wheelbase = length_of(car, "wheelbase")
    return multiply(wheelbase, shares["rear"]) if wheelbase and "rear" in shares else None


def _y_cg(car: Car | None, loads: dict[str, Uncertain]) -> Uncertain | None:
    """To the right of the centreline: Σ half a track × (right − left), over the total."""
    front, rear = length_of(car, "track_front"), length_of(car, "track_rear")
    if front is None or rear is None or "lf" not in loads or "total" not in loads:
        return None
    ends = ((front, "lf", "rf"), (rear, "lr", "rr"))
    halves = [(track, weighted_sum((loads[right], loads[left]), (0.5, -0.5))) for track, left, right in ends]
    moments = [multiply(track, half) for track, half in halves]
    return divide(total(moments), loads["total"]) if loads["total"].value else None


def length_of(car: Car | None, field: str) -> Uncertain | None:
    """A length of the car, m, with the doubt of its last digit; None while nobody gave it."""
    length: Quantity | None = getattr(car, field) if car else None
    return (
        Uncertain(length.value, {f"round:{car.id}:{field}": resolution(length.last_digit)}) if car and length else None
    )


def _missing(record: WeighIn, shown: dict[str, Quantity]) -> list[Warned]:
    fields = [name for name in LOOKS[record.layout] if name not in shown]
    return [warned("reading_missing", weigh_in=record.id, fields=fields)] if fields else []


def _above_capacity(garage: Garage, record: WeighIn, model: ScaleModel, shown: dict[str, Quantity]) -> list[Warned]:
    if model.capacity is None:
        return []
    named = garage.scales.get(model.id)
    pads = _PADS.get(named.kind, 1) if named else 1
    most = model.capacity * max(1.0, pads / len(LOOKS[record.layout]))
    fields = [name for name, look in shown.items() if look.value > most]
    return [warned("above_capacity", weigh_in=record.id, field=name, scale=model.id) for name in fields]


def _odd(record: WeighIn, loads: dict[str, Uncertain]) -> list[Warned]:
    names = LOOKS[record.layout]
    if "total" not in loads:
        return []
    mean = loads["total"].value / len(names)
    low, high = _ODD
    odd = [name for name in names if not low * mean <= loads[name].value <= high * mean]
    return [warned("reading_odd", weigh_in=record.id, fields=odd)] if odd else []


def _assumed(garage: Garage, record: WeighIn, model: ScaleModel) -> list[Warned]:
    """What was taken for the scale because nobody checked or noted it."""
    if record.official and not record.scale:
        return [warned("official_scale_unnamed", weigh_in=record.id)]
    code = "gain_by_class" if gain_by_class(garage, model) else "gain_assumed"
    found = [warned(code, scale=model.id)] if model.assumed else []
    if not model.repeatability and not model.of_car.freedom:
        found.append(warned("repeatability_assumed", scale=model.id, kg=repeatability(garage, model)))
    return found
