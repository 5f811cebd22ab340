"""The certificate the server shows to phones: one of ours, renewed by itself, or the user's own two files.

Ours is one file with key and certificate, replaced whole, so that nobody ever reads a key with another's certificate.
Either kind is checked by the same rules before a server uses it: the key fits, the name is in it, today is within it.
"""

import ssl
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.types import PrivateKeyTypes

from tarebook.devices.authority import Authority, day, private_pem
from tarebook.devices.origin import as_address
from tarebook.errors import TarebookError
from tarebook.network import Address
from tarebook.store.files import write_whole

SERVER = "server.pem"
RENEW_BEFORE = timedelta(days=30)
# Long before Tarebook, and longer than any certificate of today will matter: a clock outside is not set.
_EARLIEST, _LATEST = datetime(2026, 11, 1, tzinfo=UTC), datetime(2076, 11, 1, tzinfo=UTC)


@dataclass(frozen=True)
class Pair:
    """Where a certificate (its chain behind it) and its key lie; one file may hold both."""

    cert: Path
    key: Path


def own_pair(folder: Path) -> Pair:
    """Where ours lies."""
    return Pair(folder / SERVER, folder / SERVER)


def check_clock(now: datetime) -> None:
    """Raises `clock_wrong`: a computer without a clock of its own starts in 1970 or at its system's making."""
    if not _EARLIEST <= now <= _LATEST:
        raise TarebookError("clock_wrong", now=day(now))


def renew(
    folder: Path, authority: Authority, name: str, addresses: Sequence[Address], now: datetime | None = None
) -> str | None:
    """Makes a new certificate where one is due, and says why; None when the one there is good."""
    now = now or datetime.now(UTC)
    reason = why_due(folder / SERVER, authority, name, addresses, now)
    if reason:
        key = ec.generate_private_key(ec.SECP256R1())
        certificate = authority.sign(key.public_key(), name, addresses, now)
        pem = private_pem(key) + certificate.public_bytes(serialization.Encoding.PEM)
        write_whole(folder / SERVER, pem, 0o600)
    return reason


def why_due(file: Path, authority: Authority, name: str, addresses: Sequence[Address], now: datetime) -> str | None:
    """Why the certificate in the file should be replaced by another of this authority, in words."""
    try:
        leaf = read(Pair(file, file))
    except TarebookError:
        return "there is none that can be used"
    ends, last = leaf.not_valid_after_utc, authority.certificate.not_valid_after_utc
    reasons = {
        "there is another authority": not _is_signed_by(leaf, authority),
        "the permanent name has changed": not is_for(leaf, name),
        "the clock is outside its dates": not leaf.not_valid_before_utc <= now < ends,
        "it ends soon": ends - now < RENEW_BEFORE and ends < last,
        "this computer's addresses have changed": not _has_exactly(leaf, name, addresses),
    }
    return next((reason for reason, is_so in reasons.items() if is_so), None)


def check(pair: Pair, name: str, now: datetime) -> x509.Certificate:
    """The certificate, when a server at this name can use it now. Raises one of the `tls_…` refusals."""
    leaf = read(pair)
    cert, today = str(pair.cert), day(now)
    if not is_for(leaf, name):
        raise TarebookError("tls_name_other", cert=cert, name=name, names=", ".join(names_in(leaf)) or "no name")
    if now >= leaf.not_valid_after_utc:
        raise TarebookError("tls_expired", cert=cert, until=day(leaf.not_valid_after_utc), now=today)
    if now < leaf.not_valid_before_utc:
        raise TarebookError("tls_not_yet", cert=cert, since=day(leaf.not_valid_before_utc), now=today)
    return leaf


def read(pair: Pair) -> x509.Certificate:
    """The first certificate of the file. Raises `tls_file_unreadable`, `tls_key_locked` or `tls_key_other`."""
    leaf, key = _certificate(pair.cert), _key(pair.key)
    if key.public_key() != leaf.public_key():
        raise TarebookError("tls_key_other", cert=str(pair.cert), key=str(pair.key))
    return leaf


def tls_context(pair: Pair) -> ssl.SSLContext:
    """TLS 1.2 and 1.3 with this certificate. Raises `tls_file_unreadable` for what OpenSSL does not take."""
    context = ssl.create_default_context(ssl.Purpose.CLIENT_AUTH)
    try:
        context.load_cert_chain(pair.cert, pair.key)
    except (OSError, ssl.SSLError) as problem:
        raise TarebookError("tls_file_unreadable", file=str(pair.cert), reason=str(problem)) from problem
    return context


def names_in(certificate: x509.Certificate) -> list[str]:
    """Host names and addresses it is for. The common name does not count; no browser looks at it any more."""
    try:
        names = certificate.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    except x509.ExtensionNotFound:
        return []
    return [*names.get_values_for_type(x509.DNSName), *map(str, names.get_values_for_type(x509.IPAddress))]


def is_for(certificate: x509.Certificate, name: str) -> bool:
    """Whether it is for this name: the same, or a star in place of the first label (RFC 6125)."""
    plain = name if as_address(name) else f"*.{name.partition('.')[2]}"
    return not {name, plain}.isdisjoint(entry.lower() for entry in names_in(certificate))


def _has_exactly(leaf: x509.Certificate, name: str, addresses: Sequence[Address]) -> bool:
    return set(names_in(leaf)) == {name, *map(str, addresses)}


def _is_signed_by(leaf: x509.Certificate, authority: Authority) -> bool:
    try:
        leaf.verify_directly_issued_by(authority.certificate)
    except (ValueError, TypeError, InvalidSignature):
        return False
    return True


def _certificate(file: Path) -> x509.Certificate:
    try:
        return x509.load_pem_x509_certificates(file.read_bytes())[0]
    except (OSError, ValueError) as problem:
        raise _unreadable(file, problem, "there is no certificate in it") from problem


def _key(file: Path) -> PrivateKeyTypes:
    try:
        return serialization.load_pem_private_key(file.read_bytes(), None)
    except TypeError as problem:
        raise TarebookError("tls_key_locked", file=str(file)) from problem
    except (OSError, ValueError) as problem:
        raise _unreadable(file, problem, "there is no key in it") from problem


def _unreadable(file: Path, problem: Exception, else_reason: str) -> TarebookError:
    reason = problem.strerror if isinstance(problem, OSError) else else_reason
    return TarebookError("tls_file_unreadable", file=str(file), reason=reason or else_reason)
