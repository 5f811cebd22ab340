"""How a stranger's thumb does it: every act as taps and keys on the screens' own words."""

import re
from dataclasses import dataclass

from playwright.sync_api import Locator, Page, expect

from tests.browser.doing import go, leave, said
from tests.browser.stranger.build import Job, Part, Scale


def begin_in_pounds(page: Page, car: str, minimum: str, scale: Scale) -> None:
    page.get_by_role("textbox", name="What is the car called?").fill(car)
    page.get_by_role("radio", name="Pounds", exact=True).check()
    page.get_by_role("textbox", name="The class minimum, if you know it").fill(minimum)
    page.get_by_role("button", name="Next: your scale").tap()
    page.get_by_role("radio", name=scale.display, exact=True).tap()
    page.get_by_role("button", name=scale.name, exact=True).tap()
    page.get_by_role("button", name="Weigh the first part").tap()
    expect(page.get_by_role("heading", name="Weigh a part")).to_be_visible()


def add_scale(page: Page, scale: Scale) -> None:
    go(page, "#/scales")
    page.get_by_role("link", name="Add a scale").tap()
    page.get_by_role("radio", name=scale.display, exact=True).tap()
    page.get_by_role("combobox", name="Kind").select_option(scale.name)
    if scale.capacity:
        page.get_by_role("textbox", name="Most it can weigh").fill(scale.capacity)
        leave(page)
    expect(page.get_by_text("Checks against known masses")).to_be_visible()


def add_stage(page: Page, name: str) -> None:
    go(page, "#/stages")
    page.get_by_role("button", name="Add a stage").tap()
    page.get_by_role("textbox", name="Name").fill(name)
    page.get_by_role("button", name="Done").tap()
    expect(said(page)).to_contain_text(name)


def put_on_scale(page: Page, part: Part, scale: Scale | None = None) -> None:
    """Everything of a weighing but its save. `scale`: the one that is chosen, where it is not the part's own."""
    page.get_by_role("navigation", name="Main").get_by_role("link", name="Weigh").tap()
    page.get_by_role("link", name=re.compile("^A part")).tap()
    choose(page, scale or part.scale, "Several alike" if part.pieces > 1 else "On the scale")
    if part.pieces > 1:
        page.get_by_role("textbox", name="How many").fill(str(part.pieces))
    _display(page, part).fill(part.shown)
    page.get_by_role("textbox", name="What is it?").fill(part.name)


def choose(page: Page, scale: Scale, way: str) -> None:
    """How it is weighed, where that is not as the time before."""
    how = page.get_by_role("button", name=re.compile("^How it is weighed"))
    if f"{way} · {scale.name}" in how.inner_text():
        return
    how.tap()
    page.get_by_role("combobox", name="On which scale").select_option(scale.name)
    page.get_by_role("radio", name=way).check(force=True)
    page.get_by_role("button", name="Done").tap()


def save(page: Page) -> None:
    page.get_by_role("button", name="Save weighing").tap()
    is_saved(page)


def is_saved(page: Page) -> None:
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()


def into_job(page: Page, job: Job, way: str) -> None:
    """From a weighing just saved."""
    page.get_by_role("button", name="Add to a job").tap()
    page.get_by_role("textbox", name="Which job").fill(job.name)
    page.get_by_role("radio", name="Comes off" if way == "off" else "Goes on").check(force=True)
    page.get_by_role("button", name="Add", exact=True).tap()
    expect(page.get_by_role("link", name=f"Open {job.name}")).to_be_visible()


def swap(page: Page, job: Job) -> None:
    """Both weighed on one screen; it is fitted then."""
    [off], [on] = job.off, job.on
    page.get_by_role("navigation", name="Main").get_by_role("link", name="Weigh").tap()
    page.get_by_role("link", name=re.compile("^A swap")).tap()
    page.get_by_role("textbox", name="What comes off?").fill(off.name)
    leave(page)
    for part in (off, on):
        choose(page, part.scale, "Several alike" if part.pieces > 1 else "On the scale")
        if part.pieces > 1:
            page.get_by_role("textbox", name="How many").fill(str(part.pieces))
        _display(page, part).fill(part.shown)
        if part is off:
            page.get_by_role("button", name="Next: what goes on").tap()
            expect(page.get_by_text("What goes on?")).to_be_visible()
    page.get_by_role("button", name="Fitted").tap()
    expect(page.get_by_role("heading", name=job.name)).to_be_visible()


def _display(page: Page, part: Part) -> Locator:
    return page.get_by_role("textbox", name=re.compile("^All together" if part.pieces > 1 else "^The scale shows"))


def open_job(page: Page, name: str) -> None:
    page.get_by_role("navigation", name="Main").get_by_role("link", name="Jobs").tap()
    page.get_by_role("link", name=re.compile(f"^{name}")).tap()
    expect(page.get_by_role("textbox", name="What is done")).to_have_value(name)


def fit(page: Page, job: Job, stage: str) -> None:
    """The job is done, and belongs to a stage."""
    open_job(page, job.name)
    fitted = page.get_by_role("radio", name="Fitted", exact=True)
    if not fitted.is_checked():  # as a swap is already
        fitted.check(force=True)
        expect(said(page)).to_contain_text("Fitted")
    page.get_by_role("combobox", name="Stage").select_option(stage)
    expect(said(page)).to_contain_text(stage)


@dataclass(frozen=True)
class Whole:
    """A look at the whole car. `shown`: what each field gets. `driver`: None where the stranger forgets to say.
    `at`: as a date field gives it; "" is now."""

    scale: Scale
    layout: str
    shown: dict[str, str]
    fuel: str
    driver: str | None
    at: str = ""


def weigh_car(page: Page, of: Whole) -> None:
    page.get_by_role("navigation", name="Main").get_by_role("link", name="Weigh").tap()
    page.get_by_role("link", name="The whole car").tap()
    page.get_by_role("button", name=re.compile("^Zeroed, level")).tap()
    page.get_by_role("radio", name=of.layout, exact=True).check(force=True)
    page.get_by_role("combobox", name="On which scales").select_option(of.scale.name)
    for field, reading in of.shown.items():
        page.get_by_role("textbox", name=re.compile(f"^{field}")).fill(reading)
    page.get_by_role("textbox", name="Fuel in the tank").fill(of.fuel)
    if of.driver:
        page.get_by_role("radio", name=of.driver).check(force=True)
    if of.at:
        page.get_by_text(re.compile("Where, when")).tap()
        page.get_by_label("When").fill(of.at)
    right = page.get_by_role("checkbox", name="The list is right: I looked.")
    if right.count():
        right.check(force=True)
    page.get_by_role("button", name="Save weigh-in").tap()
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
