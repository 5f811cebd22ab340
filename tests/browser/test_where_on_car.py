"""Where a part sits is asked when it costs nothing: one tap on the drawn car, or on what its name or its job says."""

from playwright.sync_api import expect

from tests.browser.doing import begin, join, said, weigh


def test_a_weighed_part_is_placed_by_one_tap_and_the_next_of_its_job_is_offered_the_same(garage, make_phone):
    page = join(make_phone("anna", garage), garage)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Bracket", ["2", "kg"])
    drawn = page.get_by_role("group", name="The car from above, front up")
    box = drawn.get_by_role("button", name="Boot", exact=True).bounding_box()
    assert box
    assert min(box["width"], box["height"]) >= 48
    page.get_by_role("button", name="Add to a job").click()
    page.get_by_role("textbox", name="Which job").fill("Brackets out")
    page.get_by_role("button", name="Add", exact=True).click()
    drawn.get_by_role("button", name="Boot", exact=True).click()
    expect(page.get_by_text("Sits: boot")).to_be_visible()
    expect(drawn).to_have_count(0)
    page.get_by_role("button", name="Undo").click()
    expect(drawn).to_be_visible()
    drawn.get_by_role("button", name="Boot", exact=True).click()

    weigh(page, "Nut", ["1", "kg"])
    page.get_by_role("button", name="Add to a job").click()
    page.get_by_role("button", name="Brackets out").click()
    page.get_by_role("button", name="Add", exact=True).click()
    page.get_by_role("button", name="Boot, as Bracket").click()
    expect(page.get_by_text("Sits: boot")).to_be_visible()

    weigh(page, "Steel wheel", ["9", "kg"])
    page.get_by_role("region", name="Where on the car?").get_by_role("button", name="Front wheels").first.click()
    expect(page.get_by_text("Sits: front wheels, unsprung, rotating")).to_be_visible()
    expect(said(page)).to_contain_text("Where in the car: front wheels")
