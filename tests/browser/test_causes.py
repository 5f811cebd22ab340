"""What does not fit comes with what it may have been, its records at one tap, and one tap that mends it."""

import re
from typing import Any

from playwright.sync_api import Page, expect

from tests.browser.doing import go, join, said

# Job → its part, what that weighs in kilograms, and which way it goes.
JOBS = {"seats": ("Front seats", 11.0, "off"), "cage": ("Roll cage", 24.0, "on"), "glass": ("Glass", 6.0, "off")}
TOTALS = (980.0, 969.0, 993.0, 986.9, 987.1, 987.0)
LISTS = (0, 1, 2, 3, 3, 3)


def records(lists: dict[int, list[str]], weighed: dict[str, str]) -> dict[str, list[dict[str, Any]]]:
    """Six weigh-ins that fit. `lists`: the jobs at one, otherwise; `weighed`: what the scale showed of a part."""
    weigh_ins = [
        {
            "id": f"k{at}", "layout": "total", "total": f"{total} kg", "scale": "pads", "trim": "event",
            "at": f"2026-0{at + 1}-03", "driver_in": False, "fuel": "10 L", "fuel_within": "0.5 L",
            "jobs": lists.get(at, list(JOBS)[: LISTS[at]]),
        }
        for at, total in enumerate(TOTALS)
    ]  # fmt: skip
    return {
        "car": [{"id": "car", "name": "Coupe", "fuel_kind": "petrol", "tank_size": "45 L"}],
        "scale": [
            {"id": "pads", "name": "Pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.2 kg"},
            {"id": "bench", "name": "Bench", "kind": "bench", "division": "10 g"},
        ],
        "part": [{"id": f"p-{job}", "name": part, "car": "car"} for job, (part, _, _) in JOBS.items()],
        "weighing": [
            {
                "id": f"w-{job}",
                "of": f"p-{job}",
                "method": "direct",
                "scale": "bench",
                "shown": weighed.get(job, f"{kg} kg"),
            }
            for job, (_, kg, _) in JOBS.items()
        ],
        "job": [
            {"id": job, "name": f"{part} job", "car": "car", "state": "fitted"} for job, (part, _, way) in JOBS.items()
        ],
        "job_part": [
            {"id": f"q-{job}", "job": job, "part": f"p-{job}", "way": way} for job, (_, _, way) in JOBS.items()
        ],
        "weigh_in": [{"car": "car", **each} for each in weigh_ins],
    }


def open_weight(page: Page) -> None:
    go(page, "#/standing")
    expect(page.get_by_role("heading", name="Weight now")).to_be_visible()


def test_a_job_missing_in_one_list_is_found_and_put_on_it_at_one_tap(garage, make_phone):
    garage.holds(records({2: ["seats"]}, {}))
    page = join(make_phone("anna", garage), garage)
    open_weight(page)
    odd = page.get_by_role("region", name="What does not fit")
    expect(odd).to_contain_text("This weigh-in shows 24.0 kg too much")
    expect(odd).to_contain_text(re.compile(r"Roll cage job already done at the weigh-in of 3 Mar\S*? about \d+ %"))
    odd.get_by_role("link", name="Look at that weigh-in").first.tap()
    expect(page.get_by_role("heading", name="Weigh-in", exact=True)).to_be_visible()
    open_weight(page)
    odd.get_by_role("button", name="Put Roll cage job on its list").tap()
    expect(odd).to_have_count(0)
    page.get_by_role("button", name="Undo").tap()
    expect(odd).to_be_visible()


def test_pounds_taken_for_kilograms_are_found_and_corrected_at_one_tap(garage, make_phone):
    garage.holds(records({}, {"glass": "13.2 kg"}))
    page = join(make_phone("anna", garage), garage)
    open_weight(page)
    odd = page.get_by_role("region", name="What does not fit")
    expect(odd).to_contain_text(re.compile(r"Glass: pounds taken for kilograms\? about \d+ %"))
    odd.get_by_role("button", name="Correct it: 13.2 lb").tap()
    expect(said(page)).to_be_visible()
    expect(odd).to_have_count(0)


def test_where_no_slip_explains_it_that_is_said(garage, make_phone):
    strange = records({}, {})
    for each in strange["weigh_in"][3:]:
        each["total"] = f"{float(each['total'].split()[0]) + 17.3} kg"
    garage.holds(strange)
    page = join(make_phone("anna", garage), garage)
    open_weight(page)
    odd = page.get_by_role("region", name="What does not fit")
    expect(odd).to_contain_text("No slip in the records explains this well.")
    expect(odd).to_contain_text(re.compile("Something nobody wrote down between the weigh-ins of .* about 9\\d %"))
    expect(odd.get_by_role("link", name="Write the job down")).to_be_visible()
