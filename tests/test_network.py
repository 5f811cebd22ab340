"""Which addresses of this computer a phone is told, and which never."""

from ipaddress import ip_address, ip_network
from types import SimpleNamespace

import pytest

from tarebook import network


def adapter(name, *addresses):
    ips = [SimpleNamespace(ip=one if "." in one else (one, 0, 0)) for one in addresses]
    return SimpleNamespace(name=name, nice_name=name, ips=ips)


@pytest.fixture
def adapters(monkeypatch):
    """Sets the network of this computer; `leaves`: the address packets leave by."""

    def place(*found, leaves=None):
        monkeypatch.setattr("ifaddr.get_adapters", lambda: found)
        monkeypatch.setattr(network, "outgoing", lambda: ip_address(leaves) if leaves else None)

    return place


def told(*given):
    return [str(one) for one in network.addresses_for_phones(given)]


def test_public_loopback_and_link_local_ipv6_addresses_are_left_out(adapters):
    adapters(
        adapter("lo", "127.0.0.1", "::1"),
        adapter("eth0", "203.0.113.9", "192.168.1.20", "2001:db8::9", "fe80::1", "fd12::5"),
        adapter("ppp0", "100.64.0.1", "169.254.3.4"),
    )
    assert told() == ["169.254.3.4", "192.168.1.20", "fd12::5"]


def test_bridges_to_containers_are_left_out(adapters):
    adapters(adapter("docker0", "172.17.0.1"), adapter("br-12ab", "172.18.0.1"), adapter("wlan0", "172.19.0.2"))
    assert told() == ["172.19.0.2"]


def test_the_one_packets_leave_by_comes_first(adapters):
    adapters(adapter("eth1", "10.0.0.2"), adapter("eth0", "192.168.1.20", "fd12::5"), leaves="192.168.1.20")
    assert told() == ["192.168.1.20", "10.0.0.2", "fd12::5"]


def test_without_a_network_there_is_none(adapters):
    adapters(adapter("lo", "127.0.0.1", "::1"))
    assert told() == []


def test_those_the_settings_give_win(adapters):
    adapters(adapter("eth0", "172.17.0.2"))
    assert told("192.168.1.20", "fd12::5") == ["192.168.1.20", "fd12::5"]


def test_every_address_of_this_computer_is_known_as_its_own():
    assert {ip_address("127.0.0.1")} <= network.own_addresses()


@pytest.mark.parametrize(
    ("address", "is_home", "is_near"),
    [
        ("192.168.0.1", True, True),
        ("172.31.255.255", True, True),
        ("172.32.0.0", False, False),
        ("10.255.255.255", True, True),
        ("11.0.0.0", False, False),
        ("fdff:ffff::1", True, True),
        ("fe80::1", False, True),
        ("127.0.0.1", False, True),
        ("::1", False, True),
        ("192.0.2.1", False, False),
        ("100.64.0.1", False, False),
    ],
)
def test_private_is_what_home_routers_give_out(address, is_home, is_near):
    """RFC 1918, 3927, 4193."""
    assert (network.is_home(ip_address(address)), network.is_near(ip_address(address))) == (is_home, is_near)


@pytest.mark.parametrize(
    ("address", "is_one"),
    [("192.168.1.20", True), ("fe80::1", True), ("127.0.0.1", True), ("203.0.113.9", False), ("2001:db8:9::1", False),
     ("2001:db8:7::20", True)],
)  # fmt: skip
def test_a_neighbour_is_in_the_house_or_in_a_network_this_computer_is_in(monkeypatch, address, is_one):
    monkeypatch.setattr(network, "_own_networks", lambda: [ip_network("2001:db8:7::/64")])
    assert network.is_neighbour(ip_address(address)) is is_one


def test_this_computers_own_networks_hold_its_own_addresses():
    held = network._own_networks()
    assert all(any(address in one for one in held) for address in network.own_addresses())
