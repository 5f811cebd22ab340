"""`tarebook serve --lan` on loopback alone, and what comes to it from a phone: TLS by name, trusted or not."""

import socket
import ssl
from contextlib import contextmanager
from http.client import HTTPResponse

from cryptography import x509

from tests.browser.serving import free_port
from tests.cli.process import serving

NAME = "tarebook.local"
# Everything stays on this computer: no multicast, and the address phones are told is loopback.
LOOPBACK = {"TAREBOOK_LAN_ADDRESSES": "127.0.0.1"}
QUIETLY = ("--lan", "--no-announce", "--no-browser", "--port", 0, "--door-port", 0)


@contextmanager
def serving_phones(folder, *more, port=None, **env):
    """(process, its words, the port for phones) of a server for phones."""
    number = port or free_port()
    options = (*QUIETLY, "--lan-port", number, "--data", folder, *more)
    with serving(*options, **{**LOOPBACK, **env}) as (process, said):
        yield process, said, number


class Phone:
    """One connection to the port for phones. `trusts`: the authority's file; None trusts what this computer trusts."""

    def __init__(self, port, trusts, name=NAME):
        context = ssl.create_default_context(cafile=str(trusts) if trusts else None)
        plain = socket.create_connection(("127.0.0.1", port), timeout=30)
        try:
            self.socket = context.wrap_socket(plain, server_hostname=name)
        except ssl.SSLError:
            plain.close()
            raise
        self.name = name

    @property
    def shown(self):
        """The server's certificate."""
        return x509.load_der_x509_certificate(self.socket.getpeercert(binary_form=True))

    def get(self, path, host=None):
        """(status, headers, body); the connection stays open."""
        self.socket.sendall(f"GET {path} HTTP/1.1\r\nHost: {host or self.name}\r\n\r\n".encode())
        answer = HTTPResponse(self.socket)
        answer.begin()
        return answer.status, answer.headers, answer.read()

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.socket.close()
