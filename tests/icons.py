"""Draws the app's icons from `tarebook.svg`, by the browser: `python -m tests.icons` after a change of the drawing.

What it writes stands beside the drawing and is committed.
"""

from __future__ import annotations

import sys

from playwright.sync_api import Playwright, sync_playwright

from tests.machine import ROOT, need_chromium

FOLDER = ROOT / "webapp" / "public" / "icons"
# Pixels a side, the drawing's share of it, and the ground: a system cuts what is maskable, so it keeps a margin.
PICTURES = {
    "tarebook-192.png": (192, 1.0, "transparent"),
    "tarebook-512.png": (512, 1.0, "transparent"),
    "tarebook-maskable.png": (512, 0.78, "#fbfaf6"),
}
STYLE = "html {{ background: {ground} }} body {{ margin: 0 }} svg {{ display: block; scale: {share} }}"


def drawn(playwright: Playwright) -> dict[str, bytes]:
    """Every picture's PNG, by its name."""
    browser = playwright.chromium.launch(executable_path=need_chromium(), args=["--no-sandbox"])
    drawing, found = (FOLDER / "tarebook.svg").read_text(encoding="utf-8"), {}
    for name, (side, share, ground) in PICTURES.items():
        page = browser.new_page(viewport={"width": side, "height": side})
        page.set_content(f"<style>{STYLE.format(ground=ground, share=share)}</style>{drawing}")
        found[name] = page.screenshot(omit_background=True)
    browser.close()
    return found


def main() -> int:
    with sync_playwright() as playwright:
        for name, png in drawn(playwright).items():
            (FOLDER / name).write_bytes(png)
    return 0


if __name__ == "__main__":
    sys.exit(main())
