"""The main job: weighed at a yard without signal, killed, opened again, at home once and whole."""

from playwright.sync_api import expect

from tests.browser.doing import arrived_once, begin, has_exif, in_sync, join, photo, weigh

LARGEST_PHOTO = 600 * 1024


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

    at_home = arrived_once(server, "11.3 kg")
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
    assert [entry["kind"] for entry in server.entries(server.join())].count("weighing") == 1
