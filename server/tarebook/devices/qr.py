"""A link as a QR code: for a terminal, and as a picture."""

from io import BytesIO
from typing import TextIO

import segno


def as_svg(link: str) -> str:
    """A picture in SVG, black on white with the quiet zone that readers want, 4 modules."""
    out = BytesIO()
    segno.make(link, error="m", micro=False).save(out, kind="svg", xmldecl=False, scale=8, border=4, light="#fff")
    return out.getvalue().decode().strip()


def write_to(out: TextIO, link: str) -> None:
    """Draws it in half blocks, two modules to a character; nothing where the terminal has no such characters."""
    if (out.encoding or "").lower().startswith("utf"):
        segno.make(link, error="m", micro=False).terminal(out, border=2, compact=True)
