"""The main job: weighed at a yard without signal, killed, opened again, at home once and whole."""

import hashlib

from playwright.sync_api import expect

from tests.browser.doing import begin, has_exif, in_sync, join, photo, weigh

LARGEST_PHOTO = 600 * 1024


def of_kind(entries, kind):
    return [entry for entry in entries if entry["kind"] == kind]


def test_a_weighing_with_photo_survives_no_signal_and_sigkill_and_arrives_once(server, make_phone, tmp_path):
    phone = make_phone("anna", server)
    begin(join(phone, server), "Coupe", "980 kg")
    phone.close()
    server.kill()
    weigh(phone.open(), "Spare wheel", ["1", "1", "Point", "3", "kg"], photo(tmp_path))
    phone.sigkill()

    page = phone.open("/#/parts")
    expect(page.get_by_text("Spare wheel")).to_be_visible()
    expect(page.get_by_text("11.3")).to_be_visible()
    server.start()
    in_sync(page)

    token = server.join()
    entries = server.entries(token)
    assert [entry["set"]["shown"] for entry in of_kind(entries, "weighing")] == ["11.3 kg"]
    [kept] = of_kind(entries, "photo")
    sha256 = kept["set"]["sha256"]
    at_home = server.ask(f"/api/v1/photos/{sha256}?size=full", token)
    assert hashlib.sha256(at_home).hexdigest() == sha256
    assert len(at_home) <= LARGEST_PHOTO
    assert not has_exif(at_home)

    other = join(make_phone("ben", server), server)
    in_sync(other)
    other.goto(server.address + "/#/parts")
    expect(other.get_by_text("Spare wheel")).to_be_visible()


def test_what_is_written_while_the_server_hangs_goes_through_when_it_answers_again(server, make_phone):
    phone = make_phone("anna", server)
    page = join(phone, server)
    begin(page, "Coupe", "980 kg")
    server.freeze()
    weigh(page, "Tow hook", ["4", "2", "0", "g"])
    expect(page.locator(".sync-words").first).to_contain_text("On this phone only")
    server.thaw()
    in_sync(page)
    assert len(of_kind(server.entries(server.join()), "weighing")) == 1
