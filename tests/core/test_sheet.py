"""Sheet stock: areas against geometry, doubt against numerical derivatives and chance, outlines by their laws."""

from dataclasses import replace
from fractions import Fraction
from math import cos, hypot, pi, sin, sqrt
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.sheet.polygon import apart, crossing, inside, on_grid, twice_area
from tarebook.core.sheet.sheet import SheetMass, sheet
from tarebook.core.sheet.sheet_piece import read_piece

BRACKET = [(0, 0), (400, 0), (400, 100), (100, 100), (100, 300), (0, 300)]
whole = st.integers(-40, 40)


def millimetres(corners):
    return [[f"{x} mm", f"{y} mm"] for x, y in corners]


def found(**record) -> SheetMass:
    answer = sheet(read_piece({"id": "p", "material": "aluminium", "thickness": "2 mm", **record}))
    assert isinstance(answer, SheetMass)
    return answer


def star(random: Random, corners: int) -> list[tuple[int, int]]:
    """An outline about its middle, so that it never crosses itself."""
    turns = sorted(random.sample(range(360), corners))
    sizes = [random.uniform(100, 400) for _ in turns]
    return [
        (round(size * cos(turn * pi / 180)), round(size * sin(turn * pi / 180)))
        for turn, size in zip(turns, sizes, strict=True)
    ]


@given(st.randoms(use_true_random=False), st.integers(-500, 500), st.integers(-500, 500))
def test_moving_turning_and_mirroring_an_outline_leaves_its_area(random, dx, dy):
    corners = star(random, 9)
    (one, moved, turned, mirrored), _ = on_grid(
        [
            [(Fraction(x), Fraction(y)) for x, y in corners],
            [(Fraction(x + dx), Fraction(y + dy)) for x, y in corners],
            [(Fraction(-y), Fraction(x)) for x, y in corners],
            [(Fraction(-x), Fraction(y)) for x, y in corners],
        ]
    )
    assert twice_area(one) == twice_area(moved) == twice_area(turned) == -twice_area(mirrored)
    assert bool(crossing(one)) == bool(crossing(moved)) == bool(crossing(mirrored))


@given(st.lists(st.tuples(whole, whole), min_size=4, max_size=8, unique=True))
def test_an_outline_without_crossings_has_as_many_grid_points_as_pick_counts(corners):
    """Pick's theorem: area = points inside + points on the sides / 2 − 1. It fails where sides cross."""
    if crossing(corners):
        return
    sides = list(zip(corners, [*corners[1:], corners[0]], strict=True))
    on_sides = {
        (x, y)
        for (ax, ay), (bx, by) in sides
        for x in range(min(ax, bx), max(ax, bx) + 1)
        for y in range(min(ay, by), max(ay, by) + 1)
        if (bx - ax) * (y - ay) == (x - ax) * (by - ay)
    }
    grid = [(x, y) for x in range(-40, 41) for y in range(-40, 41) if (x, y) not in on_sides]
    within = sum(inside(spot, corners) for spot in grid)
    assert abs(twice_area(corners)) == 2 * within + len(on_sides) - 2


@given(st.tuples(whole, whole), st.tuples(whole, whole), st.tuples(whole, whole))
def test_a_corner_on_a_side_changes_nothing_and_a_side_that_runs_back_over_another_is_found(a, b, c):
    """A triangle of twice the size, so that the middle of a side is on the grid."""
    if not twice_area([a, b, c]):
        return
    ends = [(2 * x, 2 * y) for x, y in (a, b, c)]
    middle = (a[0] + b[0], a[1] + b[1])
    assert crossing(ends) is None
    assert crossing([ends[0], middle, *ends[1:]]) is None
    assert crossing([ends[0], ends[1], middle, ends[2]]) == (0, 1)
    assert crossing([middle, ends[2], ends[0], ends[1]]) == (0, 2)
    assert crossing([ends[1], middle, ends[2], ends[0]]) == (0, 3)


