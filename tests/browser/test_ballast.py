"""In the paddock, without signal: how much ballast and where, and what is fitted is kept and weighed in."""

from playwright.sync_api import expect

from tarebook.core.ballast.ballast_records import ballast_choice
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.shown import show_mass
from tarebook.core.standing.standing import standing
from tarebook.demo import scenario
from tests.browser.doing import go, leave, said


def answer(page):
    return page.get_by_role("region", name="How much, and where")


def weight_with(records, put):
    """The car's weight with these blocks noted as fitted: its digits."""
    places = [{**place, "fitted": put.get(place["id"], 0)} for place in records["ballast_places"]]
    weight = standing(read_garage({**records, "ballast_places": places})).weight
    return show_mass(weight.value, "kg", 2 * weight.u).split()[0]


def test_ballast_is_answered_and_what_is_fitted_kept_without_signal(demo, make_phone):
    records = {**scenario.records(), "trim": "event"}
    chosen = ballast_choice(read_garage(records)).found
    assert chosen.put
    phone = make_phone("paddock", demo)
    expect(phone.open().get_by_text("Weight now")).to_be_visible()
    phone.is_installed()
    phone.close()
    demo.kill()

    page = phone.open("/#/ballast")
    expect(answer(page)).to_contain_text(show_mass(chosen.added, "kg").removesuffix(" kg"))
    for count in chosen.put.values():
        expect(answer(page)).to_contain_text(f"{count} × ")
    answer(page).get_by_role("button", name="Fitted like this").click()
    expect(answer(page)).to_contain_text("Saved on this phone.")
    phone.sigkill()

    page = phone.open("/#/ballast")
    expect(answer(page)).to_contain_text("The blocks are fitted like this.")
    for count in chosen.put.values():
        expect(answer(page)).to_contain_text(f"{count} fitted, as they should be")
    go(page, "#/car")
    expect(page.get_by_role("region", name="Weight now")).to_contain_text(weight_with(records, chosen.put))
    go(page, "#/weigh-car")
    expect(page.get_by_label("Ballast on board")).to_have_value(show_mass(chosen.added, "kg"))

    go(page, "#/ballast")
    page.get_by_label("Left, at least %").fill("48.2")
    expect(answer(page)).to_contain_text("No ballast is needed for the minimum.")
    expect(answer(page)).to_contain_text("Take ")
    leave(page)
    expect(said(page)).to_contain_text("Left, at least %")


def test_a_newcomer_adds_a_place_from_the_list_and_has_an_answer(demo, make_phone):
    page = make_phone("newcomer", demo).open()
    expect(page.get_by_text("Weight now")).to_be_visible()
    go(page, "#/ballast/new")
    page.get_by_label("Start from a common place").select_option("Under the left seat")
    page.get_by_label("One block weighs").fill("5 kg")
    page.get_by_label("Takes at most").fill("2")
    expect(page.get_by_label("From the front axle", exact=True)).to_have_value("1230 mm")
    leave(page)
    expect(said(page)).to_contain_text("Takes at most: 2")
    go(page, "#/ballast")
    expect(answer(page)).to_contain_text("× 5 kg")
    go(page, "#/car")
    page.get_by_role("link", name="Ballast").click()
    expect(answer(page)).to_contain_text("Under the left seat")


def test_a_wish_that_cannot_be_read_or_kept_is_said_before_any_button(demo, make_phone):
    page = make_phone("wisher", demo).open()
    expect(page.get_by_text("Weight now")).to_be_visible()
    go(page, "#/ballast")
    fitting = answer(page).get_by_role("button")
    for typed in ("abc", "-5"):
        page.get_by_label("Front, at most %").fill(typed)
        expect(answer(page)).to_contain_text("type a plain number")
        expect(answer(page)).not_to_contain_text("kg")
        expect(fitting).to_have_count(0)
    page.get_by_label("Front, at least %").fill("40")
    page.get_by_label("Front, at most %").fill("45")
    expect(answer(page)).to_contain_text("too much for the share wanted")
    expect(fitting).to_have_text("Fit the nearest all the same")
    fitting.click()
    expect(answer(page)).to_contain_text("as the nearest has it")
    expect(answer(page)).not_to_contain_text("as they should be")
    go(page, "#/car-sheet")
    page.get_by_label("Wheelbase").fill("")
    leave(page)
    expect(said(page)).to_contain_text("Wheelbase: cleared")
    go(page, "#/ballast")
    expect(answer(page)).to_contain_text("The front share wanted cannot be kept")
