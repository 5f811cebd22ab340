"""A certificate that changes on disk is the one the next connection sees, and a bad one never is."""

import os
from datetime import UTC, datetime
from ipaddress import ip_address

import pytest

from tarebook.devices import authority, certificates
from tarebook.devices.certificates import Pair, own_pair, renew
from tarebook.devices.live_tls import LiveTls
from tarebook.errors import TarebookError
from tests.devices.openssl import forged, handshake

NAME = "garage.example.net"


@pytest.fixture
def held(tmp_path):
    return authority.make(tmp_path, NAME)


@pytest.fixture
def own(tmp_path, held):
    """Two names that lead to two files, as renewal programs keep them."""
    first = tmp_path / "first"
    first.mkdir()
    links = Pair(tmp_path / "cert.pem", tmp_path / "key.pem")
    lead_to(links, forged(held, [NAME], first))
    return links


def lead_to(links, file):
    for link in (links.cert, links.key):
        link.unlink(missing_ok=True)
        link.symlink_to(file)


def another(held, folder, *names):
    folder.mkdir()
    return forged(held, names or [NAME], folder)


def live(pair):
    said: list[str] = []
    return LiveTls(pair, NAME, said.append), said


def seen(tls, folder):
    """The serial number a client that trusts the authority sees."""
    return handshake(tls.context(), folder / "authority.pem", NAME).serial_number


def serial(file):
    return certificates.read(Pair(file, file)).serial_number


def test_a_client_that_trusts_the_authority_comes_in(tmp_path, own):
    tls, said = live(own)
    assert seen(tls, tmp_path) == serial(own.cert)
    assert said == []


def test_a_renewed_certificate_is_used_by_the_next_connection(tmp_path, own, held):
    tls, said = live(own)
    first = tls.context()
    lead_to(own, renewed := another(held, tmp_path / "second"))
    assert seen(tls, tmp_path) == serial(renewed)
    assert tls.context() is not first
    assert said == []


def test_while_nothing_changes_nothing_is_read_again(own):
    tls, _ = live(own)
    assert tls.context() is tls.context()


def test_between_certificate_and_key_the_old_pair_is_used_and_the_new_one_when_both_are_there(tmp_path, own, held):
    tls, said = live(own)
    before, renewed = seen(tls, tmp_path), another(held, tmp_path / "second")
    own.cert.unlink()
    own.cert.symlink_to(renewed)
    assert [seen(tls, tmp_path) for _ in range(3)] == [before] * 3
    assert len(said) == 1, "told once, not for every connection"
    assert "does not belong to the certificate" in said[0]
    lead_to(own, renewed)
    assert seen(tls, tmp_path) == serial(renewed)


def test_a_certificate_for_another_name_is_never_used(tmp_path, own, held):
    tls, said = live(own)
    before = seen(tls, tmp_path)
    lead_to(own, another(held, tmp_path / "second", "other.example.net"))
    assert seen(tls, tmp_path) == before
    assert said[0].startswith(f"The certificate in {own.cert} is for other.example.net, not for {NAME}.")


def test_a_file_that_is_gone_for_a_moment_stops_nobody(tmp_path, own, held):
    tls, said = live(own)
    before, renewed = seen(tls, tmp_path), another(held, tmp_path / "second")
    own.key.unlink()
    assert seen(tls, tmp_path) == before
    lead_to(own, renewed)
    assert seen(tls, tmp_path) == serial(renewed)
    assert len(said) == 1


def test_a_refused_pair_that_is_put_back_is_no_news(tmp_path, own, held):
    tls, said = live(own)
    good = os.readlink(own.cert)
    lead_to(own, another(held, tmp_path / "second", "other.example.net"))
    tls.context()
    lead_to(own, good)
    assert seen(tls, tmp_path) == serial(own.cert)
    assert len(said) == 1


def test_our_own_certificate_is_followed_when_addresses_change(tmp_path, held):
    renew(tmp_path, held, NAME, [ip_address("192.168.1.20")])
    tls, _ = live(own_pair(tmp_path))
    before = seen(tls, tmp_path)
    assert renew(tmp_path, held, NAME, [ip_address("192.168.1.21")])
    leaf = handshake(tls.context(), tmp_path / "authority.pem", "192.168.1.21")
    assert leaf.serial_number != before


def test_it_does_not_begin_with_a_pair_that_cannot_be_used(tmp_path, own, held):
    lead_to(own, another(held, tmp_path / "second", "other.example.net"))
    with pytest.raises(TarebookError) as refusal:
        live(own)
    assert refusal.value.code == "tls_name_other"


def test_only_tls_from_1_2_on_is_spoken(own):
    """RFC 8996 deprecates what came before."""
    import ssl

    tls, _ = live(own)
    assert tls.context().minimum_version == ssl.TLSVersion.TLSv1_2


def test_a_certificate_that_ends_while_serving_is_still_better_than_none(tmp_path, own, monkeypatch):
    """Phones that are open keep their records; they are told by their own browser."""
    tls, said = live(own)

    class Later(datetime):
        @classmethod
        def now(cls, tz=None):
            return datetime(2040, 1, 1, tzinfo=UTC)

    monkeypatch.setattr("tarebook.devices.live_tls.datetime", Later)
    before = tls.context()
    os.utime(own.cert)
    assert tls.context() is before
    assert "ended on" in said[0]