@given(st.tuples(whole, whole), st.tuples(whole, whole), st.tuples(whole, whole))
def test_outlines_of_which_one_only_touches_a_side_of_the_other_are_not_apart(a, b, c):
    if not twice_area([a, b, c]):
        return
    one = [(2 * x, 2 * y) for x, y in (a, b, c)]
    # Its first corner is the middle of a side; the others lie across that side.
    touch = (a[0] + b[0], a[1] + b[1])
    across = (2 * touch[0] - one[2][0], 2 * touch[1] - one[2][1])
    other = [touch, across, (across[0] + b[0] - a[0], across[1] + b[1] - a[1])]
    moved = [(x + across[0] - touch[0], y + across[1] - touch[1]) for x, y in other]
    for turned in (other, [*other[1:], other[0]], [other[2], *other[:2]]):
        assert not apart(one, turned)
        assert not apart(turned, one)
    assert apart(one, moved)
    assert apart(moved, one)


def test_a_circle_and_a_polygon_of_many_corners_agree():
    corners = [(f"{200 + 100 * cos(n * pi / 50):.6f} mm", f"{100 * sin(n * pi / 50):.6f} mm") for n in range(100)]
    circle, polygon = found(form="circle", diameter="200 mm"), found(form="polygon", corners=corners)
    assert polygon.area.value == pytest.approx(circle.area.value * sin(pi / 50) * 50 / pi, rel=1e-6)


def test_the_doubt_of_a_drawn_area_is_that_of_its_numerical_derivatives():
    corners = millimetres(BRACKET)
    plain = found(form="polygon", corners=corners)
    for at, (x, y) in enumerate(BRACKET):
        for axis, moved in (("x", (x + 0.001, y)), ("y", (x, y + 0.001))):
            shifted = [*BRACKET[:at], moved, *BRACKET[at + 1 :]]
            slope = (found(form="polygon", corners=millimetres(shifted)).area.value - plain.area.value) / 1e-6
            part = plain.area.sources.get(f"cut:p:outline:{at + 1}{axis}", 0.0)
            assert part == pytest.approx(slope * 0.001 / sqrt(12), rel=1e-4)


def test_the_doubt_of_a_mass_is_what_chance_gives():
    piece = read_piece(
        {"id": "p", "material": "steel", "thickness": "1 mm", "width": "90 mm", "height": "60 mm", "within": "2 mm"}
    )
    ours, random = sheet(piece), Random(20261125)
    assert isinstance(ours, SheetMass)
    masses = [
        random.uniform(0.088, 0.092)
        * random.uniform(0.058, 0.062)
        * random.uniform(0.95e-3, 1.05e-3)
        * random.uniform(7830, 7870)
        for _ in range(40_000)
    ]
    mean = sum(masses) / len(masses)
    spread = sqrt(sum((mass - mean) ** 2 for mass in masses) / len(masses))
    assert ours.mass.value == pytest.approx(mean, rel=1e-3)
    assert ours.mass.u == pytest.approx(spread, rel=0.02)


def test_relative_doubts_add_in_quadrature():
    ours = found(width="300 mm", height="200 mm")
    parts = (ours.area, ours.thickness, ours.density)
    assert ours.mass.u / ours.mass.value == pytest.approx(hypot(*(each.u / each.value for each in parts)))


def test_pieces_of_one_sheet_share_its_thickness_and_density():
    one, other = found(width="300 mm", height="200 mm"), found(id="q", width="100 mm", height="80 mm")
    shared = one.mass.sources.keys() & other.mass.sources.keys()
    assert shared == {"density:aluminium", "thickness:aluminium:2 mm"}


def test_a_piece_is_its_outline_less_every_hole():
    hole = {"form": "circle", "diameter": "25 mm", "count": 12}
    solid, drilled = found(width="300 mm", height="200 mm"), found(width="300 mm", height="200 mm", holes=[hole])
    assert solid.area.value - drilled.area.value == pytest.approx(12 * pi * 0.0125**2)


@pytest.mark.parametrize("swapped", [(0, 2), (1, 4), (2, 5)])
def test_swapping_two_corners_makes_an_outline_cross(swapped):
    corners = list(BRACKET)
    one, other = swapped
    corners[one], corners[other] = corners[other], corners[one]
    answer = sheet(replace(read_piece({"id": "p", "material": "steel", "thickness": "1 mm", "form": "polygon",
                                       "corners": millimetres(corners)}), measured=True))  # fmt: skip
    assert not isinstance(answer, SheetMass)
    assert answer["code"] == "sheet_crosses"
