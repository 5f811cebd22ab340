"""Strangers who hold a connection: with a handshake, a head or a body that never ends, byte by byte or in silence."""

import contextlib
import itertools
import socket
import ssl
import threading
import time
from contextlib import contextmanager
from http.client import HTTPConnection

# A TLS record of a handshake that claims more than will ever come.
HELLO = b"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03"
HEAD = b"POST /api/v1/pair HTTP/1.1\r\nHost: %s\r\nX-Slow: "
BODY = b"POST /api/v1/pair HTTP/1.1\r\nHost: %s\r\nContent-Type: application/json\r\nContent-Length: 9000\r\n\r\n{"
ADDRESSES = itertools.cycle(f"127.0.1.{n}" for n in range(1, 255))


def plain(port, takes=1 << 16):
    """A connection from an address of its own. `takes`: bytes that wait to be read, the rest with the server."""
    connection = socket.socket()
    connection.settimeout(30)
    connection.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, takes)
    connection.bind((next(ADDRESSES), 0))
    connection.connect(("127.0.0.1", port))
    return connection


def trusting_anybody(port, takes=1 << 16):
    context = ssl.create_default_context()
    context.check_hostname, context.verify_mode = False, ssl.CERT_NONE
    return context.wrap_socket(plain(port, takes), server_hostname="tarebook.local")


class Stranger:
    """Holds one connection. `begins`: what it sends first; then one byte each time `trickle` is called."""

    def __init__(self, connection, begins, byte=b"a"):
        self.socket, self._byte = connection, byte
        self.socket.sendall(begins)

    def trickle(self):
        with contextlib.suppress(OSError):
            self.socket.sendall(self._byte)

    def is_shown_out(self):
        """Whether the other side has hung up by now, whatever it said before."""
        self.socket.settimeout(0.05)
        try:
            while self.socket.recv(4096):
                pass
        except TimeoutError:
            return False
        except OSError:
            pass
        return True


def kinds(home, lan):
    """Ways to hold a connection: to phones' port by TLS, and to the home port as a proxy passes it on."""
    proxied = b"localhost\r\nX-Forwarded-For: 203.0.113.9"
    return {
        "nothing": lambda: Stranger(plain(lan), b""),
        "handshake": lambda: Stranger(plain(lan), HELLO),
        "head": lambda: Stranger(trusting_anybody(lan), HEAD % b"tarebook.local"),
        "body": lambda: Stranger(trusting_anybody(lan), BODY % b"tarebook.local"),
        "head at home": lambda: Stranger(plain(home), HEAD % b"localhost"),
        "proxied body": lambda: Stranger(plain(home), BODY % proxied),
    }


@contextmanager
def held(make, how_many=16, every=0.25):
    """So many strangers of one kind, each sending a byte now and then, until the end."""
    over, them = threading.Event(), [make() for _ in range(how_many)]

    def go_on():
        while not over.wait(every):
            for one in them:
                one.trickle()

    feeding = threading.Thread(target=go_on)
    feeding.start()
    try:
        yield them
    finally:
        over.set()
        feeding.join()
        for one in them:
            one.socket.close()


def health(port):
    """Seconds until home has said that it is there."""
    begun = time.monotonic()
    connection = HTTPConnection("127.0.0.1", port, timeout=30)
    connection.request("GET", "/api/v1/health", headers={"Host": "localhost"})
    assert connection.getresponse().read()
    connection.close()
    return time.monotonic() - begun
