"""What was set aside, what a device taken off the list can still do, and everything as one file."""

import json
import re
from datetime import UTC, datetime, timedelta
from typing import Any

from playwright.sync_api import Page, Route, expect

from tests.browser.doing import begin, go, in_sync, join, weigh
from tests.browser.serving import Server

TABLET = {"code": "", "name": "Tablet in the trailer"}

OPENED_BY_A_NEWER_VERSION = """async () => {
  const kept = (await indexedDB.databases()).filter(({ name }) => name !== "tarebook-session");
  await Promise.all(kept.map(({ name, version }) => new Promise((done, failed) => {
    const asked = indexedDB.open(name, version + 100);
    asked.onsuccess = () => done(asked.result.close());
    asked.onerror = failed;
  })));
}"""


class Device:
    """Another device of the garage, as far as the wire shows one."""

    def __init__(self, server: Server) -> None:
        self.server = server
        code = server.pairing_link().partition("#pair=")[2]
        paired = json.loads(server.ask("/api/v1/pair", body={**TABLET, "code": code}))
        self.token, self.id, self.garage = paired["token"], paired["device"], paired["garage"]
        self.epoch = self._ask("/sync/pull?epoch=&since=0")["epoch"]

    def _ask(self, path: str, body: object = None) -> Any:
        return json.loads(self.server.ask(f"/api/v1{path}", self.token, body))

    def push(self, *texts: str) -> None:
        self._ask("/sync/push", {"proto": 1, "schema": 1, "garage": self.garage, "epoch": self.epoch, "entries": texts})

    def weighing(self, name: str, device: str) -> str:
        """The text of an entry that weighs something, said to come from `device`."""
        fields = {"method": "direct", "shown": "4.2 kg", "what": name}
        entry = {"id": f"01999999-0000-7000-8000-{len(name):012d}", "device": device, "writer": "w", "n": 1}
        whole = {**entry, "kind": "weighing", "record": "by-hand", "set": fields, "base": [], "photos": []}
        return json.dumps({**whole, "made_at": "2026-05-02T09:30:00Z"})

    def called(self, name: str) -> str:
        """The text of an entry that names everything alike: its kind, a field, a value and its device."""
        fields = f'{{"{name}":"x","name":{{"{name}":1}}}}'
        return (
            f'{{"id":"e-{name}","device":"{name}","writer":"w","n":1,"kind":"{name}","record":"{name}",'
            f'"set":{fields},"base":[],"photos":[],"made_at":"2026-05-02T09:30:00Z"}}'
        )

    def revoke_the_other(self) -> None:
        [other] = [each for each in self._ask("/devices")["devices"] if each["id"] != self.id]
        self._ask(f"/devices/{other['id']}/revoke", {})


def send_now(page: Page) -> None:
    go(page, "#/records")
    page.get_by_role("button", name="Send now").click()


def test_a_record_of_a_stranger_is_taken_in_by_hand_and_unreadable_bytes_are_left(server, make_phone):
    tablet = Device(server)
    tablet.push(tablet.weighing("Tow hook", "nobody-knows"), "this is { not a record")
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    go(page, "#/records")
    aside = page.get_by_role("region", name="Set aside (2)")
    expect(aside.get_by_text("Tow hook (weighing)")).to_be_visible()
    expect(aside.get_by_text("Something unreadable")).to_be_visible()
    aside.get_by_role("button", name="Take in").click()
    page.get_by_role("region", name="Set aside (1)").get_by_role("button", name="Leave").click()
    expect(page.get_by_role("heading", name="Set aside")).to_have_count(0)
    said = "Tow hook (weighing): Sent by Tablet in the trailer, and not proven to be from the device it names."
    expect(page.get_by_role("region", name="Not proven who wrote it (1)").get_by_text(said)).to_be_visible()
    go(page, "#/weigh")
    expect(page.get_by_role("link", name="Tow hook")).to_be_visible()


