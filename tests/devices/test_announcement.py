"""The name is found by multicast DNS, on the loopback interface; what goes wrong is a sentence."""

import secrets
from ipaddress import ip_address

import pytest
from zeroconf import AddressResolver, ServiceBrowser, Zeroconf  # type: ignore[attr-defined]

from tarebook.devices.announcement import Announcement, can_announce
from tarebook.devices.origin import Origin

HERE = ["127.0.0.1"]
LABEL = f"garage-{secrets.token_hex(4)}"  # other tests may run on this machine at the same time
NAME = f"{LABEL}.local"
FIRST, SECOND = ip_address("192.168.77.20"), ip_address("192.168.77.21")


@pytest.fixture
def make():
    """`make(name)`: an announcement that is taken back at the end."""
    made = []

    def announcement(name=NAME):
        made.append(Announcement(Origin(name, 8443), HERE))
        return made[-1]

    yield announcement
    for one in made:
        one.close()


def found(name=NAME):
    """The addresses that another program on this network gets for the name."""
    asking = Zeroconf(interfaces=HERE)
    try:
        answer = AddressResolver(f"{name}.")
        answer.request(asking, 3000)
        return answer.parsed_addresses()
    finally:
        asking.close()


def test_another_program_finds_the_name_with_its_addresses(make):
    assert make().tell([FIRST, SECOND]) == f"{NAME} is announced on this network."
    assert sorted(found()) == [str(FIRST), str(SECOND)]


def test_other_addresses_take_the_place_of_those_before(make):
    announcement = make()
    announcement.tell([FIRST])
    announcement.tell([SECOND])
    assert found() == [str(SECOND)]


def test_it_is_taken_back_at_the_end(make):
    announcement = make()
    announcement.tell([FIRST])
    announcement.close()
    assert found() == []


def test_a_name_that_another_computer_has_is_left_to_it(make):
    make().tell([FIRST])
    assert make().tell([SECOND]) == (
        f"{NAME} is not announced: {FIRST} on this network already calls itself that. Stop the other one."
    )
    assert found() == [str(FIRST)]


def test_it_can_be_browsed_for_as_a_web_server(make):
    make().tell([FIRST])
    asking, names = Zeroconf(interfaces=HERE), []

    def note(zeroconf, service_type, name, state_change):
        names.append(name)

    ServiceBrowser(asking, "_https._tcp.local.", handlers=[note])
    info = asking.get_service_info("_https._tcp.local.", f"{LABEL}._https._tcp.local.", 3000)
    asking.close()
    assert (info.port, info.server) == (8443, f"{NAME}.")


@pytest.mark.parametrize(
    ("name", "is_so"), [("tarebook.local", True), ("garage.example.net", False), ("192.168.1.20", False)]
)
def test_only_a_local_name_can_be_announced(name, is_so):
    """RFC 6762, 3."""
    assert can_announce(name) == is_so


def test_a_network_without_multicast_is_a_sentence(make, monkeypatch):
    def fail(*_given, **_more):
        raise OSError(101, "Network is unreachable")

    monkeypatch.setattr("zeroconf.Zeroconf.__init__", fail)
    assert make().tell([FIRST]).startswith(f"{NAME} cannot be announced here: ")
