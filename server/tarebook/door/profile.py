"""An Apple configuration profile that holds one certificate authority and can be removed again."""

import plistlib
import uuid

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization

TYPE = "application/x-apple-aspen-config"
_NAME = "net.invalid.tarebook"  # names the profile on the phone; nothing is ever looked up under it


def mobileconfig(certificate: x509.Certificate, name: str) -> bytes:
    """The profile as XML, unsigned. The same authority always gives the same profile, so that it replaces itself."""
    mark = certificate.fingerprint(hashes.SHA256()).hex()
    identifier = f"{_NAME}.{mark[:16]}"
    root = {
        "PayloadType": "com.apple.security.root",
        "PayloadVersion": 1,
        "PayloadIdentifier": f"{identifier}.authority",
        "PayloadUUID": _uuid(mark, "authority"),
        "PayloadDisplayName": f"Tarebook authority for {name}",
        "PayloadCertificateFileName": "tarebook-authority.crt",
        "PayloadContent": certificate.public_bytes(serialization.Encoding.DER),
    }
    profile = {
        "PayloadType": "Configuration",
        "PayloadVersion": 1,
        "PayloadIdentifier": identifier,
        "PayloadUUID": _uuid(mark, "profile"),
        "PayloadDisplayName": f"Tarebook at {name}",
        "PayloadDescription": f"Lets this device trust the home computer under {name} and private addresses. "
        "It can vouch for nothing else, and may be removed at any time.",
        "PayloadRemovalDisallowed": False,
        "PayloadContent": [root],
    }
    return plistlib.dumps(profile)


def _uuid(mark: str, part: str) -> str:
    return str(uuid.uuid5(uuid.NAMESPACE_URL, f"tarebook:{mark}:{part}")).upper()
