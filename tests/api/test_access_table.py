"""The table of who may call what, every cell requested; a new route fails until it says what is good to send."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import select

from tarebook.devices import authority, pairing
from tarebook.door import app as door
from tarebook.store import garages, house
from tarebook.store.models import Base
from tests.api.access_table import DOOR, ORIGIN, ROUTES, STATES, expected, table, who_may
from tests.home import Device, Home, entry
from tests.photos import photo_entry, picture, send_photo, sha

SECRET = "The turbo under the bench"
NAME = "tarebook.local"
ON_LAN = {"REMOTE_ADDR": "192.168.1.20", "tarebook.entrance": "lan"}
GARAGE: dict[str, Any] = {"cars": [{"id": "c", "name": "Pebble"}], "parts": [], "jobs": []}


@dataclass
class House:
    """A garage with something in it, and who may come."""

    home: Home
    desk: Device
    phone: Device
    revoked: Device
    other: Device
    names: dict[str, str]
    invitation: str
    join: str

    def body(self, endpoint: str, by: Device | None) -> dict[str, Any]:
        """What a good request to an endpoint carries, as keywords of the test client."""
        garage = by.garage if by else self.home.garage
        text = entry("j9", {"name": "x"}, device=by.id if by else "x")
        bodies: dict[str, dict[str, Any]] = {
            "sync.push": {"json": {"proto": 1, "schema": 1, "garage": garage, "epoch": "", "entries": [text]}},
            "photos.announce": {"json": {"sha256": sha(picture(9)), "size": len(picture(9)), "type": "image/jpeg"}},
            "photos.piece": {"data": picture(2)[:10], "headers": {"Upload-Offset": "0"}},
            "pairing.pair": {"json": {"code": self.invitation}},
            "pairing.wait": {"json": {"join": self.join}},
            "pairing.invite": {"json": {}},
            "pairing.confirm": {"json": {}},
            "pairing.refuse": {"json": {}},
            "devices.rename": {"json": {"name": "renamed"}},
            "devices.revoke": {"json": {}},
        }
        return {"json": GARAGE} if endpoint.startswith("calc.") else bodies.get(endpoint, {})

    def callers(self, state: str) -> list[tuple[Device | None, dict[str, Any]]]:
        """Who asks in a state, and what shows where from: a proxy is known by its headers, or by the name it passes."""
        callers: dict[str, list[tuple[Device | None, dict[str, Any]]]] = {
            "none": [(None, {})],
            "revoked": [(self.revoked, {})],
            "other garage": [(self.other, {})],
            "home": [(self.phone, {})],
            "lan": [(self.phone, {"environ_base": ON_LAN, "headers": {**self.phone.headers, "Host": NAME}})],
            "proxied": [
                (self.phone, {"headers": {**self.phone.headers, **passed}})
                for passed in ({"X-Forwarded-For": "192.168.1.20"}, {"Host": NAME}, {"Via": "1.1 x", "Host": NAME})
            ],
        }
        return callers[state]

    def ask(self, route: str, by: Device | None, **more: Any) -> Any:
        rule, method = ROUTES[route]
        values = {name: self.names[f"{rule.endpoint}.{name}"] for name in rule.arguments}
        path = self.home.app.url_map.bind("localhost").build(str(rule.endpoint), values)
        carried = self.body(str(rule.endpoint), by)
        headers = {**(by.headers if by else {}), **carried.pop("headers", {}), **more.pop("headers", {})}
        return self.home.client.open(path, method=method, headers=headers, **carried, **more)

    def rows(self) -> dict[str, list[Any]]:
        """Everything in the database but when a device was last seen."""
        with self.home.database.read() as session:
            return {
                table.name: sorted(map(repr, session.execute(select(*[c for c in table.c if c.name != "last_seen"]))))
                for table in Base.metadata.sorted_tables
            }


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> House:
    """The house, built once; `house_` is it as it was then."""
    folder = tmp_path_factory.mktemp("house")
    (folder / "app").mkdir()
    (folder / "app" / "index.html").write_text("<!doctype html><title>Tarebook</title>")
    (folder / "app" / "sw.js").write_text("// worker")
    return furnished(Home(folder, hosts=(NAME,)))


def furnished(home: Home) -> House:
    with home.database.write() as session:
        house.keep_origin(session, "https://tarebook.local:8443")
        stranger = Device(home.client, pairing.admit(session, garages.create(session).id, "of another garage"))
    desk, phone, revoked, gone = (home.pair(name) for name in ("desk", "phone", "revoked", "spare"))
    phone.push(entry("j1", {"name": SECRET}, device=phone.id))
    assert send_photo(phone, picture(1))
    phone.push(photo_entry(picture(1), "j1", phone))
    told = {"sha256": sha(picture(2)), "size": len(picture(2)), "type": "image/jpeg"}
    upload = phone.post("/photos", told).json["url"].rpartition("/")[2]
    desk.post(f"/devices/{revoked.id}/revoke")
    waits = home.client.post("/api/v1/pair", json={"code": desk.post("/pair/invitations", {}).json["code"]})
    code = desk.post("/pair/invitations", {}).json["code"]
    (asking,) = desk.get("/pair/joins").json["joins"]
    names = {
        "photos.photo.sha256": sha(picture(1)), "photos.progress.name": upload, "photos.piece.name": upload,
        "devices.rename.name": gone.id, "devices.revoke.name": gone.id, "app_files.file.name": "sw.js",
        "pairing.confirm.name": asking["id"], "pairing.refuse.name": asking["id"],
    }  # fmt: skip
    return House(home, desk, phone, revoked, stranger, names, code, waits.json["join"])


@pytest.fixture
def house_(built: House, tmp_path: Path) -> Iterator[House]:
    """As it was built, whatever the last test did in it."""
    folder, kept = built.home.settings.data, tmp_path / "kept"
    built.home.close()
    shutil.copytree(folder, kept)
    yield built
    built.home.close()
    shutil.rmtree(folder)
    shutil.copytree(kept, folder)


def code_of(answer: Any) -> str | None:
    """The code of a refusal; None of one to a HEAD, which leaves the body out."""
    return str(answer.json["error"]["code"]) if answer.data else None


def test_the_table_has_rows() -> None:
    assert len(ROUTES) > 25
    assert len(table().splitlines()) == len(ROUTES) + len(DOOR) + 1


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize("route", ROUTES)
def test_every_cell(house_: House, route: str, state: str) -> None:
    said, before = expected(route, state), house_.rows()
    for by, carried in house_.callers(state):
        answer = house_.ask(route, by, **carried)
        if said == "answered":
            assert answer.status_code < 400
            return  # it may have done what it was asked
        status = {"unpaired": 401, "revoked": 403, "home_only": 403, "404": 404}[said]
        assert answer.status_code == status
        assert status == 404 or code_of(answer) in (said, None)
        assert ("WWW-Authenticate" in answer.headers) == (status == 401)
        assert house_.rows() == before


@pytest.mark.parametrize("route", [route for route in ROUTES if who_may(route) != "anyone"])
def test_with_the_token_of_another_garage(house_: House, route: str) -> None:
    """It is served as any device is, but sees and changes nothing of this garage, not even that it is there."""
    before, answer = house_.rows(), house_.ask(route, house_.other)
    of_this_garage = (SECRET, house_.home.garage, house_.phone.id, house_.desk.id, sha(picture(1)), sha(picture(2)))
    assert not [word for word in of_this_garage if word.encode() in answer.data]
    mine = {name: [row for row in rows if repr(house_.home.garage) in row] for name, rows in before.items()}
    now = {name: [row for row in rows if repr(house_.home.garage) in row] for name, rows in house_.rows().items()}
    assert now == mine


@pytest.mark.parametrize("state", STATES)
@pytest.mark.parametrize("route", DOOR)
def test_every_cell_of_the_door(house_: House, tmp_path: Path, route: str, state: str) -> None:
    """Everybody gets the same there, whatever he shows and from wherever he comes; nothing of it is the garage's."""
    authority.make(tmp_path, NAME)
    rule, method = DOOR[route]
    app = door.build(tmp_path, ORIGIN, 8080, ("192.168.1.20",))
    path = app.url_map.bind(NAME).build(str(rule.endpoint), {"filename": "door.js"} if rule.arguments else {})
    assert expected(route, state) == "answered"
    for by, carried in house_.callers(state):
        shown = {"headers": by.headers if by else {}, **carried}
        told, same = (app.test_client().open(path, method=method, **how) for how in (shown, {}))
        assert (told.status_code, len(told.data)) == (same.status_code, len(same.data))
        assert told.status_code < 400
        assert not [word for word in (SECRET, house_.home.garage, house_.phone.id) if word.encode() in told.data]
