"""Addresses that are none: at every entrance a sentence of the table, never a blank or another program's page."""

import html
import json
import re
import socket
import ssl
from http.client import HTTPResponse

import pytest

from tarebook.api.answers import HEADERS
from tarebook.errors import ERRORS
from tests.cli.phone_side import NAME, serving_phones

ADDRESSES = {
    "not UTF-8": b"/%ff",
    "NUL": b"/%00",
    "overlong": b"/%c0%ae%c0%ae/",
    "half a pair": b"/%ed%a0%80",
    "raw bytes": b"/\xff\xfe",
    "raw NUL": b"/a\x00b",
    "raw space": b"/a b",
    "no escape": b"/%zz",
    "absolute": b"http://localhost/nowhere",
    "absolute elsewhere": b"http://elsewhere.example/nowhere",
    "absolute and broken": b"http://[::1",
    "two slashes": b"//elsewhere.example/nowhere",
    "dots": b"/../../etc/passwd",
    "star": b"*",
    "no slash": b"nowhere",
    "nothing": b"",
    "long": b"/" + b"a" * 5_000,
    "longer": b"/" + b"a" * 40_000,
}
OF_THE_API = {
    "not UTF-8": b"/api/v1/%ff",
    "NUL": b"/api/v1/photos/%00",
    "raw bytes": b"/api/v1/\xff",
    "dots": b"/api/v1/../../etc",
    "absolute": b"http://localhost/api/v1/nowhere",
    "two slashes": b"/api/v1//health",
    "long": b"/api/v1/" + b"a" * 5_000,
    "longer": b"/api/v1/" + b"a" * 40_000,
}
PROXIED = b"X-Forwarded-For: 203.0.113.9\r\n"


@pytest.fixture(scope="module")
def ports(tmp_path_factory):
    """Entrance -> (port, the name it is asked under, further header lines, whether it speaks TLS)."""
    with serving_phones(tmp_path_factory.mktemp("addresses") / "garage") as (process, said, lan):
        home = int(re.search(r"http://localhost:(\d+)/", said)[1])
        door = int(re.search(r"open http://127\.0\.0\.1:(\d+)/ on it", said)[1])
        yield {
            "home": (home, b"localhost", b"", False),
            "proxied": (home, b"localhost", PROXIED, False),
            "lan": (lan, NAME.encode(), b"", True),
            "door": (door, b"127.0.0.1", b"", False),
        }
        process.terminate()
        assert "Traceback" not in process.communicate()[1]


def asked(ports, entrance, address):
    """(status, headers, text) of what a browser hears that goes there."""
    port, name, more, tls = ports[entrance]
    line = socket.create_connection(("127.0.0.1", port), timeout=30)
    if tls:
        context = ssl.create_default_context()
        context.check_hostname, context.verify_mode = False, ssl.CERT_NONE
        line = context.wrap_socket(line, server_hostname=NAME)
    with line:
        line.sendall(b"GET %b HTTP/1.1\r\nHost: %b\r\nAccept: text/html,*/*\r\n%b\r\n" % (address, name, more))
        answer = HTTPResponse(line)
        answer.begin()
        return answer.status, answer.headers, answer.read().decode("utf-8")


@pytest.mark.parametrize("entrance", ["home", "proxied", "lan", "door"])
@pytest.mark.parametrize("address", ADDRESSES.values(), ids=ADDRESSES)
def test_a_browser_is_shown_a_sentence_with_the_look_of_the_app(ports, entrance, address):
    status, headers, text = asked(ports, entrance, address)
    assert 400 <= status < 500
    assert headers["Content-Type"] == "text/html; charset=utf-8"
    assert html.unescape(re.search("<h1>(.*)</h1>", text)[1]) in {row.sentence for row in ERRORS.values()}
    assert headers["Content-Security-Policy"]
    (style,) = re.findall('<link rel="stylesheet" href="([^"]+)">', text)
    status, headers, _ = asked(ports, entrance, style.encode())
    assert (status, headers["Content-Type"]) == (200, "text/css; charset=utf-8")


@pytest.mark.parametrize("entrance", ["home", "proxied", "lan"])
@pytest.mark.parametrize("address", OF_THE_API.values(), ids=OF_THE_API)
def test_the_api_answers_with_json(ports, entrance, address):
    status, headers, text = asked(ports, entrance, address)
    assert 400 <= status < 500
    assert json.loads(text)["error"]["code"] in ERRORS
    assert HEADERS.items() <= dict(headers).items()