def test_a_device_taken_off_the_list_keeps_its_records_and_joins_again_by_a_link(server, make_phone):
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    Device(server).revoke_the_other()
    weigh(page, "Tow hook", ["4", "2", "0", "g"])
    send_now(page)
    expect(page.get_by_role("alert")).to_contain_text("taken off")
    go(page, "#/devices")
    page.get_by_role("textbox", name="Pairing link or code").fill(server.pairing_link())
    page.get_by_role("button", name="Join").click()
    in_sync(page)
    # What it wrote while it was off the list is somebody's word against the list: it comes in when a person says so.
    go(page, "#/records")
    page.get_by_role("button", name="Take in all 2").click()
    go(page, "#/weigh")
    expect(page.get_by_role("link", name=re.compile("^Tow hook.*420 g"))).to_be_visible()


def test_records_says_when_a_backup_was_last_proven_and_warns_after_two_days(server, make_phone, tmp_path):
    phone = make_phone("anna", server)
    page = join(phone, server)
    begin(page, "Coupe", "980 kg")

    now = datetime.now(UTC)
    said: dict[str, str | None] = {}

    def answer(route: Route) -> None:
        told = route.fetch()
        route.fulfill(response=told, json={**told.json(), **said})

    def hears(proven: datetime | None) -> None:
        said["proven"] = proven.isoformat() if proven else None
        send_now(page)

    phone.context.route("**/api/v1/sync/pull*", answer)
    hears(now - timedelta(hours=47))
    expect(page.get_by_text("Its last backup was proven")).to_be_visible()
    hears(now - timedelta(hours=49))
    expect(page.get_by_role("alert").get_by_text("The home computer's last proven backup is of")).to_be_visible()
    expect(page.get_by_text("Run tarebook doctor there")).to_be_visible()
    hears(None)
    expect(page.get_by_text("No backup yet: the home computer makes one every day.")).to_be_visible()
    page.clock.set_system_time(now + timedelta(days=3))
    send_now(page)
    expect(page.get_by_role("alert").get_by_text("The home computer has proven no backup yet.")).to_be_visible()


def test_everything_leaves_as_one_file_also_without_the_home_computer(server, make_phone, tmp_path):
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    server.kill()
    weigh(page, "Tow hook", ["4", "2", "0", "g"])
    go(page, "#/records")
    with page.expect_download() as started:
        page.get_by_role("button", name="Export everything").click()
    started.value.save_as(tmp_path / "everything.json")
    assert "420 g" in (tmp_path / "everything.json").read_text()
    expect(page.get_by_text("Downloaded as tarebook-")).to_be_visible()


def test_records_and_the_file_of_everything_stand_whatever_an_entry_names(server, make_phone, tmp_path):
    names = ["__proto__", "constructor", "hasOwnProperty", "toString", "valueOf"]
    tablet = Device(server)
    tablet.push(*map(tablet.called, names))
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    in_sync(page)
    go(page, "#/records")
    aside = page.get_by_role("region", name="Set aside (5)")
    expect(aside.get_by_role("heading", level=3)).to_have_count(len(names))
    aside.get_by_text("What it says").last.click()
    expect(aside.get_by_text("another device").last).to_be_visible()
    with page.expect_download() as started:
        page.get_by_role("button", name="Export everything").click()
    started.value.save_as(tmp_path / "everything.json")
    assert all(f"e-{name}" in (tmp_path / "everything.json").read_text() for name in names)
    go(page, "#/constructor")
    expect(page.get_by_role("navigation", name="Main").get_by_role("link", name="Car")).to_have_attribute(
        "aria-current", "page"
    )


def test_records_that_this_version_cannot_open_leave_as_one_file_also_without_the_home_computer(
    server, make_phone, tmp_path
):
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    weigh(page, "Tow hook", ["4", "2", "0", "g"])
    page.evaluate(OPENED_BY_A_NEWER_VERSION)
    server.kill()
    page.reload()
    expect(page.get_by_role("heading", name="The records are not open")).to_be_visible()
    with page.expect_download() as started:
        page.get_by_role("button", name="Export everything").click()
    started.value.save_as(tmp_path / "everything.json")
    assert "420 g" in (tmp_path / "everything.json").read_text()


def test_another_device_is_taken_off_the_list_from_a_phone(server, make_phone):
    page = join(make_phone("anna", server), server)
    begin(page, "Coupe", "980 kg")
    Device(server)
    go(page, "#/devices")
    page.get_by_role("button", name="Take off").click()
    page.get_by_role("button", name="Take it off").click()
    page.get_by_text("Taken off the list (1)").click()
    expect(page.get_by_text("Tablet in the trailer,")).to_be_visible()
