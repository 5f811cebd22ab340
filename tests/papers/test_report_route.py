"""The build sheet over the web is the one of the command line."""

import pytest

from tarebook.demo import scenario
from tarebook.papers.report import report
from tests.home import Home


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
    assert answer.data.decode() == report(scenario.records(), form, None, trim)


def test_a_car_is_found_by_name(device):
    assert device.get("/report?car=Pebble").status_code == 200
    assert device.get("/report?car=Flint").status_code == 404


@pytest.mark.parametrize("query", ["format=pdf", "trim=rally"])
def test_what_it_does_not_know_is_refused(device, query):
    assert device.get(f"/report?{query}").status_code == 422


def test_a_stranger_gets_nothing(device):
    assert device.client.get("/api/v1/report").status_code == 401
