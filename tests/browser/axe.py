"""A page asked by axe: what keeps somebody from using it."""

from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

ASK_AXE = """async () => {
  const { violations } = await axe.run({ resultTypes: ["violations"] });
  const serious = violations.filter(({ impact }) => impact === "serious" || impact === "critical");
  return serious.map(({ id, nodes }) => [id, nodes[0].html]);
}"""
LIGHT, DARK = {"color_scheme": "light"}, {"color_scheme": "dark"}


def faults_of(page: Page, name: str, *schemes: Any) -> list[tuple[Any, ...]]:
    """(screen, scheme, what is wrong, where) for whatever keeps somebody from using it."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(Axe().axe_script)
    faults: list[tuple[Any, ...]] = []
    for scheme in schemes:
        page.emulate_media(**scheme)
        faults += [(name, scheme, *fault) for fault in page.evaluate(ASK_AXE)]
    if page.evaluate("document.documentElement.scrollWidth > innerWidth"):
        faults.append((name, "wider than the screen"))
    return faults
