"""Nobody stops the server by holding connections: home is answered, and each stranger is shown out by a deadline."""

import json
import re
import signal
import socket
import time
from http.client import HTTPResponse

import pytest

from tarebook.settings import Settings
from tests.cli.phone_side import Phone, serving_phones
from tests.cli.strangers import Stranger, health, held, kinds, plain, trusting_anybody

KINDS = list(kinds(0, 0))
IMPATIENT = (
    "import tarebook.cli.visit as v; v.TO_SHAKE_HANDS = v.FOR_A_HEAD = v.FOR_A_BODY = v.TO_TAKE_AN_ANSWER = 1; "
    "import tarebook.cli.worker as w; w.MOST = 40; w.MOST_EACH = 8"
)


def home_port(said):
    return int(re.search(r"http://localhost:(\d+)/", said)[1])


@pytest.fixture(scope="module")
def served(tmp_path_factory):
    """(port at home, port for phones, authority) of one server."""
    folder = tmp_path_factory.mktemp("strangers") / "garage"
    with serving_phones(folder) as (_, said, port):
        health(home_port(said))  # the first answer of all takes longer
        yield home_port(said), port, folder / "certificates" / "authority.pem"


@pytest.fixture(scope="module")
def impatient(tmp_path_factory):
    """The same, with deadlines of a second and room for few."""
    folder = tmp_path_factory.mktemp("impatient") / "garage"
    with serving_phones(folder, altered=IMPATIENT) as (_, said, port):
        health(home_port(said))
        yield home_port(said), port, folder / "certificates" / "authority.pem"


@pytest.mark.parametrize("kind", KINDS)
def test_home_and_phones_are_answered_while_sixteen_strangers_hold_on(served, kind):
    home, lan, authority = served
    with held(kinds(home, lan)[kind]):
        took = []
        for _ in range(10):
            took.append(health(home))
            time.sleep(0.1)
        begun = time.monotonic()
        with Phone(lan, authority) as phone:
            assert phone.get("/api/v1/health")[0] == 200
        took.append(time.monotonic() - begun)
    assert max(took) < 1


@pytest.mark.parametrize("kind", KINDS)
def test_whoever_goes_on_sending_without_an_end_is_shown_out_all_the_same(impatient, kind):
    home, lan, _ = impatient
    with held(kinds(home, lan)[kind], how_many=2, every=0.2) as them:
        deadline = time.monotonic() + 20
        while not all(one.is_shown_out() for one in them):
            assert time.monotonic() < deadline


def test_whoever_asks_and_never_takes_the_answer_holds_no_thread_and_is_shown_out(impatient):
    home, lan, _ = impatient
    largest = max(Settings().static_app.rglob("*.js"), key=lambda file: file.stat().st_size)
    path = largest.relative_to(Settings().static_app).as_posix()
    asked = f"GET /{path} HTTP/1.1\r\nHost: tarebook.local\r\n\r\n".encode() * 100
    with held(lambda: Stranger(trusting_anybody(lan, takes=4096), asked, byte=b"")) as them:
        time.sleep(2)
        assert max(health(home) for _ in range(10)) < 1
        time.sleep(2)
        assert all(one.is_shown_out() for one in them)


def test_a_caller_too_many_makes_place_by_the_one_who_waited_longest(impatient):
    _, lan, authority = impatient
    same = [socket.create_connection(("127.0.0.1", lan), source_address=("127.0.2.1", 0)) for _ in range(9)]
    other = Stranger(plain(lan), b"")
    first, second = Stranger(same[0], b""), Stranger(same[1], b"")
    assert first.is_shown_out()
    assert not second.is_shown_out()
    assert not other.is_shown_out()
    with Phone(lan, authority) as phone:
        assert phone.get("/api/v1/health")[0] == 200
    for one in (*same, other.socket):
        one.close()


def test_a_full_house_still_lets_a_phone_in(impatient):
    home, lan, authority = impatient
    with held(kinds(home, lan)["handshake"], how_many=60), Phone(lan, authority) as phone:
        assert phone.get("/api/v1/health")[0] == 200
        assert health(home) < 1


def test_whoever_is_in_no_network_of_this_computer_is_not_answered_and_that_is_said_once(tmp_path):
    outside = "import tarebook.cli.worker as w; w.is_neighbour = lambda address: False"
    with serving_phones(tmp_path / "garage", altered=outside) as (process, _, port):
        for _ in range(3):
            with plain(port) as line:
                assert line.recv(1) == b""
        process.send_signal(signal.SIGINT)
        assert process.communicate(timeout=30)[1].count("is not in this network and is not answered") == 1


def refused(port, head):
    """(status, code) of what a request is refused with, whatever of it was sent."""
    with socket.create_connection(("127.0.0.1", port), timeout=30) as line:
        line.sendall(b"POST /api/v1/pair HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n" + head)
        answer = HTTPResponse(line)
        answer.begin()
        return answer.status, json.loads(answer.read())["error"]["code"]


def test_a_body_that_does_not_say_how_long_it_is_or_is_too_long_is_refused_whole(served):
    chunked = b"Transfer-Encoding: chunked\r\n\r\n1c\r\n" + b'{"code": "a", "name": "abc"}' + b"\r\n0\r\n\r\n"
    assert refused(served[0], chunked) == (411, "length_required")
    assert refused(served[0], b"Content-Length: 30000000\r\n\r\n{") == (413, "too_large")
    assert refused(served[0], b"Content-Length: 3000000\r\n\r\n" + b" " * 3_000_000) == (413, "too_large")
