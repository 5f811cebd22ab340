"""The build sheet over the web is the one of the command line."""

import pytest

from tarebook.demo import scenario
from tarebook.papers.report import report
from tests.home import Home, entry, id_of


@pytest.fixture(scope="module")
def device(tmp_path_factory):
    home = Home(tmp_path_factory.mktemp("home"))
    scenario.fill(home.database, home.garage, home.app.extensions["tarebook"].photos)
    yield home.pair()
    home.close()


@pytest.mark.parametrize(("form", "kind"), [("text", "text/plain"), ("csv", "text/csv"), ("json", "application/json")])
@pytest.mark.parametrize("trim", ["event", "road"])
def test_each_form_is_what_the_command_prints(device, form, kind, trim):
    answer = device.get(f"/report?format={form}&trim={trim}")
    assert (answer.status_code, answer.mimetype) == (200, kind)
    assert answer.data.decode() == report(scenario.with_photos(), form, None, trim)


def test_a_car_is_found_by_name(device):
    assert device.get("/report?car=Pebble").status_code == 200
    assert device.get("/report?car=Flint").status_code == 404


@pytest.mark.parametrize("query", ["format=pdf", "trim=rally"])
def test_what_it_does_not_know_is_refused(device, query):
    assert device.get(f"/report?{query}").status_code == 422


def test_a_stranger_gets_nothing(device):
    assert device.client.get("/api/v1/report").status_code == 401


def test_what_nothing_proves_says_who_sent_it(tmp_path):
    home = Home(tmp_path)
    phone = home.pair("The phone in the shed")
    mine, forged = entry("j1", {"name": "Seats"}, device=phone.id), entry("j2", {"name": "Glass"}, device="home")
    scale = entry("s1", {"name": "Kitchen", "kind": "kitchen"}, device="home", kind="scale")
    checked = {"scale": "s1", "known": "1 kg", "shown": "1 kg"}
    check = entry("c1", checked, device="nobody", kind="scale_check")
    taken = entry("v1", {"entry": id_of(check), "take": True}, device=phone.id, kind="verdict")
    phone.push(mine, forged, scale, check, taken)
    text = " ".join(phone.get("/report").data.decode().split())
    said = "Sent by The phone in the shed, and not proven to be from"
    assert f"- Glass: {said} the home computer. - Kitchen: {said} the home computer." in text
    assert f"- a scale check of Kitchen: {said} nobody." in text
    assert f"Seats: {said}" not in text
