"""The permanent address: chosen once, changed only by insisting, and never something no phone could find."""

import pytest

from tarebook.devices import origin
from tarebook.devices.origin import Origin
from tarebook.errors import TarebookError
from tarebook.store import house


def settle(home, name=None, port=None, move=False):
    with home.database.write() as session:
        return origin.settle(session, name, port, move).url


def kept(home):
    with home.database.read() as session:
        return house.origin(session)


def refusal_of(call, *given, **more):
    with pytest.raises(TarebookError) as refusal:
        call(*given, **more)
    return refusal.value


def test_the_first_start_chooses_it_and_later_ones_find_it(home):
    assert settle(home) == "https://tarebook.local:8443"
    assert (settle(home), kept(home)) == ("https://tarebook.local:8443",) * 2


def test_a_name_and_port_given_once_are_kept(home):
    settle(home, "Garage.Example.net.", 443)
    assert settle(home) == "https://garage.example.net"
    assert settle(home, "garage.example.net", 443) == "https://garage.example.net"


def test_before_anything_is_paired_another_may_be_chosen(home):
    settle(home)
    assert settle(home, "garage.local", 9443) == "https://garage.local:9443"


@pytest.mark.parametrize(("name", "port"), [("garage.local", None), (None, 9443)])
def test_once_a_device_is_paired_another_is_refused_and_the_old_one_stays(home, name, port):
    settle(home)
    home.pair()
    refusal = refusal_of(settle, home, name, port)
    assert refusal.code == "origin_kept"
    assert "https://tarebook.local:8443 is the address they know" in refusal.sentence
    assert "--move-anyway" in refusal.do
    assert kept(home) == "https://tarebook.local:8443"


def test_asking_for_the_kept_one_by_name_is_no_change(home):
    settle(home)
    home.pair()
    assert settle(home, "TAREBOOK.local", 8443) == "https://tarebook.local:8443"


def test_insisting_changes_it(home):
    settle(home)
    home.pair()
    assert settle(home, "garage.local", move=True) == "https://garage.local:8443"
    assert kept(home) == "https://garage.local:8443"


def test_devices_that_were_all_taken_off_hold_it_no_longer(home):
    settle(home)
    phone = home.pair()
    home.pair("other").post(f"/devices/{phone.id}/revoke")
    assert refusal_of(settle, home, "garage.local").code == "origin_kept"
    with home.database.write() as session:
        session.connection().exec_driver_sql("UPDATE device SET revoked_at = '2026-12-01T00:00:00.000+00:00'")
    assert settle(home, "garage.local") == "https://garage.local:8443"


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("tarebook.local", "tarebook.local"),
        (" Tarebook.Local. ", "tarebook.local"),
        ("192.168.1.20", "192.168.1.20"),
        ("[fd12:0::5]", "fd12::5"),
        ("xn--bcher-kva.example", "xn--bcher-kva.example"),
    ],
)
def test_a_name_is_kept_in_one_spelling(typed, name):
    assert origin.usable(typed) == name


@pytest.mark.parametrize(
    "typed",
    [
        "tarebook", "localhost", "garage.localhost", "a b.local", "gar_age.local", "-x.local", "x-.local", "a..local",
        "bücher.local", "x" * 64 + ".local", "x." * 127 + "local", "8.8.8.8", "127.0.0.1", "::1", "10.0.0",
        "https://tarebook.local", "tarebook.local:8443", "*.local", ".local", "",
    ],
)  # fmt: skip
def test_what_is_no_name_for_a_home_computer_is_refused(typed):
    assert refusal_of(origin.usable, typed).code == "name_unusable"


@pytest.mark.parametrize(
    ("url", "parts"),
    [
        ("https://tarebook.local:8443", ("tarebook.local", 8443)),
        ("https://garage.example.net", ("garage.example.net", 443)),
        ("https://[fd12::5]:8443", ("fd12::5", 8443)),
    ],
)
def test_it_is_read_as_it_is_written(url, parts):
    assert Origin.of(url) == Origin(*parts)
    assert Origin(*parts).url == url
