"""A home server in a folder of its own, without a socket, and devices that talk to it."""

from __future__ import annotations

import json
from itertools import count
from pathlib import Path
from typing import Any

from flask.testing import FlaskClient

from tarebook import create_app
from tarebook.devices import pairing
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.database import Database
from tarebook.store.migrate import prepare

_numbers = count(1)


def entry(record: str, fields: dict[str, Any], base: tuple[str, ...] = (), **more: Any) -> str:
    """The text of one entry, of kind job and by the device `phone-a` unless told."""
    number = next(_numbers)
    plain = {
        "id": f"e-{number}", "device": "phone-a", "writer": "w", "n": number, "kind": "job", "record": record,
        "set": fields, "base": list(base), "photos": [], "made_at": "2026-05-02T10:00:00Z",
    }  # fmt: skip
    return json.dumps({**plain, **more})


def id_of(text: str) -> str:
    return str(json.loads(text)["id"])


class Device:
    """A paired device: requests with its token."""

    def __init__(self, client: FlaskClient, paired: pairing.Paired) -> None:
        self.client = client
        self.id = paired.device
        self.garage = paired.garage
        self.headers = {"Authorization": f"Bearer {paired.token}"}

    def get(self, path: str, **more: Any) -> Any:
        return self.client.get(f"/api/v1{path}", headers=self.headers, **more)

    def post(self, path: str, body: Any = None) -> Any:
        return self.client.post(f"/api/v1{path}", headers=self.headers, json=body)

    def ask(self, method: str, path: str, headers: dict[str, str] | None = None, **more: Any) -> Any:
        return self.client.open(path, method=method, headers={**self.headers, **(headers or {})}, **more)

    def pull(self, epoch: str = "", since: int = 0, since_id: str = "", **more: Any) -> Any:
        return self.get("/sync/pull", query_string={"epoch": epoch, "since": since, "since_id": since_id, **more})

    def push(self, *texts: str, **more: Any) -> Any:
        epoch = more.pop("epoch", "")
        body = {"proto": 1, "schema": 1, "garage": self.garage, "epoch": epoch, "entries": list(texts)}
        return self.post("/sync/push", {**body, **more})


class Home:
    """The server and its garage."""

    def __init__(self, folder: Path, **settings: Any) -> None:
        self.settings = Settings(data=folder, static_app=folder / "app", **settings)
        self.open()

    def open(self) -> None:
        self.database: Database = prepare(self.settings)
        with self.database.write() as session:
            self.garage = garages.open_or_create(session).id
        self.app = create_app(self.settings)

    def close(self) -> None:
        """Lets go of the database's files; the next request opens them again."""
        self.database.close()
        self.app.extensions["tarebook"].database.close()

    @property
    def client(self) -> Any:
        return self.app.test_client()

    def pair(self, name: str = "phone", wanted: str | None = None) -> Device:
        with self.database.write() as session:
            return Device(self.client, pairing.admit(session, self.garage, name, wanted))
