"""The weight now is one figure on every screen of the demo that shows it; what differs has its condition beside it."""

import re
from typing import Any

from playwright.sync_api import Locator, Page, expect

from tarebook.api.calc import run
from tarebook.demo import scenario
from tests.browser.doing import go, join, said

GARAGE: dict[str, Any] = {**scenario.records(), "trim": "event"}
LAST = max(GARAGE["weigh_ins"], key=lambda each: each["at"])["id"]


def figure(place: Page | Locator) -> str:
    """The large figure of a screen, as it would be written in a line."""
    return re.sub(r"(\d) ?kg ± ", r"\1 ± ", " ".join(place.locator(".figure").first.inner_text().split()))


def row(page: Page, name: str) -> Locator:
    return page.locator(".row", has=page.locator(".row-name", has_text=re.compile(f"^{name}$")))


def beside(page: Page) -> str:
    told = page.locator(".how-sure")
    expect(told).to_be_visible()
    return told.inner_text()


def test_the_demo_weighs_one_and_the_same_on_every_screen(demo, make_phone):
    now = run("standing", GARAGE)
    weight, answers = now["weight"], [each["weight"]["shown"] for each in now["fused"]["answers"]]
    page = make_phone("paddock", demo).open()
    car = page.get_by_role("region", name="Weight now")
    expect(car).to_be_visible()
    assert figure(car) == weight["shown"]
    assert all(answer in beside(page) for answer in answers)

    go(page, "#/standing")
    expect(page.get_by_role("heading", name="Weight now")).to_be_visible()
    assert figure(page) == weight["shown"]
    assert all(answer in beside(page) for answer in answers)
    expect(page.get_by_text(re.compile("^If everything since .* is written down.$"))).to_be_visible()
    expect(row(page, "Weight now")).to_contain_text(weight["shown"])

    for address, condition in (
        (f"#/weigh-in/{LAST}", "with Main driver, fuel as at the last weigh-in"),
        ("#/balance", "with Main driver, fuel as at the last weigh-in"),
        ("#/ballast", "with Main driver, fuel as at the last weigh-in"),
        ("#/fuel", "with Main driver, fuel as at the last weigh-in"),
    ):
        go(page, address)
        expect(row(page, "Weight now")).to_contain_text(weight["shown"])
        expect(row(page, "Weight now")).to_contain_text(condition)

    go(page, f"#/weigh-in/{LAST}")
    expect(page.get_by_text("As it stood there")).to_be_visible()
    alone = page.get_by_text("In the class's condition, by this weigh-in alone")
    expect(alone).to_be_visible()
    assert all(answer in beside(page) for answer in answers)

    go(page, "#/balance")
    states = page.locator("table.states tbody").first
    expect(states).to_contain_text("Weight, with what was aboard then")
    shown = [" ".join(cell.split()) for cell in states.locator("td").all_inner_texts()]
    assert shown[2] == weight["shown"]  # weighed with the driver and the fuel that the class counts

    go(page, "#/fuel")
    expect(page.locator(".run-answer").first).to_contain_text("Lightest at the flag: ")


def test_what_explains_readings_that_scatter_is_noted_on_the_scale_at_one_tap_and_taken_back(garage, make_phone):
    shown = (980.0, 981.6, 979.1, 981.1, 978.9, 980.6)
    pads = {"id": "pads", "name": "Pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.2 kg"}
    aboard = {"driver_in": False, "fuel": "10 L", "fuel_within": "0.5 L", "jobs": []}
    weigh_ins = [
        {"id": f"k{at}", "car": "car", "at": f"2026-01-1{at}", "layout": "total", "total": f"{total} kg",
         "scale": "pads", "trim": "event", **aboard}
        for at, total in enumerate(shown)
    ]  # fmt: skip
    car = {"id": "car", "name": "Coupe", "fuel_kind": "petrol", "tank_size": "45 L"}
    garage.holds({"car": [car], "scale": [pads], "weigh_in": weigh_ins})
    page = join(make_phone("anna", garage), garage)
    go(page, "#/standing")
    told = page.get_by_text("Your readings scatter more than the record of Pads says: repeating to 1.0 kg")
    expect(told).to_be_visible()
    page.get_by_role("button", name="Note it: repeats to 1.0 kg").click()
    expect(told).to_be_hidden()
    expect(said(page)).to_contain_text("1.0 kg")
    page.get_by_role("button", name="Undo").click()
    expect(told).to_be_visible()
