"""A scale's age is drawn with its records at one tap; what would lower the doubt leads to the screen that does it."""

import re
from typing import Any

from playwright.sync_api import expect

from tests.browser.doing import go, join


def records() -> dict[str, list[dict[str, Any]]]:
    """Pads checked in January, two weigh-ins since, and a glass off that nobody weighed."""
    no_jobs: list[str] = []
    weigh_ins = [
        {
            "id": f"k{at}", "car": "car", "layout": "total", "total": f"{total} kg", "scale": "pads", "trim": "event",
            "at": f"2026-0{at + 2}-03", "driver_in": False, "fuel": "10 L", "fuel_within": "0.5 L", "jobs": no_jobs,
            "ready": ["zeroed", "level", "rolled", "pressures", "clear"],
        }
        for at, total in enumerate((960.4, 960.6))
    ]  # fmt: skip
    return {
        "car": [{"id": "car", "name": "Coupe", "fuel_kind": "petrol", "tank_size": "45 L"}],
        "scale": [
            {"id": "pads", "name": "Pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.2 kg"},
            {"id": "hook", "name": "Hook", "kind": "hanging", "division": "20 g"},
        ],
        "scale_check": [
            {"id": "c0", "scale": "pads", "known_name": "drum", "known": "200 kg", "known_within": "0.02 kg",
             "shown": "200.2 kg", "at": "2026-01-05"},
        ],
        "part": [{"id": "glass", "name": "Rear glass", "car": "car", "claim": "15 kg", "claim_basis": "guessed"}],
        "job": [{"id": "out", "name": "Glass out", "car": "car", "state": "fitted"}],
        "job_part": [{"id": "q", "job": "out", "part": "glass", "way": "off"}],
        "weigh_in": weigh_ins,
    }  # fmt: skip


def test_a_scale_is_drawn_over_time_and_its_records_are_at_one_tap(garage, make_phone):
    garage.holds(records())
    page = join(make_phone("anna", garage), garage)
    go(page, "#/scale/pads")
    age = page.get_by_role("region", name="How true it has been")
    expect(age).to_contain_text("Check it before the next weigh-in")
    drawing = age.get_by_role("img", name=re.compile("by 1 check and 2 weigh-ins"))
    age.get_by_text("Day by day", exact=True).tap()
    expect(age.get_by_text("the check alone: +1.00 kg")).to_be_visible()
    age.get_by_role("button", name=re.compile("Check of 5 Jan")).tap()
    expect(page.get_by_text("drum: 200 kg")).to_be_in_viewport()
    drawing.scroll_into_view_if_needed()
    box = drawing.bounding_box()
    assert box
    # The second weigh-in is the record nearest to today.
    drawing.tap(position={"x": 0.9 * box["width"], "y": 0.5 * box["height"]})
    expect(page.get_by_role("heading", name="Weigh-in", exact=True)).to_be_visible()
    expect(page).to_have_url(re.compile("weigh-in/k1"))


def test_what_would_lower_the_doubt_leads_to_what_does_it(garage, make_phone):
    garage.holds(records())
    page = join(make_phone("anna", garage), garage)
    go(page, "#/standing")
    surer = page.get_by_role("region", name="What would make it surer")
    told = surer.get_by_role("link")
    expect(told.first).to_contain_text(re.compile(r"± .* instead of ± .*, \d+ min"))
    assert told.count() <= 3
    surer.get_by_role("link", name=re.compile("Weigh Rear glass on Hook")).tap()
    expect(page.get_by_role("heading", name="Weigh a part")).to_be_visible()
    expect(page.get_by_text("Rear glass").first).to_be_visible()
