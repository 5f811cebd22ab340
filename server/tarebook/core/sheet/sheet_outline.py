"""What can be cut: outlines and holes that are no shape, or holes that cannot lie in their outline, and why.

A drawn hole lies where it is drawn, on the axes of its outline: across from the left and up from the bottom, a
rectangle's from its lower left corner, a circle's from that of the square around it. A hole given by its sizes alone
lies anywhere, so it is only refused when nothing so large could lie inside at all.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from tarebook.core.garage.records import Warned, warned
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.sheet.polygon import Point, Spot, apart, crossing, inside, on_grid
from tarebook.core.sheet.sheet_corners import Corner

MOST_CORNERS = 200
LONGEST_SIDE = 10  # m; no sheet that goes into a car is longer


@dataclass(frozen=True, slots=True)
class Shape:
    """`form`: "rectangle" (`sizes`: width, height), "circle" (`sizes`: diameter) or "polygon" (`corners`: x, y)."""

    form: str
    sizes: tuple[Quantity, ...] = ()
    corners: tuple[Corner, ...] = ()
    count: int = 1


def outline_trouble(shapes: Sequence[Shape]) -> Warned | None:
    """Why these shapes, the outline first and its holes after it, cannot be cut; None when they can.

    In `data`, shape 0 is the outline and the holes are counted from 1; so are sides.
    """
    for at, shape in enumerate(shapes):
        if trouble := _shape_trouble(at, shape):
            return trouble
    points = [_points(shape) for shape in shapes]
    spots, _ = on_grid(points)
    for at, outline in enumerate(spots):
        if sides := crossing(outline):
            return warned("sheet_crosses", shape=at, side=sides[0] + 1, other=sides[1] + 1)
    for at, hole in enumerate(shapes[1:], start=1):
        if not _could_fit(hole, points[at], shapes[0], points[0]):
            return warned("sheet_hole_outside", hole=at)
    return _hole_trouble(shapes, spots)


def _shape_trouble(at: int, shape: Shape) -> Warned | None:
    if shape.form == "polygon" and not 3 <= len(shape.corners) <= MOST_CORNERS:
        return warned("sheet_corners", shape=at, corners=len(shape.corners), most=MOST_CORNERS)
    sizes = (*shape.sizes, *(size for corner in shape.corners for size in corner))
    huge = next((size for size in sizes if abs(size.exact) > LONGEST_SIDE), None)
    return warned("sheet_huge", shape=at, text=huge.reads) if huge else None


def _points(shape: Shape) -> list[Point]:
    """Where its corners lie; nothing for a circle."""
    if shape.form == "polygon":
        return [(across.exact, up.exact) for across, up in shape.corners]
    if shape.form == "circle":
        return []
    width, height = (size.exact for size in shape.sizes)
    nought = Fraction(0)
    return [(nought, nought), (width, nought), (width, height), (nought, height)]


def _could_fit(hole: Shape, at: Sequence[Point], outline: Shape, around: Sequence[Point]) -> bool:
    """False for a drawn hole beyond a round outline, and for a sized one that is as wide or as long as its outline."""
    if hole.form == "polygon":
        return outline.form != "circle" or all(_in_circle(point, outline.sizes[0].exact) for point in at)
    (narrow, reach), (narrowest, farthest) = _extent(hole, at), _extent(outline, around)
    return narrow < narrowest and reach < farthest


def _in_circle(point: Point, across: Fraction) -> bool:
    x, y = (2 * size - across for size in point)
    return x * x + y * y < across * across


def _extent(shape: Shape, points: Sequence[Point]) -> tuple[Fraction, Fraction]:
    """(the smaller side of the box around it, the square of the longest line in it or in the box)."""
    if shape.form == "circle":
        across = shape.sizes[0].exact
        return across, across * across
    wide, high = (max(p[k] for p in points) - min(p[k] for p in points) for k in (0, 1))
    return min(wide, high), wide * wide + high * high


def _hole_trouble(shapes: Sequence[Shape], spots: Sequence[list[Spot]]) -> Warned | None:
    """Of the drawn holes: whether each is inside a straight-sided outline, and whether two overlap."""
    drawn = [at for at, shape in enumerate(shapes) if at > 0 and shape.form == "polygon"]
    for place, at in enumerate(drawn):
        hole = spots[at]
        if spots[0] and not (apart(hole, spots[0]) and inside(hole[0], spots[0])):
            return warned("sheet_hole_outside", hole=at)
        for before in drawn[:place]:
            other = spots[before]
            if not apart(hole, other) or inside(hole[0], other) or inside(other[0], hole):
                return warned("sheet_holes_overlap", hole=before, other=at)
    return None
