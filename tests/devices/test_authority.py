"""The authority: what stands in it, and what OpenSSL lets it vouch for."""

import os
import stat
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID

from tarebook.devices import authority
from tarebook.errors import TarebookError
from tarebook.network import HOME_RANGES, NEAR_RANGES
from tests.devices.openssl import forged, openssl, verified

NAME = "tarebook.local"
NOW = datetime(2027, 3, 1, 12, tzinfo=UTC)
HOME = [ip_address("192.168.1.20"), ip_address("10.1.2.3"), ip_address("fd12::5")]


def made(folder, name=NAME, now=None):
    return authority.make(folder, name, now)


def code_of(call, *given):
    with pytest.raises(TarebookError) as refusal:
        call(*given)
    return refusal.value.code


def test_it_is_what_phones_expect_of_an_authority(tmp_path):
    """By OpenSSL's own reading."""
    made(tmp_path)
    _, text = openssl("x509", "-in", tmp_path / "authority.pem", "-noout", "-text")
    for part in (
        "NIST CURVE: P-256",
        "X509v3 Basic Constraints: critical\n                CA:TRUE, pathlen:0",
        "X509v3 Key Usage: critical\n                Certificate Sign, CRL Sign",
        "X509v3 Extended Key Usage: \n                TLS Web Server Authentication",
        "X509v3 Name Constraints: critical\n                Permitted:\n                  DNS:tarebook.local\n",
    ):
        assert part in text
    assert "Excluded" not in text


def test_it_may_vouch_for_the_name_and_the_ranges_of_home_networks_only(tmp_path):
    """RFC 1918, 3927, 4193, 4291."""
    constraints = made(tmp_path).certificate.extensions.get_extension_for_class(x509.NameConstraints)
    assert constraints.critical
    assert [str(item.value) for item in constraints.value.permitted_subtrees] == [
        NAME, "10.0.0.0/8", "172.16.0.0/12", "192.168.0.0/16", "169.254.0.0/16", "fc00::/7",
        "127.0.0.0/8", "::1/128", "fe80::/10",
    ]  # fmt: skip
    assert not [part for part in (*HOME_RANGES, *NEAR_RANGES) if part.is_global]


def test_openssl_takes_a_certificate_for_the_name_and_private_addresses(tmp_path):
    path = forged(made(tmp_path), [NAME], tmp_path, ["192.168.1.20", "172.31.255.1", "fd12::5", "fe80::1", "127.0.0.1"])
    assert verified(tmp_path / "authority.pem", path, hostname=NAME) == ""
    assert verified(tmp_path / "authority.pem", path, ip="172.31.255.1") == ""


@pytest.mark.parametrize(
    ("names", "addresses"),
    [
        (["example.org"], []),
        ([NAME, "example.org"], []),
        (["local"], []),
        (["nottarebook.local"], []),
        ([NAME], ["8.8.8.8"]),
        ([NAME], ["192.168.1.20", "192.0.2.1"]),
        ([NAME], ["172.32.0.1"]),
        ([NAME], ["2001:db8::1"]),
    ],
)
def test_openssl_refuses_whatever_else_is_signed_with_its_key(tmp_path, names, addresses):
    """One name or address outside spoils the whole certificate."""
    path = forged(made(tmp_path), names, tmp_path, addresses)
    assert "permitted subtree violation" in verified(tmp_path / "authority.pem", path)


def test_openssl_refuses_another_authority_under_it_and_uses_other_than_web_servers(tmp_path):
    held = made(tmp_path)
    assert "path length constraint exceeded" in _verified_under(held, tmp_path)
    code, said = openssl(
        "verify", "-purpose", "smimesign", "-CAfile", tmp_path / "authority.pem",
        forged(held, [NAME], tmp_path, usage=ExtendedKeyUsageOID.EMAIL_PROTECTION),
    )  # fmt: skip
    assert (code, "unsuitable certificate purpose" in said) == (2, True)


