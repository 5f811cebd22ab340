"""Sheet stock: what a piece will weigh before it is cut.

Mass = area × thickness × density. Each has a range and the mass carries all of them as named sources: every length as
far as its last digit, the thickness by what such sheet may really be, the density by its material. Pieces of one
material share its density, and pieces sold as one thickness share that, so that a sum of pieces is no surer than
its sheet. An outline that crosses itself is no piece and is refused, and so is a hole that cannot be in it
(`core/sheet/sheet_outline`).
"""

from dataclasses import dataclass
from fractions import Fraction
from math import pi

from tarebook.core.garage.records import Warned, warned
from tarebook.core.numbers.quantity import Quantity
from tarebook.core.numbers.uncertain import Uncertain, divide, multiply, rectangular, resolution, weighted_sum
from tarebook.core.sheet.polygon import on_grid, twice_area
from tarebook.core.sheet.sheet_outline import Shape, outline_trouble
from tarebook.core.sheet.sheet_stock import (
    CONVENTION,
    GAUGE_TABLES,
    INCH,
    LEGAL_OUNCES,
    LEGAL_SHARE,
    MAKERS_INCHES,
    MATERIALS,
    OUNCES_FT2,
)
from tarebook.core.whole_car.fuel import Density

THICKEST = Fraction(1, 10)  # m; whatever is thicker is no sheet
LEAST = 0.0001  # kg; what is lighter is a slip of a unit


@dataclass(frozen=True, slots=True)
class Piece:
    """One kind of piece. Holes that are polygons lie where they are drawn, on the outline's own axes.

    `density`: instead of the material's. `thickness`: as sold, or as `measured`; or `gauge`: table ("msg", "ussg")
    and number. `within`: how far any cut may be off (± m); without it the last digit typed stands in.
    """

    id: str
    material: str
    outline: Shape
    holes: tuple[Shape, ...] = ()
    density: Density | None = None
    thickness: Quantity | None = None
    measured: bool = False
    gauge: tuple[str, int] | None = None
    within: Quantity | None = None


@dataclass(frozen=True, slots=True)
class SheetMass:
    """One piece, in m², m, kg/m³ and kg. `listed`: the mass a gauge table gives for it, where there is one."""

    area: Uncertain
    thickness: Uncertain
    density: Uncertain
    mass: Uncertain
    listed: float | None
    warnings: tuple[Warned, ...]


def sheet(piece: Piece) -> SheetMass | Warned:
    """What the piece comes to, or why it comes to nothing."""
    trouble = _stock_trouble(piece) or outline_trouble([piece.outline, *piece.holes])
    if trouble:
        return trouble
    area = _area(piece)
    if area.value <= 0.0:
        return warned("sheet_holes_too_large")
    density = _density(piece)
    per_area, thickness = _per_area(piece, density)
    mass = multiply(area, per_area)
    if mass.value < LEAST:
        return warned("sheet_small")
    listed = _listed(piece)
    return SheetMass(
        area=area,
        thickness=thickness,
        density=density,
        mass=mass,
        listed=None if listed is None else area.value * listed,
        warnings=tuple(_warnings(piece)),
    )


def _stock_trouble(piece: Piece) -> Warned | None:
    if piece.density is None and piece.material not in MATERIALS:
        return warned("sheet_material_unknown", material=piece.material)
    if piece.density is not None and not 0.0 < piece.density.low <= piece.density.high:
        return warned("sheet_density_range")
    if piece.gauge is None:
        return _thickness_trouble(piece.thickness)
    table, number = piece.gauge
    if piece.material != "steel":
        return warned("sheet_gauge_not_steel", material=piece.material)
    known = table in GAUGE_TABLES and number in LEGAL_OUNCES
    return None if known else warned("sheet_gauge_unknown", gauge=number, table=table)


def _thickness_trouble(thickness: Quantity | None) -> Warned | None:
    if thickness is None:
        return warned("sheet_no_thickness")
    return warned("sheet_thick", text=thickness.reads) if thickness.exact > THICKEST else None


def _area(piece: Piece) -> Uncertain:
    outline = _shape_area(piece.outline, piece, "outline")
    holes = [_shape_area(hole, piece, f"hole{at}") for at, hole in enumerate(piece.holes, start=1)]
    return weighted_sum([outline, *holes], [1.0, *(-float(hole.count) for hole in piece.holes)])


