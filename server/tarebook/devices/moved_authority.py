"""The authority on its way to another computer: one file, under a passphrase.

The file is PKCS#12 (RFC 7292): key and certificate, encrypted with AES-256 by a key that PBKDF2 makes from the
passphrase. The rounds are OWASP's for HMAC-SHA-256; whoever gets the file may try passphrases as long as they like.
"""

from datetime import UTC, datetime
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import PrivateFormat, pkcs12

from tarebook.devices import authority
from tarebook.devices.authority import Authority
from tarebook.errors import TarebookError
from tarebook.store.files import write_whole

LEAST_CHARACTERS = 12
_ROUNDS = 600_000


def save(held: Authority, file: Path, passphrase: str) -> None:
    """Writes the file, readable by its owner alone. Raises `passphrase_short` and `file_unwritable`."""
    if len(passphrase) < LEAST_CHARACTERS:
        raise TarebookError("passphrase_short", least=LEAST_CHARACTERS)
    encryption = (
        PrivateFormat.PKCS12.encryption_builder()
        .kdf_rounds(_ROUNDS)
        .key_cert_algorithm(pkcs12.PBES.PBESv2SHA256AndAES256CBC)
        .hmac_hash(hashes.SHA256())
        .build(passphrase.encode("utf-8"))
    )
    data = pkcs12.serialize_key_and_certificates(b"Tarebook", held.key, held.certificate, None, encryption)
    try:
        write_whole(file, data, 0o600)
    except OSError as problem:
        raise TarebookError("file_unwritable", file=str(file), reason=problem.strerror or str(problem)) from problem


def take(folder: Path, file: Path, passphrase: str) -> Authority:
    """Makes the file's authority that of the folder; an older one there is gone with its key.

    Raises `file_unreadable` and `authority_not_taken`; then nothing was changed.
    """
    held = _read(file, passphrase)
    authority.keep(folder, held)
    return held


def _read(file: Path, passphrase: str) -> Authority:
    try:
        key, certificate, _others = pkcs12.load_key_and_certificates(file.read_bytes(), passphrase.encode("utf-8"))
    except OSError as problem:
        raise TarebookError("file_unreadable", file=str(file), reason=problem.strerror or str(problem)) from problem
    except ValueError as problem:
        raise _not_taken(file, "it is another kind of file, or the passphrase is another") from problem
    if certificate is None or not isinstance(key, ec.EllipticCurvePrivateKey):
        raise _not_taken(file, "it has no certificate with its key")
    held = Authority(certificate, key)
    if key.public_key() != certificate.public_key() or not _is_authority(certificate):
        raise _not_taken(file, "its certificate is not that of an authority of Tarebook")
    if certificate.not_valid_after_utc <= datetime.now(UTC):
        raise _not_taken(file, f"it ended on {authority.day(certificate.not_valid_after_utc)}")
    return held


def _is_authority(certificate: x509.Certificate) -> bool:
    """Whether it may vouch for others, and by its own words for few."""
    try:
        basic = certificate.extensions.get_extension_for_class(x509.BasicConstraints).value
        return basic.ca and bool(authority.vouched_names(certificate))
    except (x509.ExtensionNotFound, ValueError):
        return False


def _not_taken(file: Path, reason: str) -> TarebookError:
    return TarebookError("authority_not_taken", file=str(file), reason=reason)
