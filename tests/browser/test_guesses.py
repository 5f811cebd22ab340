"""What guesses ran off by is said on a phone without signal, where they are listed, and switched off by one tap."""

import re

from playwright.sync_api import Page, expect

from tests.browser.doing import begin, go, in_sync, join, said

BUILD = """part,guessed (kg),weighed (kg)
Spare wheel,14,11.8
Steel bonnet prop,0.5,0.42
Rear bench,16,12.9
Tow hook,1.2,1.0
Parcel shelf,2.5,
Rear belts,4,
"""
LEARNED = "Your guesses run 16 ± 11 % high, from 4 parts: taken out."


def guessed(page: Page) -> str:
    """What the list of guesses says of the parcel shelf."""
    go(page, "#/parts?show=claimed")
    row = page.get_by_role("link", name=re.compile("^Parcel shelf"))
    expect(row).to_be_visible()
    return row.inner_text()


def test_guesses_are_corrected_by_what_was_weighed_until_they_count_as_typed(server, make_phone, tmp_path):
    sheet = tmp_path / "build.csv"
    sheet.write_text(BUILD)
    server.run("import", str(sheet), "--yes")
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    server.kill()

    assert "2.2 ± 0.5 kg" in guessed(page)
    expect(page.get_by_text(LEARNED)).to_be_visible()
    page.get_by_role("link", name=re.compile("^Parcel shelf")).click()
    expect(page.get_by_text("guessed, typed 2.5 kg")).to_be_visible()
    expect(page.get_by_text(LEARNED)).to_be_visible()
    expect(page.get_by_role("textbox", name="Weight, until it is weighed")).to_have_value("2.5 kg")

    page.get_by_role("link", name="Corrected or as typed").click()
    expect(page.get_by_role("radio", name="Corrected")).to_be_checked()
    page.get_by_role("radio", name="As typed").check()
    expect(said(page)).to_have_text("Guesses and quotes count: As typed")
    assert "2.5 ± 0.6 kg" in guessed(page)
    expect(page.get_by_text("Your guesses run")).to_have_count(0)