def _shape_area(shape: Shape, piece: Piece, name: str) -> Uncertain:
    if shape.form == "polygon":
        return _polygon_area(shape, piece, name)
    source = f"cut:{piece.id}:{name}"
    if shape.form == "circle":
        across = shape.sizes[0].value
        part = 0.5 * pi * across * _doubt(shape.sizes[0], piece)
        return Uncertain(0.25 * pi * across * across, {f"{source}:across": part})
    width, height = (
        Uncertain(size.value, {f"{source}:{side}": _doubt(size, piece)})
        for side, size in zip(("width", "height"), shape.sizes, strict=True)
    )
    return multiply(width, height)


def _polygon_area(shape: Shape, piece: Piece, name: str) -> Uncertain:
    """Each coordinate is a reading of its own: ∂A/∂x_i = (y_i+1 − y_i−1)/2, ∂A/∂y_i = (x_i−1 − x_i+1)/2."""
    (spots,), steps = on_grid([[(x.exact, y.exact) for x, y in shape.corners]])
    twice = twice_area(spots)
    half = 0.5 if twice > 0 else -0.5
    sources: dict[str, float] = {}
    for at, (x, y) in enumerate(shape.corners):
        (before_x, before_y), (after_x, after_y) = shape.corners[at - 1], shape.corners[(at + 1) % len(spots)]
        source = f"cut:{piece.id}:{name}:{at + 1}"
        sources[f"{source}x"] = half * (after_y.value - before_y.value) * _doubt(x, piece)
        sources[f"{source}y"] = half * (before_x.value - after_x.value) * _doubt(y, piece)
    return Uncertain(abs(twice) / (2 * steps * steps), sources)


def _doubt(size: Quantity, piece: Piece) -> float:
    return rectangular(piece.within.value) if piece.within else resolution(size.last_digit)


def _density(piece: Piece) -> Uncertain:
    density = piece.density or MATERIALS[piece.material].density
    own = piece.id if piece.density else piece.material
    return Uncertain(density.middle, {f"density:{own}": density.u})


def _per_area(piece: Piece, density: Uncertain) -> tuple[Uncertain, Uncertain]:
    """Mass of a square metre, and thickness. Sheet of the legal gauge is sold by weight: its thickness follows."""
    if piece.gauge and piece.gauge[0] == "ussg":
        weight = LEGAL_OUNCES[piece.gauge[1]] * OUNCES_FT2
        per_area = Uncertain(weight, {f"gauge:ussg:{piece.gauge[1]}": weight * rectangular(LEGAL_SHARE)})
        return per_area, divide(per_area, density)
    thickness = _thickness(piece)
    return multiply(thickness, density), thickness


def _thickness(piece: Piece) -> Uncertain:
    if piece.gauge:
        sold, name = MAKERS_INCHES[piece.gauge[1]] * INCH, f"msg {piece.gauge[1]}"
    else:
        assert piece.thickness is not None  # a piece without either has trouble
        if piece.measured:
            return Uncertain(piece.thickness.value, {f"callipers:{piece.id}": resolution(piece.thickness.last_digit)})
        sold, name = piece.thickness.value, piece.thickness.reads
    low, high = _shares(piece)
    half_width = 0.5 * (high - low) * sold
    return Uncertain(0.5 * (low + high) * sold, {f"thickness:{piece.material}:{name}": rectangular(half_width)})


def _shares(piece: Piece) -> tuple[float, float]:
    """How thin and how thick it may really be; a material nobody knows is taken as rolled metal is."""
    stock = MATERIALS.get(piece.material, MATERIALS["steel"])
    return stock.thinnest, stock.thickest


def _listed(piece: Piece) -> float | None:
    """kg/m² that a table of the gauge prints."""
    if piece.gauge is None:
        return None
    table, number = piece.gauge
    return LEGAL_OUNCES[number] * OUNCES_FT2 if table == "ussg" else MAKERS_INCHES[number] * INCH * CONVENTION


def _warnings(piece: Piece) -> list[Warned]:
    if piece.gauge:
        return [warned("sheet_gauge_convention" if piece.gauge[0] == "msg" else "sheet_gauge_legal")]
    return [] if piece.measured else [warned("sheet_as_sold")]
