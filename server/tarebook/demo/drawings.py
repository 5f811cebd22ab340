"""The demo's photos: plain line drawings in ink and brass, made when they are wanted.

A drawing is a thing on a scale with the readout that was written down. The same words give the same bytes, so that a
photo's hash is stable on one machine. Coordinates: 120 to 1080 across, 0 to 720 down; the ground line is at 700.

`drawings.json` has what they are made of. A scale's `base` is the height of what stands on it, `display` the middle of
its readout; a thing's coordinates count from the middle of its underside. A shape is `line` and `area` by their points,
`box` by left, top, right and bottom, `ring` by middle and radius, `arc` by these and two angles, and then what is not
as usual with it; `at` says from where its coordinates count again, for each time it is drawn.
"""

import json
from collections.abc import Iterable, Sequence
from importlib.resources import files
from io import BytesIO
from typing import Any

from PIL import Image, ImageDraw, ImageFont

_FINE = 1.6  # pixels of the large image to one of the sheet's; halving it afterwards makes the lines smooth
_COLOURS = {"paper": "#f7f4ec", "ink": "#23211d", "brass": "#a9803a", "pale": "#e6dcc4"}
_READ = json.loads(files("tarebook.demo").joinpath("drawings.json").read_text(encoding="utf-8"))
SCALES: dict[str, dict[str, Any]] = _READ["scales"]
THINGS: dict[str, list[Any]] = _READ["things"]

Point = Sequence[float]


class Sheet:
    """One drawing in progress: shapes with an ink outline, in sheet coordinates from `origin` on."""

    def __init__(self) -> None:
        self.image = Image.new("RGB", (_wide(1200), _wide(720)), _COLOURS["paper"])
        self.origin: Point = (0, 0)
        self._pen = ImageDraw.Draw(self.image)

    def put(self, shapes: Iterable[Any], x: float, y: float) -> None:
        """Shapes as `drawings.json` has them, their coordinates from x and y on."""
        for name, where, *unusual in shapes:
            how = dict(unusual[0]) if unusual else {}
            for right, down in how.pop("at", [[0, 0]]):
                self.origin = (x + right, y + down)
                getattr(self, name)(where, **how)

    def line(self, points: Sequence[Point], colour: str = "ink", width: float = 5) -> None:
        self._pen.line(self._pixels(*points), fill=_COLOURS[colour], width=_wide(width), joint="curve")

    def area(self, points: Sequence[Point], fill: str = "pale") -> None:
        self._pen.polygon(self._pixels(*points), fill=_COLOURS[fill])
        self.line([*points, *points[:2]])

    def box(self, corners: Sequence[float], fill: str = "paper", round_by: float = 14) -> None:
        pixels, colours = self._pixels(corners[:2], corners[2:]), (_COLOURS[fill], _COLOURS["ink"])
        self._pen.rounded_rectangle(pixels, round_by * _FINE, *colours, width=_wide(5))

    def ring(self, circle: Sequence[float], fill: str = "paper", colour: str = "ink", width: float = 5) -> None:
        self._pen.ellipse(self._around(*circle), _COLOURS[fill], _COLOURS[colour], width=_wide(width))

    def arc(self, circle: Sequence[float]) -> None:
        x, y, radius, start, end = circle
        self._pen.arc(self._around(x, y, radius), start, end, fill=_COLOURS["ink"], width=_wide(5))

    def readout(self, middle: Point, text: str) -> None:
        x, y = middle
        self.put([["box", [-95, -29, 95, 29], {"round_by": 8}]], x, y)
        font = ImageFont.load_default(size=_wide(38))
        self._pen.text((x * _FINE, y * _FINE), text, font=font, fill=_COLOURS["ink"], anchor="mm")

    def jpeg(self) -> bytes:
        out = BytesIO()
        seen = self.image.crop((_wide(120), 0, _wide(1080), _wide(720)))
        seen.reduce(2).save(out, "JPEG", quality=82)
        return out.getvalue()

    def _around(self, x: float, y: float, radius: float) -> list[tuple[float, float]]:
        return self._pixels((x - radius, y - radius), (x + radius, y + radius))

    def _pixels(self, *points: Point) -> list[tuple[float, float]]:
        return [((x + self.origin[0]) * _FINE, (y + self.origin[1]) * _FINE) for x, y in points]


def _wide(length: float) -> int:
    """Whole pixels."""
    return round(length * _FINE)


def draw(thing: str, scale: str, readout: str) -> bytes:
    """A JPEG of `thing` on `scale`, the readout as written down. Raises KeyError for a thing nobody has drawn yet."""
    sheet = Sheet()
    sheet.put([["line", [[80, 700], [1120, 700]], {"colour": "brass", "width": 4}], *SCALES[scale]["shapes"]], 0, 0)
    if "display" in SCALES[scale]:
        sheet.readout(SCALES[scale]["display"], readout)
    sheet.put(THINGS[thing], 600, SCALES[scale]["base"])
    return sheet.jpeg()
