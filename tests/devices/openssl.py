"""Asks OpenSSL, the program and the library, what it thinks of our certificates."""

import ssl
import subprocess
from datetime import timedelta
from ipaddress import ip_address

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

PEM = serialization.Encoding.PEM


def openssl(*arguments):
    """(exit code, everything it said)"""
    done = subprocess.run(["openssl", *map(str, arguments)], capture_output=True, text=True, timeout=60)
    return done.returncode, done.stdout + done.stderr


def verified(authority_file, leaf_file, **names):
    """`names`: hostname or ip, as a browser would ask for. Empty when it is good, else OpenSSL's complaint."""
    asked = [word for kind, name in names.items() for word in (f"-verify_{kind}", name)]
    code, said = openssl(
        "verify", "-x509_strict", "-purpose", "sslserver", "-CAfile", authority_file, *asked, leaf_file
    )
    return "" if code == 0 else said


def forged(authority, names, folder, addresses=(), usage=ExtendedKeyUsageOID.SERVER_AUTH, ca=False):
    """A certificate that someone with the authority's key has signed for other names; path of its file."""
    key = ec.generate_private_key(ec.SECP256R1())
    begins = authority.certificate.not_valid_before_utc
    entries = [*map(x509.DNSName, names), *(x509.IPAddress(ip_address(one)) for one in addresses)]
    builder = (
        x509.CertificateBuilder()
        .subject_name(x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "somebody else")]))
        .issuer_name(authority.certificate.subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins)
        .not_valid_after(begins + timedelta(days=300))
        .add_extension(x509.SubjectAlternativeName(entries), False)
        .add_extension(x509.BasicConstraints(ca=ca, path_length=None), True)
        .add_extension(x509.ExtendedKeyUsage([usage]), False)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), False)
        .add_extension(x509.AuthorityKeyIdentifier.from_issuer_public_key(authority.key.public_key()), False)
    )
    form = serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
    pem = builder.sign(authority.key, hashes.SHA256()).public_bytes(PEM) + key.private_bytes(PEM, *form)
    path = folder / "forged.pem"
    path.write_bytes(pem)
    return path


def handshake(server_context, authority_file, name):
    """The server's certificate as a client sees it that trusts this authority; raises `SSLCertVerificationError`."""
    client_context = ssl.create_default_context(cafile=str(authority_file))
    to_server, to_client = ssl.MemoryBIO(), ssl.MemoryBIO()
    client = client_context.wrap_bio(to_client, to_server, server_hostname=name)
    server = server_context.wrap_bio(to_server, to_client, server_side=True)
    for _ in range(4):
        for side in (client, server):
            try:
                side.do_handshake()
            except ssl.SSLWantReadError:
                continue
    return x509.load_der_x509_certificate(client.getpeercert(binary_form=True))
