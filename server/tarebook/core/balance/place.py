"""Where in the car a part sits: measured, or the default place of its zone with a stated width.

Axes: x rearward from the front axle, y to the car's right of the centreline, z up from the ground; metres. Each axis is
taken on its own: a part may have x from a tape measure and z from its zone. A zone's place is a table of shares of the
car's own wheelbase (x) and mean track (y and z), each "middle ± half-width" of a rectangle. The table is common
practice, no source: a rough drawing of a front-engined closed car, wide enough to hold most of them. On a car whose own
outside is known, the middle of a zone stays inside it.

What was measured is good to `place_within` of the part, and to a tape measure's own where nobody said how well.

The place of a part is an error source of its own for each axis (`place:<part>:x`), so that a part taken off and put
back cancels, and a part moved by two jobs moves its doubt with it.
"""

from dataclasses import dataclass

from tarebook.core.garage.records import Car, Part
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, rectangular

AXES = ("x", "y", "z")
Span = tuple[float, float]  # middle and half-width

# x in wheelbases, y and z in mean tracks. Common practice, no source.
ZONE_PLACES: dict[str, tuple[Span, Span, Span]] = {
    "nose": ((-0.25, 0.12), (0.0, 0.25), (0.35, 0.12)),
    "engine bay": ((0.0, 0.2), (0.0, 0.25), (0.42, 0.15)),
    "bulkhead": ((0.27, 0.1), (0.0, 0.3), (0.5, 0.15)),
    "dash": ((0.37, 0.1), (0.0, 0.3), (0.6, 0.12)),
    "cabin front": ((0.5, 0.15), (0.0, 0.35), (0.35, 0.2)),
    "cabin rear": ((0.78, 0.15), (0.0, 0.35), (0.4, 0.2)),
    "left door": ((0.48, 0.2), (-0.5, 0.07), (0.45, 0.25)),
    "right door": ((0.48, 0.2), (0.5, 0.07), (0.45, 0.25)),
    "roof": ((0.6, 0.25), (0.0, 0.35), (0.88, 0.08)),
    "glass": ((0.55, 0.45), (0.0, 0.45), (0.75, 0.15)),
    "floor": ((0.5, 0.4), (0.0, 0.4), (0.2, 0.08)),
    "boot": ((1.12, 0.15), (0.0, 0.35), (0.42, 0.15)),
    "tail": ((1.28, 0.12), (0.0, 0.35), (0.38, 0.15)),
    "front wheels": ((0.0, 0.05), (0.0, 0.5), (0.21, 0.05)),
    "rear wheels": ((1.0, 0.05), (0.0, 0.5), (0.21, 0.05)),
    "underneath front": ((0.15, 0.25), (0.0, 0.3), (0.14, 0.07)),
    "underneath rear": ((0.85, 0.25), (0.0, 0.3), (0.15, 0.08)),
}
ANYWHERE: tuple[Span, Span, Span] = ((0.5, 0.75), (0.0, 0.5), (0.45, 0.4))  # a part nobody gave a zone
WHEEL_ZONES = ("front wheels", "rear wheels")
PAIRED_WITHIN = 0.02  # half-width of y, in tracks, of an even number of pieces shared between both wheels of an axle
MEASURED_WITHIN = 0.025  # m, half-width of a part's centre found with a tape measure: common practice, no source
# How far a car may reach whose own outside nobody measured, in the same shares: common practice, no source.
OUTLINE: tuple[Span, Span, Span] = ((-0.5, 1.6), (-0.7, 0.7), (0.0, 1.3))


@dataclass(frozen=True, slots=True)
class Place:
    """Where a part's centre is, m; an axis is None when the car's own dimensions to scale it by are not known.

    `by`: for each known axis "measured", "zone" or "anywhere" (no zone either). `apart`: what two halves of the pieces
    being one on each side adds to the square of their radius of gyration, m². `outside`: axes on which it lies beyond
    the car's outline, by more than how well the place is known: a slip of the tape, or a wrong sign.
    """

    part: str
    x: Uncertain | None
    y: Uncertain | None
    z: Uncertain | None
    by: dict[str, str]
    apart: float
    outside: tuple[str, ...]


