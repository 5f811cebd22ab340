"""Lifting an axle: step by step without a server, killed in between, its height in the balance, and corrected later."""

from playwright.sync_api import Page, expect

from tests.browser.doing import go, said
from tests.browser.phone import DESK

DRAFT_WITHIN = 500  # ms; a form is promised to be kept within 300 ms of the last change


def on(page: Page, *said: str) -> None:
    """From step to step, by what a person says on going on."""
    for words in said:
        page.get_by_role("button", name=words).click()


def test_a_lift_is_guided_kept_when_the_page_is_killed_and_counts_without_a_server(demo, make_phone):
    phone = make_phone("anna", demo, **DESK)
    page = phone.open()
    expect(page.locator(".weight-now")).to_be_visible()
    phone.is_installed()
    demo.kill()
    go(page, "#/lift/weigh-in-autumn")
    expect(page.get_by_text("Nobody in the car and nobody under it")).to_be_visible()
    on(page, "We can do this safely")
    expect(page.get_by_text("Nobody sits in a raised car")).to_be_visible()
    on(page, "It stands just like that", "The tank is right", "Nothing moves", "Free, and chocked")
    expect(page.get_by_text("Raise it by at least")).to_be_visible()
    on(page, "It is raised and stands safely")
    rise = page.get_by_role("textbox", name="The rear axle rose by")
    rise.fill("20")
    expect(page.get_by_text("The lift is too small to tell")).to_be_visible()
    rise.fill("452")
    expect(page.get_by_text("It will tell the height to about")).to_be_visible()
    page.wait_for_timeout(DRAFT_WITHIN)
    page.reload()
    on(page, "Both sides are measured")
    page.get_by_role("textbox", name="Left front").fill("254.3")
    page.get_by_role("textbox", name="Right front").fill("265.2")
    # 519.5 − 501.4 = 18.1 kg moved of 897.2 kg, tan θ = 452 / √(2330² − 452²): 285 + 2330 · 18.1 / (897.2 · 0.1978)
    # = 523 mm, by hand.
    expect(page.locator(".lift-answer .figure")).to_contain_text("523")
    on(page, "That is what it shows", "Save this lift")
    expect(page.get_by_text("Saved on this phone.")).to_be_visible()
    expect(page.locator(".figure")).to_contain_text("523")

    # The balance rests on it now, and no more on the lift in spring carried over.
    go(page, "#/balance")
    rests = page.get_by_role("region", name="Height and load").get_by_role("link").first
    expect(rests).to_contain_text("The height rests on it")
    expect(rests).to_contain_text("523")
    go(page, "#/load-transfer")
    expect(page.get_by_role("region", name="Height of the centre")).to_be_visible()
    expect(page.get_by_text("carried over")).to_have_count(0)


def test_a_lift_is_corrected_by_a_new_one_and_a_small_one_says_what_would_do(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/lift/lift-spring")
    expect(page.locator(".figure")).to_contain_text("512")
    page.get_by_role("link", name="Replace with a new reading").click()
    page.get_by_role("textbox", name="The rear axle rose by").fill("15 mm")
    on(page, "Both sides are measured")
    page.get_by_role("textbox", name="The whole front axle").fill("546.2 kg")
    expect(page.locator(".lift-answer")).to_contain_text("too small to tell")
    expect(page.locator(".lift-answer")).to_contain_text("Raise it by")
    page.get_by_role("textbox", name="The whole front axle").fill("565.0 kg")
    on(page, "Back")
    page.get_by_role("textbox", name="The rear axle rose by").fill("452 mm")
    on(page, "Both sides are measured", "That is what it shows", "Save this lift")
    expect(page.get_by_text("It took the place of")).to_be_visible()
    page.get_by_role("link", name="an earlier reading").click()
    expect(page.get_by_text("A newer reading took its place")).to_be_visible()
    go(page, "#/weigh-in/weigh-in-spring")
    lifts = page.get_by_role("region", name="Height of the centre")
    expect(lifts.get_by_role("link")).to_have_count(2)


def test_power_makes_weight_per_power_and_g_is_stepped(demo, make_phone):
    page = make_phone("anna", demo, **DESK).open("/#/car-sheet")
    power = page.get_by_role("textbox", name="Power", exact=True)
    expect(power).to_have_value("72")  # the garage has come
    power.fill("100")
    page.get_by_role("radio", name="hp").check()
    expect(said(page)).to_contain_text("Power is in: hp")
    go(page, "#/load-transfer")
    expect(page.get_by_role("region", name="Weight per power")).to_contain_text("kg/hp")
    turn = page.get_by_role("region", name="In a turn of 1.0 g")
    expect(turn).to_be_visible()
    page.get_by_role("button", name="In a turn: more").click()
    expect(page.get_by_role("region", name="In a turn of 1.1 g")).to_be_visible()
    # The inner wheels of a stiff car with a factor of 1.36 carry nothing beyond 1.36 g.
    for _ in range(4):
        page.get_by_role("button", name="In a turn: more").click()
    expect(page.get_by_text("two wheels would carry nothing")).to_be_visible()
