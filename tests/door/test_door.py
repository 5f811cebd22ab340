"""The door page: what it gives, to whom, and what it never gives."""

import plistlib
import re
import time
from html.parser import HTMLParser
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import serialization

from tarebook import create_app
from tarebook.devices import authority
from tarebook.door import app as door_app
from tests.home import Home

FILES = ["/tarebook-authority.crt", "/tarebook-authority.pem", "/tarebook.mobileconfig"]
EVERYTHING = ["/", "/about.json", "/here", "/files/door.js", "/files/door.css", *FILES]


class Loads(HTMLParser):
    """Collects what a page refers to, and any script or style it bears itself."""

    def __init__(self, text):
        super().__init__()
        self.refers, self.pictures, self.inline, self._in = [], [], [], ""
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        given = dict(attrs)
        self.refers += [given[name] for name in ("href", "src") if given.get(name)]
        self.pictures += [given] if tag == "img" else []
        self.inline += [name for name in given if name == "style" or name.startswith("on")]
        self._in = tag

    def handle_data(self, data):
        if self._in in ("script", "style") and data.strip():
            self.inline.append(data)


def test_the_page_names_the_permanent_address_and_the_whole_fingerprint(door):
    text = door.get("/").text
    assert 'href="https://tarebook.local:8443/"' in text
    assert authority.fingerprint(door.certificate()).replace(":", " ") in text


def test_everything_the_page_refers_to_is_there(door):
    own = [target for target in Loads(door.get("/").text).refers if target.startswith("/")]
    assert {"/tarebook.mobileconfig", "/tarebook-authority.crt", "/files/door.js"} <= set(own)
    assert {target: door.get(target).status_code for target in own} == dict.fromkeys(own, 200)


def test_nothing_comes_from_elsewhere_and_nothing_is_inline(door):
    page = Loads(door.get("/").text)
    assert page.inline == []
    assert {target for target in page.refers if not target.startswith("/")} == {
        "https://tarebook.local:8443/",
    }


def test_both_kinds_of_phone_have_a_drawing_for_each_step_with_words_for_it(door):
    page = door.get("/").text
    for kind in ("iphone", "android"):
        steps = re.search(rf'<details id="{kind}">(.*?)</details>', page, re.DOTALL)[1]
        pictures = Loads(steps).pictures
        assert (len(pictures), steps.count("<li>")) == (4, 4)
        assert all(picture["alt"] for picture in pictures)
        for picture in pictures:
            drawing = door.get(picture["src"])
            assert drawing.mimetype == "image/svg+xml"
            assert not re.search(r"<script|<style|https?://(?!www\.w3\.org/2000/svg)[a-z]", drawing.text)


def test_the_certificate_comes_as_phones_and_computers_want_it(door):
    der, pem = door.get("/tarebook-authority.crt"), door.get("/tarebook-authority.pem")
    assert (der.content_type, pem.content_type) == ("application/x-x509-ca-cert", "application/x-pem-file")
    held = door.certificate()
    assert x509.load_der_x509_certificate(der.data) == x509.load_pem_x509_certificate(pem.data) == held
    assert der.headers["Content-Disposition"] == 'attachment; filename="tarebook-authority.crt"'


def test_the_profile_holds_the_certificate_alone_and_can_be_removed(door):
    answer = door.get("/tarebook.mobileconfig")
    assert answer.content_type == "application/x-apple-aspen-config"
    profile = plistlib.loads(answer.data)
    (root,) = profile["PayloadContent"]
    assert (profile["PayloadType"], profile["PayloadRemovalDisallowed"]) == ("Configuration", False)
    assert root["PayloadType"] == "com.apple.security.root"
    assert root["PayloadContent"] == door.certificate().public_bytes(serialization.Encoding.DER)
    assert len({profile["PayloadUUID"], root["PayloadUUID"]}) == 2


def test_the_same_authority_gives_the_same_profile_and_a_new_one_another(door):
    first = door.get("/tarebook.mobileconfig").data
    assert door.get("/tarebook.mobileconfig").data == first
    authority.make(door.folder, "tarebook.local")
    second = plistlib.loads(door.get("/tarebook.mobileconfig").data)
    assert second["PayloadIdentifier"] != plistlib.loads(first)["PayloadIdentifier"]


