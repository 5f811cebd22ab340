"""The demo's photos: plain line drawings in ink and brass, made when they are wanted.

A drawing is a thing on a scale with the readout that was written down. The same words give the same bytes, so that a
photo's hash is stable on one machine. Coordinates: 120 to 1080 across, 0 to 720 down; the ground line is at 700.
"""

from collections.abc import Callable
from io import BytesIO

from PIL import Image, ImageDraw, ImageFont

GROUND = 700
_FINE = 1.6  # pixels of the large image to one of the sheet's; halving it afterwards makes the lines smooth
_PAPER, _INK, _BRASS, _PALE = "#f7f4ec", "#23211d", "#a9803a", "#e6dcc4"

Point = tuple[float, float]


class Sheet:
    """One drawing in progress: shapes with an ink outline, all in sheet coordinates."""

    def __init__(self) -> None:
        self.image = Image.new("RGB", (round(1200 * _FINE), round(720 * _FINE)), _PAPER)
        self._pen = ImageDraw.Draw(self.image)

    def line(self, *points: Point, colour: str = _INK, width: int = 5) -> None:
        pixels = [(x * _FINE, y * _FINE) for x, y in points]
        self._pen.line(pixels, fill=colour, width=round(width * _FINE), joint="curve")

    def shape(self, *points: Point, fill: str | None = None, colour: str = _INK, width: int = 5) -> None:
        if fill:
            self._pen.polygon([(x * _FINE, y * _FINE) for x, y in points], fill=fill)
        self.line(*points, points[0], points[1], colour=colour, width=width)

    def box(self, left: float, top: float, right: float, bottom: float, fill: str = _PAPER, round_by: int = 14) -> None:
        corners = tuple(v * _FINE for v in (left, top, right, bottom))
        self._pen.rounded_rectangle(corners, round_by * _FINE, fill=fill, outline=_INK, width=round(5 * _FINE))

    def ring(self, x: float, y: float, radius: float, fill: str = _PAPER, colour: str = _INK, width: int = 5) -> None:
        corners = tuple(v * _FINE for v in (x - radius, y - radius, x + radius, y + radius))
        self._pen.ellipse(corners, fill=fill, outline=colour, width=round(width * _FINE))

    def arc(self, x: float, y: float, radius: float, start: float, end: float) -> None:
        corners = tuple(v * _FINE for v in (x - radius, y - radius, x + radius, y + radius))
        self._pen.arc(corners, start, end, fill=_INK, width=round(5 * _FINE))

    def words(self, x: float, y: float, text: str, height: int, colour: str = _INK) -> None:
        font = ImageFont.load_default(size=round(height * _FINE))
        self._pen.text((x * _FINE, y * _FINE), text, font=font, fill=colour, anchor="mm")

    def jpeg(self) -> bytes:
        out = BytesIO()
        seen = self.image.crop((round(120 * _FINE), 0, round(1080 * _FINE), round(720 * _FINE)))
        seen.reduce(2).save(out, "JPEG", quality=82)
        return out.getvalue()


def draw(thing: str, scale: str, readout: str) -> bytes:
    """A JPEG of `thing` on `scale`, the readout as written down. Raises KeyError for a thing nobody has drawn yet."""
    sheet = Sheet()
    sheet.line((80, GROUND), (1120, GROUND), colour=_BRASS, width=4)
    base = SCALES[scale](sheet, readout)
    THINGS[thing](sheet, 600, base)
    return sheet.jpeg()


# Scales: each draws itself and says at which height the thing's underside stands.


def _floor_scale(sheet: Sheet, readout: str) -> float:
    sheet.shape((330, 620), (870, 620), (930, GROUND), (270, GROUND), fill=_PALE)
    _display(sheet, 600, 665, readout)
    return 615


def _kitchen_scale(sheet: Sheet, readout: str) -> float:
    sheet.box(420, 560, 780, 585, fill=_PALE, round_by=8)
    sheet.box(450, 590, 750, GROUND, fill=_PALE)
    _display(sheet, 600, 645, readout)
    return 555


def _hanging_scale(sheet: Sheet, readout: str) -> float:
    sheet.line((600, 0), (600, 60))
    sheet.box(490, 60, 710, 230, fill=_PALE)
    _display(sheet, 600, 145, readout)
    sheet.line((600, 230), (600, 270))
    sheet.arc(600, 285, 22, -90, 150)
    return GROUND - 40


