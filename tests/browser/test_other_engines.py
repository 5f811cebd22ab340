"""The main job on other engines: joined over HTTPS, weighed without a server, killed, opened again, at home once."""

import pytest

from tests.browser.doing import arrived_once, photo
from tests.browser.engines import lacking
from tests.browser.home_network import NAME, HomeServer, Inviting
from tests.browser.look_up import leading_home
from tests.browser.visitor import Visitor

FULLNESS = "say how full storage is (navigator.storage.estimate)"
# What the app asks a browser for besides what it cannot do without, and a test of each.
ASKED = {
    "promise to keep storage (navigator.storage.persist)": "return !!navigator.storage?.persist",
    FULLNESS: "return !!navigator.storage?.estimate",
    "offer to install (beforeinstallprompt)": "return 'onbeforeinstallprompt' in window",
    "read QR codes by itself (BarcodeDetector; the app brings a reader)": "return 'BarcodeDetector' in window",
    "lock between tabs (navigator.locks)": "return !!navigator.locks",
    "give a page the camera (getUserMedia)": "return !!navigator.mediaDevices?.getUserMedia",
}


@pytest.fixture
def house(tmp_path):
    running = HomeServer(tmp_path / "server").start()
    yield running
    running.close()


def let_in(person, house):
    """From the door page into the garage: by the short code, and a yes at home to the words on both screens."""
    person.wire.go(house.door)
    person.sees("All is well")
    person.press("Open Tarebook")
    with Inviting(house) as at_home:
        person.fill("Or type the code", at_home.code)
        person.press("Join")
        person.sees(" · ".join(at_home.words()))
        at_home.say_yes()
    person.press("Later")


def tells_what_it_lacks(person, engine):
    """For the end of the report; and the app says so too, where it matters."""
    lacking[engine.name] = [what for what, asked in ASKED.items() if person.wire.script(asked) is not True]
    lacking[engine.name] += engine.lacks
    assert "give a page the camera (getUserMedia)" not in lacking[engine.name]
    person.go("#/devices")
    person.sees("This browser makes no offer of its own.")
    person.go("#/records")
    person.sees("used on this phone" if person.wire.script(ASKED[FULLNESS]) else "does not say how full its storage is")


def test_a_phone_joins_over_https_and_what_it_weighs_alone_survives_a_kill_and_arrives_once(engine, house, tmp_path):
    with leading_home(NAME) as look_up:
        engine.is_at_home(look_up, house.certificates)
        person = Visitor(engine.open())
        let_in(person, house)
        person.begin("Coupe", "980 kg")
        person.is_installed()
        person.is_in_sync()

        house.kill()
        person.reload()
        person.weigh("Spare wheel", ["1", "1", "Point", "3", "kg"], photo(tmp_path))
        person.reload()
        person.sees("On this phone only")

        engine.sigkill()
        person = Visitor(engine.open())
        person.wire.go(f"{house.origin}/#/parts")
        person.sees("Spare wheel")
        person.sees("11.3")
        person.sees("On this phone only")

        house.start()
        person.is_in_sync()
        arrived_once(house, "11.3 kg")
        tells_what_it_lacks(person, engine)