def mean_track(car: Car | None) -> float | None:
    """The mean of both tracks, m, or the one that is known."""
    tracks = [track.value for track in (car.track_front, car.track_rear) if track] if car else []
    return sum(tracks) / len(tracks) if tracks else None


def scales_of(car: Car | None) -> tuple[float | None, float | None, float | None]:
    """What each axis is scaled by: wheelbase, mean track, mean track; m."""
    wheelbase = car.wheelbase.value if car and car.wheelbase else None
    track = mean_track(car)
    return wheelbase, track, track


def outline_of(car: Car | None) -> tuple[Span | None, Span | None, Span | None]:
    """(low, high) of each axis that the car's outside keeps within, m: its own dimensions, else what cars reach."""
    found: list[Span | None] = [
        None if scale is None else (low * scale, high * scale)
        for scale, (low, high) in zip(scales_of(car), OUTLINE, strict=True)
    ]
    if car and car.length and car.front_overhang:
        front = car.front_overhang.value
        found[0] = (-front, car.length.value - front)
    if car and car.width:
        found[1] = (-0.5 * car.width.value, 0.5 * car.width.value)
    if car and car.height:
        found[2] = (0.0, car.height.value)
    return found[0], found[1], found[2]


def place_of(car: Car | None, part: Part, count: int) -> Place:
    """The place of a part of which `count` pieces are moved together."""
    spans = ZONE_PLACES.get(part.zone or "", ANYWHERE)
    track = mean_track(car)
    paired = part.zone in WHEEL_ZONES and part.y is None and count % 2 == 0 and track is not None
    if paired:
        spans = (spans[0], (0.0, PAIRED_WITHIN), spans[2])
    otherwise = "zone" if part.zone else "anywhere"
    typed = (part.x, part.y, part.z)
    within, outline = part.place_within, outline_of(car)
    rough = [_in_zone(*each) for each in zip(spans, scales_of(car), outline, strict=True)]
    found = {axis: _axis(f"place:{part.id}:{axis}", typed[at], within, rough[at]) for at, axis in enumerate(AXES)}
    by = {axis: "measured" if typed[at] else otherwise for at, axis in enumerate(AXES) if found[axis] is not None}
    apart = (0.5 * track) * (0.5 * track) if paired and track is not None else 0.0
    return Place(part.id, found["x"], found["y"], found["z"], by, apart, _outside(typed, within, outline))


def _in_zone(span: Span, scale: float | None, outline: Span | None) -> Span | None:
    """(middle, half-width) of a zone on one axis, m, its middle no farther out than the car."""
    if scale is None or outline is None:
        return None
    return min(max(span[0] * scale, outline[0]), outline[1]), span[1] * scale


def _axis(source: str, typed: Quantity | None, within: Quantity | None, rough: Span | None) -> Uncertain | None:
    if typed is not None:
        return Uncertain(typed.value, {source: rectangular(_half_width(typed, within))})
    return None if rough is None else Uncertain(rough[0], {source: rectangular(rough[1])})


def _half_width(typed: Quantity, within: Quantity | None) -> float:
    """How well a measured place is known, m: as somebody said, else a tape measure's, no finer than the last digit."""
    return within.value if within is not None else max(MEASURED_WITHIN, 0.5 * typed.last_digit)


def _outside(
    typed: tuple[Quantity | None, ...], within: Quantity | None, outline: tuple[Span | None, ...]
) -> tuple[str, ...]:
    """The axes on which what was typed lies beyond the outline; a zone's place never does."""
    slack = within.value if within is not None else MEASURED_WITHIN
    return tuple(
        axis
        for axis, quantity, span in zip(AXES, typed, outline, strict=True)
        if quantity is not None
        and span is not None
        and (quantity.value + slack < span[0] or quantity.value - slack > span[1])
    )
