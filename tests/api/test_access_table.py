"""Every route × (no token, revoked, paired, other garage), made from the URL map and tried by requests.

A route that is added appears here by itself, and fails until it says what a good request to it looks like.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import select
from werkzeug.routing import Rule

from tarebook import create_app
from tarebook.api.access import allowed_of
from tarebook.devices import pairing
from tarebook.settings import Settings
from tarebook.store import garages, house
from tarebook.store.models import Base
from tests.home import Device, Home, entry
from tests.photos import photo_entry, picture, send_photo, sha

SECRET = "The turbo under the bench"
ANYWHERE = {"REMOTE_ADDR": "192.168.1.20"}
GARAGE: dict[str, Any] = {"cars": [{"id": "c", "name": "Pebble"}], "parts": [], "jobs": []}


def routes() -> dict[str, tuple[Rule, str]]:
    """ "METHOD /path" -> (rule, method)"""
    rules = create_app(Settings(data=Path("unused"))).url_map.iter_rules()
    return {
        f"{method} {rule.rule}": (rule, method) for rule in rules for method in (rule.methods or set()) - {"OPTIONS"}
    }


ROUTES = routes()


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

    def ask(self, route: str, by: Device | None, **more: Any) -> Any:
        rule, method = ROUTES[route]
        values = {name: self.names[f"{rule.endpoint}.{name}"] for name in rule.arguments}
        path = self.home.app.url_map.bind("localhost").build(str(rule.endpoint), values)
        carried = {**self.body(str(rule.endpoint), by), **more}
        headers = {**(by.headers if by else {}), **carried.pop("headers", {})}
        return self.home.client.open(path, method=method, headers=headers, **carried)

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
    return furnished(Home(folder))


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


def who_may(house_: House, route: str) -> str | None:
    return allowed_of(house_.home.app.view_functions[str(ROUTES[route][0].endpoint)])


def test_the_table_has_rows() -> None:
    assert len(ROUTES) > 25


@pytest.mark.parametrize("route", ROUTES)
def test_without_a_token(house_: House, route: str) -> None:
    before, answer = house_.rows(), house_.ask(route, None)
    if who_may(house_, route) == "anyone":
        assert answer.status_code < 400
        return
    assert answer.status_code == 401
    assert answer.headers["WWW-Authenticate"] == "Bearer"
    assert code_of(answer) in ("unpaired", None)
    assert house_.rows() == before


@pytest.mark.parametrize("route", ROUTES)
def test_with_the_token_of_a_revoked_device(house_: House, route: str) -> None:
    before, answer = house_.rows(), house_.ask(route, house_.revoked)
    if who_may(house_, route) == "anyone":
        assert answer.status_code < 400
        return
    assert answer.status_code == 403
    assert code_of(answer) in ("revoked", None)
    assert house_.rows() == before


@pytest.mark.parametrize("route", ROUTES)
def test_with_the_token_of_a_paired_device(house_: House, route: str) -> None:
    assert house_.ask(route, house_.phone).status_code < 300


@pytest.mark.parametrize("route", ROUTES)
def test_with_the_token_of_a_paired_device_elsewhere(house_: House, route: str) -> None:
    """On another computer, or behind a proxy of this one, what is for the home computer alone is refused."""
    before = house_.rows()
    for elsewhere in ({"environ_base": ANYWHERE}, {"headers": {**house_.phone.headers, "X-Forwarded-For": "10.0.0.9"}}):
        if who_may(house_, route) == "home":
            answer = house_.ask(route, house_.phone, **elsewhere)
            assert answer.status_code == 403
            assert code_of(answer) in ("home_only", None)
            assert house_.rows() == before
    if who_may(house_, route) != "home":
        assert house_.ask(route, house_.phone, environ_base=ANYWHERE).status_code < 300


@pytest.mark.parametrize("route", ROUTES)
def test_with_the_token_of_another_garage(house_: House, route: str) -> None:
    """It is served as any device is, but sees and changes nothing of this garage, not even that it is there."""
    rule, _method = ROUTES[route]
    before, answer = house_.rows(), house_.ask(route, house_.other)
    if who_may(house_, route) == "anyone":
        assert answer.status_code < 400
        return
    if rule.arguments:
        assert answer.status_code == 404
    else:
        assert answer.status_code < 300
    of_this_garage = (SECRET, house_.home.garage, house_.phone.id, house_.desk.id, sha(picture(1)), sha(picture(2)))
    assert not [word for word in of_this_garage if word.encode() in answer.data]
    mine = {name: [row for row in rows if repr(house_.home.garage) in row] for name, rows in before.items()}
    now = {name: [row for row in rows if repr(house_.home.garage) in row] for name, rows in house_.rows().items()}
    assert now == mine
