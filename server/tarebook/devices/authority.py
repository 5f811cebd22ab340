"""A certificate authority of this house, which can vouch for nothing else.

A phone trusts a server when somebody it trusts vouches for the server's name. Without a name of one's own on the
internet that somebody has to be made: a key that never leaves this computer, and a certificate that people install on
their phones. Installing one is a serious thing to ask, so the certificate itself says what it may vouch for (RFC 5280,
4.2.1.10, critical name constraints): the permanent name and private addresses, for web servers only.
"""

import os
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from ipaddress import ip_network
from pathlib import Path
from typing import Any

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from tarebook.devices.origin import as_address
from tarebook.errors import TarebookError
from tarebook.network import HOME_RANGES, NEAR_RANGES, Address
from tarebook.store.files import write_whole

CERTIFICATE, KEY = "authority.pem", "authority-key.pem"
_GOOD_FOR = timedelta(days=3650)
# A phone's clock may be somewhat behind; a certificate from its future would not be believed.
BACKDATED = timedelta(days=1)
LEAF_DAYS = 397  # the longest that phones accept of any authority

# Where the permanent name is an address, no host name may be vouched for. Leaving host names out of the constraints
# would allow all of them, so one is named that RFC 6761 keeps from ever being looked up.
_NO_NAME = "tarebook.invalid"

_WEB_SERVER = x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH])
_KEY_USES = (
    "digital_signature", "content_commitment", "key_encipherment", "data_encipherment", "key_agreement",
    "key_cert_sign", "crl_sign", "encipher_only", "decipher_only",
)  # fmt: skip


@dataclass(frozen=True)
class Authority:
    """A certificate and its key, as they lie in a folder."""

    certificate: x509.Certificate
    key: ec.EllipticCurvePrivateKey

    @property
    def names(self) -> list[str]:
        """The host name, or the address, it may vouch for besides all private addresses."""
        return vouched_names(self.certificate)

    def sign(
        self, public_key: ec.EllipticCurvePublicKey, name: str, addresses: Sequence[Address], now: datetime
    ) -> x509.Certificate:
        """A server's certificate for the permanent name and these addresses. Raises `outside_authority`."""
        self.check(name, now)
        begins = now - BACKDATED
        ends = min(begins + timedelta(days=LEAF_DAYS), self.certificate.not_valid_after_utc)
        builder = _begun(f"Tarebook at {name}", public_key, self.certificate.subject, begins, ends)
        for extension, is_critical in (
            (x509.BasicConstraints(ca=False, path_length=None), True),
            (_uses("digital_signature"), True),
            (_WEB_SERVER, False),
            (_subject_names(name, addresses), False),
            (x509.AuthorityKeyIdentifier.from_issuer_public_key(self.key.public_key()), False),
        ):
            builder = builder.add_extension(extension, is_critical)
        return builder.sign(self.key, hashes.SHA256())

    def check(self, name: str, now: datetime) -> None:
        """Raises `outside_authority`, `authority_expired` or `authority_not_yet`."""
        if name not in self.names:
            raise TarebookError("outside_authority", name=name, allowed=", ".join(self.names))
        since, until = self.certificate.not_valid_before_utc, self.certificate.not_valid_after_utc
        if now >= until:
            raise TarebookError("authority_expired", until=day(until), now=day(now))
        if now < since:
            raise TarebookError("authority_not_yet", since=day(since), now=day(now))


def make(folder: Path, name: str, now: datetime | None = None) -> Authority:
    """A new authority for the permanent name, in the folder; an older one there is gone with its key."""
    now = now or datetime.now(UTC)
    key = ec.generate_private_key(ec.SECP256R1())
    subject = _subject(f"Tarebook authority for {name}, {day(now)}")
    builder = _begun(subject, key.public_key(), subject, now - BACKDATED, now - BACKDATED + _GOOD_FOR)
    for extension, is_critical in (
        (x509.BasicConstraints(ca=True, path_length=0), True),
        (_uses("key_cert_sign", "crl_sign"), True),
        (_WEB_SERVER, False),
        (_constraints(name), True),
    ):
        builder = builder.add_extension(extension, is_critical)
    authority = Authority(builder.sign(key, hashes.SHA256()), key)
    keep(folder, authority)
    return authority


