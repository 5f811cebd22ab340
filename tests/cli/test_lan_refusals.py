"""What keeps `tarebook serve --lan` from starting is one sentence, and nothing is kept of the try."""

import socket
from datetime import UTC, datetime

import pytest

from tarebook.devices import authority
from tarebook.settings import Settings
from tarebook.store import garages, house
from tarebook.store.migrate import prepare
from tests.browser.serving import free_port
from tests.cli.phone_side import LOOPBACK, NAME, QUIETLY, serving_phones
from tests.devices.openssl import forged


@pytest.fixture
def data(tmp_path):
    return tmp_path / "garage"


@pytest.fixture
def refused(tarebook, data, monkeypatch):
    """`refused(options…)`: the one sentence a start with these options ends in."""
    for name, value in LOOPBACK.items():
        monkeypatch.setenv(name, value)

    def start(*options, port=None):
        ended = tarebook("serve", *QUIETLY, "--lan-port", port or free_port(), "--data", data, *options)
        assert (ended.code, ended.out, ended.err.count("\n")) == (1, "", 1), ended
        return ended.err.removeprefix("tarebook: ")

    return start


@pytest.fixture
def pair(tmp_path):
    """`pair(names)`: options that name a certificate for these names, and its key."""
    held = authority.make(tmp_path / "theirs", NAME)

    def options(*names):
        file = forged(held, names, tmp_path)
        return "--cert", file, "--key", file

    return options


def kept(data):
    with prepare(Settings(data=data)).read() as session:
        return house.origin(session)


def settled(data, url="https://tarebook.local:8443", is_paired=False):
    """A garage whose address is chosen, perhaps with a device."""
    from tarebook.devices import pairing

    database = prepare(Settings(data=data))
    with database.write() as session:
        house.keep_origin(session, url)
        garage = garages.open_or_create(session).id
        if is_paired:
            pairing.admit(session, garage, "phone")
    database.close()


@pytest.fixture
def taken():
    """A port that another program listens on, on every address."""
    with socket.create_server(("0.0.0.0", 0)) as listening:
        yield listening.getsockname()[1]


def test_a_taken_port_for_phones(refused, data, taken):
    assert refused(port=taken).startswith(f"Port {taken}, where phones look for Tarebook, is taken by another program.")
    assert kept(data) is None
    assert not (data / "certificates").exists()


def test_a_taken_port_for_the_door(refused, data, taken):
    words = refused("--door-port", taken)
    assert (
        words
        == f"Port {taken} is taken by another program. Stop that program, or choose another port with --door-port.\n"
    )
    assert kept(data) is None
    assert not (data / "certificates").exists()


def test_a_port_this_user_may_not_open(refused, monkeypatch):
    def forbid(*_given, **_more):
        raise PermissionError(13, "Permission denied")

    listen = socket.create_server
    monkeypatch.setattr(
        "socket.create_server", lambda where, **more: (forbid if where[1] == 443 else listen)(where, **more)
    )
    assert refused(port=443) == "This user may not open port 443. Choose one above 1023 with --lan-port.\n"


def test_no_network(refused, data, monkeypatch):
    monkeypatch.delenv("TAREBOOK_LAN_ADDRESSES")
    monkeypatch.setattr("tarebook.network.private_addresses", list)
    assert refused().startswith("This computer is on no home network: it has no private address. Connect it")
    assert kept(data) is None


@pytest.mark.parametrize("addresses", ["8.8.8.8", "127.0.0.1,2001:db8::1", "here"])
def test_addresses_of_the_settings_that_are_no_home_addresses(refused, monkeypatch, addresses):
    monkeypatch.setenv("TAREBOOK_LAN_ADDRESSES", addresses)
    assert refused().startswith(f"The setting TAREBOOK_LAN_ADDRESSES is {addresses}, which cannot be used")


@pytest.mark.parametrize("year", [1970, 2080])
def test_a_clock_that_cannot_be_right(refused, data, monkeypatch, year):
    set_clock(monkeypatch, year)
    assert refused().startswith(f"This computer's clock says {year}-01-01, which cannot be. Set its date and time.")
    assert not (data / "certificates").exists()