def _pads(sheet: Sheet, readout: str) -> float:
    for x in (330, 860):
        sheet.box(x - 85, 672, x + 85, GROUND, fill=_PALE, round_by=6)
    sheet.line((245, 686), (150, 686), (150, 110), (200, 110))
    _display(sheet, 295, 110, readout)
    return 670


def _fence(sheet: Sheet, readout: str) -> float:
    for x in range(140, 1100, 120):
        sheet.line((x, 260), (x, GROUND), colour=_BRASS, width=4)
    sheet.line((100, 340), (1100, 340), colour=_BRASS, width=4)
    return GROUND


def _nothing(sheet: Sheet, readout: str) -> float:
    return GROUND


def _display(sheet: Sheet, x: float, y: float, readout: str) -> None:
    sheet.box(x - 95, y - 29, x + 95, y + 29, fill=_PAPER, round_by=8)
    sheet.words(x, y, readout, 38)


# Things: each stands on `base`, centred on x.


def _wheel(sheet: Sheet, x: float, base: float) -> None:
    y = base - 200
    sheet.ring(x, y, 200, fill=_PALE, width=8)
    sheet.ring(x, y, 135, fill=_PAPER)
    sheet.ring(x, y, 34, colour=_BRASS)
    for dx, dy in ((0, -84), (80, -26), (49, 68), (-49, 68), (-80, -26)):
        sheet.ring(x + dx, y + dy, 24)


def _roll(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x, base - 360), (x - 90, base - 170))
    sheet.line((x, base - 360), (x + 90, base - 170))
    sheet.box(x - 170, base - 180, x + 170, base - 60, fill=_PALE, round_by=55)
    for dx in (-70, 70):
        sheet.line((x + dx, base - 178), (x + dx, base - 62), colour=_BRASS, width=12)


def _bowl(sheet: Sheet, x: float, base: float) -> None:
    sheet.shape((x - 230, base - 150), (x + 230, base - 150), (x + 150, base), (x - 150, base), fill=_PALE)
    sheet.line((x - 170, base - 150), (x - 120, base - 260), (x + 60, base - 280), (x + 90, base - 152), colour=_BRASS)
    sheet.line((x - 40, base - 152), (x + 20, base - 230), (x + 170, base - 220), (x + 190, base - 152))


def _sack(sheet: Sheet, x: float, base: float) -> None:
    sheet.shape(
        (x, base - 350),
        (x + 50, base - 310),
        (x + 160, base - 190),
        (x + 150, base - 20),
        (x - 150, base - 20),
        (x - 160, base - 190),
        (x - 50, base - 310),
        fill=_PALE,
    )
    sheet.line((x - 52, base - 300), (x + 52, base - 300), colour=_BRASS, width=10)
    for top in (210, 150, 90):
        sheet.line((x - 100, base - top), (x + 95, base - top + 14), width=3)


def _battery(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x, base - 360), (x - 120, base - 210))
    sheet.line((x, base - 360), (x + 120, base - 210))
    sheet.box(x - 170, base - 210, x + 170, base - 20, fill=_PALE)
    for dx in (-110, 110):
        sheet.box(x + dx - 26, base - 244, x + dx + 26, base - 210, fill=_BRASS, round_by=6)
        sheet.line((x + dx - 20, base - 160), (x + dx + 20, base - 160))
    sheet.line((x + 110, base - 180), (x + 110, base - 140))


def _tray(sheet: Sheet, x: float, base: float) -> None:
    sheet.shape((x - 210, base - 110), (x + 150, base - 110), (x + 220, base), (x - 140, base), fill=_PALE)
    sheet.line((x - 210, base - 110), (x - 210, base - 150), (x + 150, base - 150), (x + 150, base - 110))
    for dx, dy in ((-110, -80), (100, -80), (-60, -30), (150, -30)):
        sheet.ring(x + dx, base + dy, 12, colour=_BRASS)


def _exhaust(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x, base - 360), (x, base - 210))
    sheet.box(x - 210, base - 210, x + 190, base - 70, fill=_PALE, round_by=60)
    sheet.line((x - 205, base - 140), (x - 330, base - 140), (x - 380, base - 90), width=14)
    sheet.line((x + 190, base - 120), (x + 300, base - 120), colour=_BRASS, width=18)


