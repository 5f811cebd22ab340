"""Draws the app's icon: a steelyard, its load on the short arm and its poise on the long one.

Run `python webapp/draw_icons.py` after a change; the pictures it writes to public/icons are committed. Shapes are
polygons, rectangles and circles on a 512-unit square, given once here and written both as SVG and as PNG.
"""

import math
from dataclasses import dataclass
from pathlib import Path

from PIL import Image, ImageDraw

PAPER, INK, BRASS = "#fbfaf6", "#17150f", "#b98a2c"
FOLDER = Path(__file__).parent / "public" / "icons"
SIDE = 512
FINER = 4  # drawn this many times larger, then scaled down, for smooth edges
TILT = math.radians(-4)
PIVOT = (192.0, 222.0)

Point = tuple[float, float]


@dataclass(frozen=True)
class Shape:
    """A filled polygon, or a circle when it has a radius (points then holds its centre)."""

    colour: str
    points: tuple[Point, ...]
    radius: float = 0.0


def on_arm(along: float, across: float) -> Point:
    """A point given along the tilted arm from the pivot, and across it."""
    x, y = math.cos(TILT), math.sin(TILT)
    return (PIVOT[0] + along * x - across * y, PIVOT[1] + along * y + across * x)


def bar(colour: str, start: float, end: float, top: float, bottom: float) -> Shape:
    """A rectangle lying on the arm."""
    return Shape(colour, (on_arm(start, top), on_arm(end, top), on_arm(end, bottom), on_arm(start, bottom)))


def hanging(colour: str, along: float, down: float, wide: float, tall: float) -> Shape:
    """A rectangle that hangs straight down from a point of the arm."""
    x, y = on_arm(along, 0)
    x, y = x - wide / 2, y + down
    return Shape(colour, ((x, y), (x + wide, y), (x + wide, y + tall), (x, y + tall)))


def poise(along: float) -> list[Shape]:
    """The sliding weight: a collar on the arm and a tapered body under it."""
    x, y = on_arm(along, 0)
    body = ((x - 26, y + 40), (x + 26, y + 40), (x + 50, y + 124), (x - 50, y + 124))
    return [bar(BRASS, along - 20, along + 20, -24, 24), hanging(BRASS, along, 20, 12, 30), Shape(BRASS, body)]


def shapes() -> list[Shape]:
    """The whole drawing, back to front, without its ground."""
    ticks = [bar(INK, at, at + 7, -30, -10) for at in range(64, 244, 30)]
    hanger = [hanging(INK, 0, -104, 14, 100), Shape(INK, (PIVOT,), 22), Shape(PAPER, (PIVOT,), 9)]
    load = [hanging(INK, -88, 0, 12, 78), hanging(INK, -88, 72, 92, 92)]
    return [*ticks, *load, bar(INK, -104, 262, -12, 12), *hanger, *poise(170)]


def as_svg() -> str:
    """The icon as an SVG document, on a rounded paper ground."""

    def element(shape: Shape) -> str:
        if shape.radius:
            (x, y) = shape.points[0]
            return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{shape.radius:g}" fill="{shape.colour}"/>'
        points = " ".join(f"{x:.1f},{y:.1f}" for x, y in shape.points)
        return f'<polygon points="{points}" fill="{shape.colour}"/>'

    ground = f'<rect width="{SIDE}" height="{SIDE}" rx="96" fill="{PAPER}"/>'
    body = "\n".join([ground, *(element(shape) for shape in shapes())])
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {SIDE} {SIDE}">\n{body}\n</svg>\n'


def as_picture(side: int, fill: float, rounded: bool) -> Image.Image:
    """The icon as pixels; `fill`: the drawing's share of the side (a maskable icon keeps a margin)."""
    scale = SIDE * FINER
    picture = Image.new("RGBA", (scale, scale), (0, 0, 0, 0))
    draw = ImageDraw.Draw(picture)
    draw.rounded_rectangle((0, 0, scale - 1, scale - 1), 96 * FINER if rounded else 0, fill=PAPER)

    def place(point: Point) -> Point:
        x, y = ((c - SIDE / 2) * fill + SIDE / 2 for c in point)
        return (x * FINER, y * FINER)

    for shape in shapes():
        if shape.radius:
            draw.circle(place(shape.points[0]), shape.radius * fill * FINER, fill=shape.colour)
        else:
            draw.polygon([place(point) for point in shape.points], fill=shape.colour)
    return picture.resize((side, side), Image.Resampling.LANCZOS)


def pictures() -> dict[str, Image.Image]:
    """File name -> picture, for every PNG the app ships."""
    return {
        "tarebook-192.png": as_picture(192, 1.0, rounded=True),
        "tarebook-512.png": as_picture(512, 1.0, rounded=True),
        "tarebook-maskable.png": as_picture(512, 0.78, rounded=False),
    }


def main() -> None:
    """Write every icon."""
    FOLDER.mkdir(parents=True, exist_ok=True)
    (FOLDER / "tarebook.svg").write_text(as_svg())
    for name, picture in pictures().items():
        picture.save(FOLDER / name, optimize=True)


if __name__ == "__main__":
    main()
