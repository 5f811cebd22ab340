"""A phone whose app is two versions of the wire behind, with poison in its queue, then taken off the list.

The phone's real code is answered by the real application, which becomes newer between its syncs. Nothing it has saved
is lost, and the file it exports brings into its garage, and into an empty one, what the wire would have brought.
"""

from __future__ import annotations

import base64
import json
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from random import Random
from typing import Any
from unittest.mock import patch

from werkzeug.serving import make_server

from tarebook.api import sync, system
from tarebook.garage.records import all_texts, set_aside
from tarebook.importing.rescue import rescue
from tarebook.journal import entries
from tarebook.store.models import DeviceRow
from tarebook.store.photos import Photos
from tests.fuzz.proxy import phone_run
from tests.home import Device, Home, entry
from tests.photos import picture, sha
from tests.sync.eight import Outcome
from tests.sync.eight.healing import records
from tests.sync.simulation.truth import Truth

POISON = "Arsenic"
RUNNER = "tests/sync/eight/old_phone.ts"
_read = entries.read
TWO_LATER = system.PROTO + 2


def _fails_on_poison(text: str) -> entries.Entry | None:
    if f'"name":"{POISON}"' in text:
        raise RuntimeError("this entry makes the server fail")
    return _read(text)


@contextmanager
def answering(home: Home, phases: dict[str, Callable[[], Any]]) -> Iterator[str]:
    """The address of the real application; a POST to /phase/<name> calls that phase."""

    def application(environ: dict[str, Any], start: Any) -> Any:
        path = str(environ["PATH_INFO"])
        if path.startswith("/phase/"):
            phases[path.removeprefix("/phase/")]()
            start("204 No Content", [])
            return []
        return home.app({**environ, "HTTP_HOST": "localhost"}, start)

    server = make_server("127.0.0.1", 0, application, threaded=True)
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


def left_behind(folder: Path, chance: Random) -> Outcome:
    """One phone, from its pairing to its export, and the three garages that have its records then."""
    home = Home(folder / "data")
    phone, desk = home.pair(), home.pair("desk")
    desk.push("this is { no entry", entry("odd", {"name": "x"}, kind="unheard-of", device=desk.id, id="odd"))
    photos = [picture(chance.randrange(10**9)) for _ in range(4)]
    with ExitStack() as newer:

        def updated_twice() -> None:
            newer.enter_context(patch.object(sync, "PROTO", TWO_LATER))
            newer.enter_context(patch.object(system, "PROTO", TWO_LATER))

        phases: dict[str, Callable[[], Any]] = {
            "paired": lambda: None,
            "poisoned": lambda: newer.enter_context(patch.object(entries, "read", _fails_on_poison)),
            "updated": updated_twice,
            "revoked": lambda: desk.post(f"/devices/{phone.id}/revoke"),
        }
        asked = []
        for name, photo in zip(phases, photos, strict=True):
            jobs = [f"{name}-{number}" for number in range(chance.randrange(1, 9))]
            if name == "poisoned":
                jobs.insert(chance.randrange(len(jobs) + 1), POISON)
            asked.append({"name": name, "jobs": jobs, "photo": base64.b64encode(photo).decode()})
        with answering(home, phases) as address:
            token = phone.headers["Authorization"].removeprefix("Bearer ")
            given = {"server": address, "token": token, "garage": phone.garage, "device": phone.id, "phases": asked}
            told = phone_run(given, RUNNER)
    assert told["answers"] in (["sent", "sent", "protocol", refused] for refused in ("protocol", "revoked")), told[
        "answers"
    ]
    file = folder / "export.json"
    file.write_text(told["file"], encoding="utf-8")

    empty, twin = Home(folder / "empty"), Home(folder / "twin")
    found = Outcome()
    for one in (home, empty):
        first = taken_in(one, file)
        assert first.bad == 0
        judged(one)
    again = taken_in(home, file)
    assert (again.used, again.aside, again.photos, again.bad) == (0, 0, 0, 0)
    sent(twin, phone.id, told["texts"])
    wanted = _jobs(twin)
    for one in (home, empty):
        with one.database.read() as session:
            journal = set(all_texts(session, one.garage))
        found.lost += [text for text in told["texts"] if text not in journal]
        here = _jobs(one)
        found.missing += [f"{one.settings.data.name}: {name}" for name in wanted if here.get(name) != wanted[name]]
        reader = one.pair("reader")
        found.lost += [sha(data) for data in photos if reader.get(f"/photos/{sha(data)}").data != data]
    truth = Truth()
    for text in told["texts"]:
        truth.accept(text)
    truth.heard.update(truth.accepted)
    del truth.accepted["odd"]  # of a kind nobody knows: it is kept, and no figure comes of it
    found.missing += truth.missing(records(home))
    found.did.update({"phones": 1, "entries": len(told["texts"]), "of them unsent": told["waiting"]})
    found.did["photos"] += len(photos)
    for one in (home, empty, twin):
        one.close()
    return found


def taken_in(home: Home, file: Path) -> Any:
    return rescue(home.database, home.garage, Photos(home.settings, home.database), file, False, lambda item: None)


def judged(home: Home) -> None:
    """A person takes in all that came from a device that is not on the list."""
    desk = home.pair("desk")
    with home.database.read() as session:
        aside = [row["id"] for row in set_aside(session, home.garage) if row["reason"] == "stranger"]
    for name in aside:
        take = f"take-{name}"
        desk.push(entry(take, {"entry": name, "take": True}, kind="verdict", device=desk.id, id=take))


def sent(home: Home, device: str, texts: list[str]) -> None:
    """What the wire would have brought, from the same device."""
    paired: Device = home.pair(wanted=device)
    with home.database.write() as session:
        for name in {json.loads(text)["device"] for text in texts if text.startswith('{"')} - {paired.id}:
            row = DeviceRow(garage=home.garage, id=name, name="", token_hash=name, paired_at="", last_seen="")
            session.add(row)
    assert paired.push(*texts).status_code == 200


def _jobs(home: Home) -> dict[str, Any]:
    return {name: row for name, row in records(home).items() if "hours" in row}


def run(folder: Path, seed: int, times: int) -> Outcome:
    """So many phones."""
    found = Outcome()
    for number in range(times):
        found.add(left_behind(folder / str(number), Random(f"{seed} {number}")))
    return found
