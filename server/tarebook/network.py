"""Where this computer is on the home network: its private addresses, never a public one.

`ipaddress.is_private` means "not on the internet" and takes in documentation ranges; here private means what a home
router gives out: RFC 1918, RFC 3927 and RFC 4193.
"""

import socket
from collections.abc import Sequence
from ipaddress import IPv4Address, IPv4Network, IPv6Address, IPv6Network, ip_address, ip_network

Address = IPv4Address | IPv6Address

HOME_RANGES = tuple(
    ip_network(text) for text in ("10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "fc00::/7")
)
# Link-local IPv6 works only with a zone, which no browser takes in an address; loopback needs no certificate.
NEAR_RANGES = tuple(ip_network(text) for text in ("127.0.0.0/8", "::1/128", "fe80::/10"))
# Bridges to containers and virtual machines on this computer: no phone is behind them.
_INNER = ("docker", "br-", "veth", "virbr", "vmnet", "vboxnet", "lxc", "cni")


def is_home(address: Address) -> bool:
    """Whether a home router could have given this address."""
    return any(address in part for part in HOME_RANGES if part.version == address.version)


def is_near(address: Address) -> bool:
    """Whether it is in the house at all: an address of a home network, or of this computer to itself."""
    return is_home(address) or any(address in part for part in NEAR_RANGES if part.version == address.version)


def is_neighbour(address: Address) -> bool:
    """Whether it is in the house, or in a network this computer is itself in, as one of public IPv6 addresses."""
    return is_near(address) or any(address in network for network in _own_networks())


def _own_networks() -> list[IPv4Network | IPv6Network]:
    import ifaddr

    ips = [entry for adapter in ifaddr.get_adapters() for entry in adapter.ips]
    plain = [(entry.ip if isinstance(entry.ip, str) else entry.ip[0], entry.network_prefix) for entry in ips]
    return [ip_network(f"{address}/{prefix}", strict=False) for address, prefix in plain]


def private_addresses() -> list[Address]:
    """The private addresses of this computer that a phone may reach; the one packets leave by first, then by number."""
    first, found = outgoing(), _addresses(_INNER)
    return sorted(filter(is_home, found), key=lambda address: (address != first, address.version, int(address)))


def addresses_for_phones(given: Sequence[str] = ()) -> list[Address]:
    """Those the settings give, as where this runs behind another computer's ports; else `private_addresses`."""
    return [ip_address(text) for text in given] or private_addresses()


def own_addresses() -> set[Address]:
    """Every address of this computer, whatever its kind."""
    return _addresses()


def _addresses(besides: tuple[str, ...] = ()) -> set[Address]:
    import ifaddr

    adapters = [adapter for adapter in ifaddr.get_adapters() if not adapter.nice_name.startswith(besides)]
    entries = [entry.ip for adapter in adapters for entry in adapter.ips]
    return {ip_address(entry if isinstance(entry, str) else entry[0]) for entry in entries}


def outgoing() -> Address | None:
    """The address this computer uses towards its network. Nothing is sent to find it out."""
    for family, somewhere in ((socket.AF_INET, "10.255.255.255"), (socket.AF_INET6, "fdff::1")):
        try:
            with socket.socket(family, socket.SOCK_DGRAM) as probe:
                probe.connect((somewhere, 9))
                address = ip_address(probe.getsockname()[0])
        except OSError:
            continue
        if is_home(address):
            return address
    return None
