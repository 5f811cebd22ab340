"""A weight moved on the drawing without a server: the centre goes along, and the place is kept over a new start."""

from playwright.sync_api import Page, expect

from tests.browser.doing import go, said


def test_a_weight_dragged_offline_stays_where_it_was_put(demo, make_phone):
    phone = make_phone("phone", demo)
    page = phone.open()
    page.get_by_text("Weight now").wait_for()
    phone.is_installed()
    demo.kill()
    go(page, "#/balance")
    before = pick_spare_wheel(page)
    page.get_by_role("button", name="Move it").click()
    start = page.locator(
        ".car-view.close .centre"
    ).first  # it came off before the weigh-in: only the start moves with it
    stood = start.get_attribute("transform")
    drag(page)
    put = page.locator(".place-now").inner_text()
    assert "ahead of the front axle" in put
    assert "left of the centreline" in put
    assert start.get_attribute("transform") != stood
    expect(said(page)).to_contain_text("ahead of it")
    page.reload()
    assert pick_spare_wheel(page) != before
    expect(page.get_by_role("region", name="The weight tapped")).to_contain_text("left of the centreline")
    page.get_by_role("button", name="Move it").click()
    assert page.locator(".place-now").inner_text() == put


def pick_spare_wheel(page: Page) -> str:
    """Read the spare wheel by the list below the drawing; what the screen then says of it."""
    page.get_by_text("Every weight on the drawing").click()
    page.get_by_role("button", name="Spare wheel").first.click()
    return page.get_by_role("region", name="The weight tapped").inner_text()


def drag(page: Page) -> None:
    """From the middle of the car, seen from above, to its left front corner."""
    ground = page.locator(".ground-under[data-view=top]")
    ground.scroll_into_view_if_needed()
    box = ground.bounding_box()
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + 0.3 * box["width"], box["y"] + 0.12 * box["height"], steps=8)
    page.mouse.up()