def set_clock(monkeypatch, year):
    class Clock(datetime):
        @classmethod
        def now(cls, tz=None):
            return datetime(year, 1, 1, tzinfo=UTC)

    for module in ("tarebook.cli.lan", "tarebook.devices.authority", "tarebook.devices.live_tls"):
        monkeypatch.setattr(f"{module}.datetime", Clock)


@pytest.mark.parametrize(("year", "words"), [(2040, "The authority ended on "), (2026, "The authority begins on ")])
def test_a_clock_years_off_from_the_authority(refused, data, monkeypatch, year, words):
    settled(data)
    authority.make(data / "certificates", NAME, datetime(2028, 6, 1, tzinfo=UTC))
    monkeypatch.setattr("tarebook.devices.certificates.check_clock", lambda now: None)
    set_clock(monkeypatch, year)
    said = refused()
    assert said.startswith(words)
    assert f"this computer's clock says {year}-01-01." in said
    assert "Set the clock, if that is what is wrong" in said


@pytest.mark.parametrize("name", ["tarebook", "8.8.8.8", "a b.local"])
def test_a_name_no_phone_could_find(refused, data, name):
    assert refused("--name", name).startswith(f"{name} cannot be the permanent name: ")
    assert kept(data) is None


def test_another_name_once_a_device_is_paired(refused, data):
    settled(data, is_paired=True)
    words = refused("--name", "garage.local")
    assert words.startswith("Devices are paired and https://tarebook.local:8443 is the address they know; ")
    assert "let every phone send or export its records first" in words
    assert kept(data) == "https://tarebook.local:8443"


def test_insisting_moves_it_with_a_new_authority(data):
    settled(data, is_paired=True)
    authority.make(data / "certificates", NAME)
    with serving_phones(data, "--name", "garage.local", "--move-anyway") as (_, said, port):
        assert f"https://garage.local:{port}" in said
    assert kept(data) == f"https://garage.local:{port}"
    assert authority.load(data / "certificates").names == ["garage.local"]


def test_an_authority_for_another_name(refused, data):
    port = free_port()
    settled(data, f"https://tarebook.local:{port}")
    authority.make(data / "certificates", "garage.local")
    assert refused(port=port).startswith("The authority may not vouch for tarebook.local, only for garage.local.")


def test_an_authority_whose_key_others_can_read(refused, data):
    settled(data)
    authority.make(data / "certificates", NAME)
    key = data / "certificates" / "authority-key.pem"
    key.chmod(0o644)
    assert refused() == (
        f"The authority's key {key} can be read by others on this computer. "
        "Run chmod 600 on it. If somebody else may have read it, run tarebook authority --new instead.\n"
    )


def test_a_certificate_of_the_users_own_for_another_name(refused, pair, data):
    assert " is for other.example.net, not for tarebook.local." in refused(*pair("other.example.net"))
    assert kept(data) is None


def test_a_key_of_another_certificate(refused, pair, data):
    cert = pair(NAME)[1]
    cert = cert.rename(cert.with_name("before.pem"))
    key = pair(NAME)[3]
    assert refused("--cert", cert, "--key", key).startswith(
        f"The key in {key} does not belong to the certificate in {cert}."
    )
    assert kept(data) is None


def test_a_certificate_without_its_key_and_the_reverse(refused, pair):
    for options in (pair(NAME)[:2], pair(NAME)[2:]):
        assert refused(*options).startswith("A certificate and its key belong together; only one of them was named.")


def test_a_certificate_that_is_not_there(refused, tmp_path):
    options = "--cert", tmp_path / "none.pem", "--key", tmp_path / "none.pem"
    assert refused(*options).startswith(f"The file {tmp_path / 'none.pem'} cannot be used: No such file or directory.")


def test_a_garage_that_is_thrown_away_has_no_phones(tarebook):
    ended = tarebook("serve", "--demo", "--lan")
    assert (ended.code, "not allowed with argument" in ended.err) == (2, True)