@pytest.mark.parametrize("path", EVERYTHING)
def test_the_key_is_in_nothing_it_gives(door, path):
    key = (door.folder / "authority-key.pem").read_text()
    body = door.get(path).data
    assert b"PRIVATE KEY" not in body
    assert key.splitlines()[1].encode() not in body


@pytest.mark.parametrize("path", EVERYTHING)
def test_every_answer_is_confined_and_kept_by_nobody(door, path):
    headers = door.get(path).headers
    policy = dict(part.strip().split(" ", 1) for part in headers["Content-Security-Policy"].split(";"))
    assert policy["default-src"] == "'none'"
    assert policy["script-src"] == policy["style-src"] == policy["img-src"] == "'self'"
    assert (headers["X-Content-Type-Options"], headers["Cache-Control"]) == ("nosniff", "no-store")


@pytest.mark.parametrize(
    "host",
    [
        "192.168.1.20:8080", "10.0.0.1", "172.16.0.9:8080", "[fd12::5]:8080", "[fe80::1]", "127.0.0.1:8080",
        "localhost:8080", "tarebook.local:8080", "TAREBOOK.local",
    ],
)  # fmt: skip
def test_it_answers_under_private_addresses_and_the_permanent_name(door, host):
    assert door.get("/", host).status_code == 200


@pytest.mark.parametrize(
    "host",
    [
        "example.org",
        "other.local",
        "8.8.8.8",
        "[2001:db8::1]:8080",
        "tarebook.local.example.org",
        "10.0.0.1.example.org",
    ],
)
@pytest.mark.parametrize("path", ["/", "/tarebook.mobileconfig", "/about.json", "/files/door.js"])
def test_it_answers_under_no_other_name(door, host, path):
    answer = door.get(path, host)
    assert answer.status_code == 421
    assert answer.text.startswith("This server does not answer to that host name.")


def test_no_route_of_the_garage_is_there(door, tmp_path):
    """All of them, from the garage's own table; the two start pages are each their own."""
    garage = create_app(Home(tmp_path / "garage").settings)
    rules = [rule for rule in garage.url_map.iter_rules() if rule.rule != "/"]
    assert len(rules) > 10
    for rule in rules:
        path = re.sub(r"<[^>]+>", "x", rule.rule)
        for method in sorted(rule.methods - {"OPTIONS"}):
            answer = door.client.open(path, method=method, headers={"Host": "192.168.1.20"})
            assert (path, method, answer.status_code) == (path, method, 404)


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH"])
def test_nothing_can_be_sent_to_it(door, method):
    answer = door.client.open("/", method=method, headers={"Host": "192.168.1.20"}, data=b"x")
    assert (answer.status_code, answer.mimetype) == (405, "text/plain")


@pytest.mark.parametrize("path", ["/nothing", "/files/../app.py", "/files/%2e%2e/app.py", "/page.html", "/files/"])
def test_nothing_else_is_found(door, path):
    assert door.get(path).status_code == 404


def test_it_tells_its_check_where_to_look_and_what_time_it_is(door):
    told = door.get("/about.json").json
    assert told["name"] == "https://tarebook.local:8443"
    assert told["door"] == "http://tarebook.local:8080"
    assert told["addresses"] == ["https://192.168.1.20:8443", "https://[fd12::5]:8443"]
    assert abs(told["now"] / 1000 - time.time()) < 60


def test_any_page_may_ask_whether_the_name_leads_here(door):
    answer = door.get("/here", "tarebook.local:8080")
    assert (answer.status_code, answer.data) == (204, b"")
    assert answer.headers["Cross-Origin-Resource-Policy"] == "cross-origin"


def test_an_authority_that_is_gone_is_a_sentence(door):
    (door.folder / "authority.pem").unlink()
    answer = door.get("/")
    assert (answer.status_code, answer.mimetype) == (500, "text/plain")
    assert "No authority has been made" in answer.text


def test_its_files_come_with_the_package():
    folder = Path(door_app.__file__).parent
    assert (folder / "page.html").is_file()
    assert {path.suffix for path in (folder / "files").iterdir()} == {".js", ".css", ".svg"}
