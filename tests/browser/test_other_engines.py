"""The main job on the engines that are not Chromium: weighed without a server, killed, opened again, at home once."""

import hashlib

from tests.browser.doing import photo
from tests.browser.engines import lacking
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


def of_kind(entries, kind):
    return [entry for entry in entries if entry["kind"] == kind]


def test_a_weighing_with_photo_survives_no_server_and_a_killed_browser_and_arrives_once(engine, server, tmp_path):
    person = Visitor(engine.open())
    person.wire.go(server.pairing_link())
    person.begin("Coupe", "980 kg")
    person.is_installed()
    person.is_in_sync()

    server.kill()
    person.reload()
    person.weigh("Spare wheel", ["1", "1", "Point", "3", "kg"], photo(tmp_path))
    person.reload()
    person.sees("On this phone only")

    engine.sigkill()
    person = Visitor(engine.open())
    person.wire.go(f"{server.address}/#/parts")
    person.sees("Spare wheel")
    person.sees("11.3")
    person.sees("On this phone only")

    server.start()
    person.is_in_sync()
    token = server.join()
    entries = server.entries(token)
    assert [entry["set"]["shown"] for entry in of_kind(entries, "weighing")] == ["11.3 kg"]
    [kept] = of_kind(entries, "photo")
    at_home = server.ask(f"/api/v1/photos/{kept['set']['sha256']}?size=full", token)
    assert hashlib.sha256(at_home).hexdigest() == kept["set"]["sha256"]


def test_what_an_engine_cannot_do_is_said_at_the_end_of_the_report(engine, demo):
    person = Visitor(engine.open())
    person.wire.go(demo.address)
    person.sees("Weight now")
    lacking[engine.name] = [what for what, asked in ASKED.items() if person.wire.script(asked) is not True]
    assert "give a page the camera (getUserMedia)" not in lacking[engine.name]
    person.go("#/devices")
    person.sees("This browser makes no offer of its own.")
    person.go("#/records")
    person.sees("used on this phone" if person.wire.script(ASKED[FULLNESS]) else "does not say how full its storage is")