def _verified_under(held, folder):
    """OpenSSL's complaint about a certificate of an authority that ours has signed."""
    under = forged(held, [NAME], folder, ca=True).rename(folder / "under.pem")
    certificate = x509.load_pem_x509_certificate(under.read_bytes())
    key = serialization.load_pem_private_key(under.read_bytes(), None)
    assert isinstance(key, ec.EllipticCurvePrivateKey)
    leaf = forged(authority.Authority(certificate, key), [NAME], folder)
    return openssl("verify", "-CAfile", folder / "authority.pem", "-untrusted", under, leaf)[1]


def test_where_the_name_is_an_address_no_host_name_can_be_vouched_for(tmp_path):
    held = made(tmp_path, "192.168.1.20")
    assert held.names == ["192.168.1.20"]
    assert "permitted subtree violation" in verified(
        tmp_path / "authority.pem", forged(held, ["example.org"], tmp_path)
    )
    path = forged(held, [], tmp_path, ["192.168.1.20"])
    assert verified(tmp_path / "authority.pem", path, ip="192.168.1.20") == ""


def test_it_signs_for_its_own_name_only(tmp_path):
    held, key = made(tmp_path), ec.generate_private_key(ec.SECP256R1()).public_key()
    assert code_of(held.sign, key, "example.org", HOME, datetime.now(UTC)) == "outside_authority"


def test_only_the_owner_can_read_its_key(tmp_path):
    old = os.umask(0)
    try:
        made(tmp_path / "certificates")
    finally:
        os.umask(old)
    modes = {path.name: stat.S_IMODE(path.stat().st_mode) for path in (tmp_path / "certificates").iterdir()}
    assert modes == {"authority.pem": 0o644, "authority-key.pem": 0o600}
    assert stat.S_IMODE((tmp_path / "certificates").stat().st_mode) == 0o700


@pytest.mark.parametrize("mode", [0o640, 0o604, 0o644])
def test_a_key_that_others_can_read_is_not_used(tmp_path, mode):
    made(tmp_path)
    (tmp_path / "authority-key.pem").chmod(mode)
    assert code_of(authority.load, tmp_path) == "authority_exposed"


def test_it_is_made_once_and_found_again(tmp_path):
    first, is_new = authority.load_or_make(tmp_path, NAME)
    second, is_new_again = authority.load_or_make(tmp_path, NAME)
    assert (is_new, is_new_again) == (True, False)
    assert first.certificate == second.certificate
    assert authority.fingerprint(first.certificate) == authority.fingerprint(second.certificate)


def test_the_fingerprint_is_the_one_openssl_prints(tmp_path):
    held = made(tmp_path)
    _, said = openssl("x509", "-in", tmp_path / "authority.pem", "-noout", "-fingerprint", "-sha256")
    assert said.strip().partition("=")[2] == authority.fingerprint(held.certificate)


@pytest.mark.parametrize(
    ("name", "now", "code"),
    [
        ("another.local", NOW, "outside_authority"),
        (NAME, NOW + timedelta(days=3650), "authority_expired"),
        (NAME, NOW - timedelta(days=2), "authority_not_yet"),
        (NAME, datetime(1970, 1, 1, tzinfo=UTC), "authority_not_yet"),
    ],
)
def test_one_for_another_name_or_another_time_is_refused(tmp_path, name, now, code):
    made(tmp_path, now=NOW)
    assert code_of(authority.load_or_make, tmp_path, name, now) == code


@pytest.mark.parametrize(
    ("file", "content"), [("authority.pem", b"nothing"), ("authority-key.pem", b"nothing"), ("authority-key.pem", None)]
)
def test_a_damaged_one_is_a_refusal(tmp_path, file, content):
    made(tmp_path)
    (tmp_path / file).unlink()
    if content is not None:
        (tmp_path / file).write_bytes(content)
        (tmp_path / file).chmod(0o600)
    assert code_of(authority.load, tmp_path) == "authority_damaged"


def test_a_key_of_another_authority_is_a_refusal(tmp_path):
    made(tmp_path)
    made(tmp_path / "other")
    (tmp_path / "other" / "authority-key.pem").rename(tmp_path / "authority-key.pem")
    assert code_of(authority.load, tmp_path) == "authority_damaged"


def test_where_there_is_none_it_says_so(tmp_path):
    assert code_of(authority.load, tmp_path) == "authority_missing"