def _seat(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x, base - 360), (x - 60, base - 330))
    sheet.shape(
        (x - 120, base - 340),
        (x - 40, base - 350),
        (x + 10, base - 150),
        (x + 190, base - 130),
        (x + 180, base - 60),
        (x - 60, base - 60),
        fill=_PALE,
    )
    sheet.line((x - 70, base - 30), (x + 170, base - 30), colour=_BRASS, width=10)
    for dx in (-40, 140):
        sheet.line((x + dx, base - 60), (x + dx, base - 30))


def _rod(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x - 370, base - 14), (x + 330, base - 14), colour=_BRASS, width=12)
    sheet.line((x + 330, base - 14), (x + 375, base - 30), (x + 380, base - 75), colour=_BRASS, width=12)
    sheet.ring(x - 385, base - 14, 18)


def _hook(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x, base - 360), (x, base - 300))
    sheet.ring(x, base - 225, 75, fill=_PALE)
    sheet.ring(x, base - 225, 40, fill=_PAPER)
    sheet.line((x, base - 150), (x, base - 20), width=30)
    for dy in (90, 50):
        sheet.ring(x, base - dy, 8, fill=_BRASS, colour=_BRASS)


def _panel(sheet: Sheet, x: float, base: float) -> None:
    sheet.shape(
        (x - 300, base - 200),
        (x - 250, base - 290),
        (x + 250, base - 290),
        (x + 300, base - 200),
        (x + 260, base - 20),
        (x - 260, base - 20),
        fill=_PALE,
    )
    sheet.line((x - 270, base - 190), (x + 270, base - 190), width=3)
    sheet.box(x - 90, base - 90, x + 90, base - 45, round_by=6)
    sheet.line((x, base - 360), (x - 120, base - 290))
    sheet.line((x, base - 360), (x + 120, base - 290))


def _motor(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((x, base - 360), (x, base - 200))
    sheet.box(x - 150, base - 200, x + 110, base - 60, fill=_PALE, round_by=30)
    sheet.box(x - 110, base - 255, x + 60, base - 200, fill=_PALE, round_by=20)
    sheet.box(x + 110, base - 160, x + 190, base - 100, fill=_BRASS, round_by=6)


def _car(sheet: Sheet, x: float, base: float) -> None:
    sheet.shape(
        (x - 430, base - 60),
        (x - 420, base - 150),
        (x - 240, base - 180),
        (x - 110, base - 300),
        (x + 150, base - 305),
        (x + 300, base - 195),
        (x + 420, base - 170),
        (x + 430, base - 60),
        fill=_PALE,
    )
    sheet.shape((x - 190, base - 185), (x - 90, base - 275), (x + 20, base - 280), (x + 20, base - 185), fill=_PAPER)
    sheet.shape((x + 45, base - 185), (x + 45, base - 280), (x + 135, base - 282), (x + 240, base - 185), fill=_PAPER)
    for wheel in (330, 860):
        sheet.ring(wheel, base - 75, 75, fill=_PAPER, width=8)
        sheet.ring(wheel, base - 75, 40, colour=_BRASS)


def _wire(sheet: Sheet, x: float, base: float) -> None:
    sheet.line((150, base - 120), (330, base - 260), (470, base - 120), (600, base - 240), (720, base - 170), width=12)
    sheet.ring(770, base - 150, 48, fill=_PALE)
    sheet.ring(770, base - 150, 18, colour=_BRASS)


SCALES: dict[str, Callable[[Sheet, str], float]] = {
    "bathroom": _floor_scale,
    "kitchen": _kitchen_scale,
    "hanging": _hanging_scale,
    "pads": _pads,
    "fence": _fence,
    "none": _nothing,
}
THINGS: dict[str, Callable[[Sheet, float, float], None]] = {
    "wheel": _wheel,
    "roll": _roll,
    "bowl": _bowl,
    "sack": _sack,
    "battery": _battery,
    "tray": _tray,
    "exhaust": _exhaust,
    "seat": _seat,
    "rod": _rod,
    "hook": _hook,
    "panel": _panel,
    "motor": _motor,
    "car": _car,
    "wire": _wire,
}