def load(folder: Path) -> Authority:
    """The authority of the folder. Raises `authority_missing`, `authority_exposed` or `authority_damaged`."""
    certificate = load_certificate(folder)
    _refuse_exposed(folder / KEY)
    try:
        key = serialization.load_pem_private_key((folder / KEY).read_bytes(), None)
    except (OSError, ValueError, TypeError) as problem:
        raise TarebookError("authority_damaged", folder=str(folder), reason=_first_line(problem)) from problem
    if not isinstance(key, ec.EllipticCurvePrivateKey) or key.public_key() != certificate.public_key():
        raise TarebookError("authority_damaged", folder=str(folder), reason="its key belongs to another one")
    return Authority(certificate, key)


def load_certificate(folder: Path) -> x509.Certificate:
    """The public half alone. Raises `authority_missing` or `authority_damaged`."""
    try:
        return x509.load_pem_x509_certificate((folder / CERTIFICATE).read_bytes())
    except FileNotFoundError as problem:
        raise TarebookError("authority_missing", folder=str(folder)) from problem
    except (OSError, ValueError) as problem:
        raise TarebookError("authority_damaged", folder=str(folder), reason=_first_line(problem)) from problem


def load_or_make(folder: Path, name: str, now: datetime | None = None) -> tuple[Authority, bool]:
    """(the authority, whether it is new). Raises what `load` and `check` raise."""
    if not (folder / CERTIFICATE).exists():
        return make(folder, name, now), True
    authority = load(folder)
    authority.check(name, now or datetime.now(UTC))
    return authority, False


def fingerprint(certificate: x509.Certificate) -> str:
    """SHA-256 as phones show it: pairs of capital hexadecimal digits with colons."""
    return certificate.fingerprint(hashes.SHA256()).hex(":").upper()


def vouched_names(certificate: x509.Certificate) -> list[str]:
    """What stands in the constraints besides the ranges of home networks."""
    permitted = certificate.extensions.get_extension_for_class(x509.NameConstraints).value.permitted_subtrees or []
    values = [item.value for item in permitted if item.value != _NO_NAME and item.value not in _RANGES]
    return [str(value.network_address) if not isinstance(value, str) else value for value in values]


def day(moment: datetime) -> str:
    return moment.strftime("%Y-%m-%d")


_RANGES = (*HOME_RANGES, *NEAR_RANGES)


def _constraints(name: str) -> x509.NameConstraints:
    address = as_address(name)
    # Host names begin the list in either case: a kind of name that is not listed at all is not constrained.
    names = [x509.DNSName(_NO_NAME), x509.IPAddress(ip_network(address))] if address else [x509.DNSName(name)]
    return x509.NameConstraints([*names, *map(x509.IPAddress, _RANGES)], None)


def _subject_names(name: str, addresses: Sequence[Address]) -> x509.SubjectAlternativeName:
    """One address outside the constraints would spoil the whole certificate; `network` gives only private ones."""
    own = as_address(name)
    named = [] if own else [x509.DNSName(name)]
    distinct = dict.fromkeys([own, *addresses] if own else addresses)
    return x509.SubjectAlternativeName([*named, *map(x509.IPAddress, distinct)])


def _begun(
    subject: x509.Name | str, key: ec.EllipticCurvePublicKey, issuer: x509.Name, begins: datetime, ends: datetime
) -> x509.CertificateBuilder:
    return (
        x509.CertificateBuilder()
        .subject_name(_subject(subject) if isinstance(subject, str) else subject)
        .issuer_name(issuer)
        .public_key(key)
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins)
        .not_valid_after(ends)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key), False)
    )


def _subject(text: str) -> x509.Name:
    """A common name with a space in it, so that no program takes it for one more host name."""
    return x509.Name(
        [x509.NameAttribute(NameOID.ORGANIZATION_NAME, "Tarebook"), x509.NameAttribute(NameOID.COMMON_NAME, text[:64])]
    )


def _uses(*names: str) -> x509.KeyUsage:
    given: dict[str, Any] = {name: name in names for name in _KEY_USES}
    return x509.KeyUsage(**given)


def keep(folder: Path, authority: Authority) -> None:
    """Makes it the folder's own. The key comes first: a certificate without its key would be refused at the next start,
    the reverse is made again."""
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    write_whole(folder / KEY, private_pem(authority.key), 0o600)
    write_whole(folder / CERTIFICATE, authority.certificate.public_bytes(serialization.Encoding.PEM), 0o644)


def private_pem(key: ec.EllipticCurvePrivateKey) -> bytes:
    form = serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    return key.private_bytes(serialization.Encoding.PEM, *form)


def _refuse_exposed(file: Path) -> None:
    if sys.platform != "win32" and file.exists() and os.stat(file).st_mode & 0o077:
        raise TarebookError("authority_exposed", file=str(file))


def _first_line(problem: Exception) -> str:
    return str(problem).splitlines()[0] if str(problem) else type(problem).__name__
