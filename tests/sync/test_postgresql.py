"""A club's database: the same journal on PostgreSQL, several garages in it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image
from sqlalchemy import insert

from tarebook.garage import intake
from tarebook.garage.records import all_records, set_aside
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.database import Database
from tarebook.store.migrate import prepare
from tarebook.store.models import DeviceRow
from tarebook.store.rebuild import rebuild
from tests.home import Home, entry

JOURNALS = sorted((Path(__file__).parents[2] / "fixtures" / "journals").glob("*.json"))
KNOWN = ("phone-a", "phone-b", "phone-c", "d")


@pytest.fixture
def database(address: str, tmp_path: Path) -> Iterator[Database]:
    made = prepare(Settings(data=tmp_path, database_url=address))
    yield made
    made.close()


def garage_with_phones(database: Database) -> str:
    with database.write() as session:
        garage = garages.create(session).id
        plain = {"garage": garage, "paired_at": "", "last_seen": ""}
        rows = [{**plain, "id": name, "name": name, "token_hash": f"{garage}-{name}"} for name in KNOWN]
        session.execute(insert(DeviceRow), rows)
    return garage


@pytest.mark.parametrize("path", JOURNALS, ids=lambda path: path.stem)
def test_the_history_folds_to_what_its_file_says(database: Database, path: Path) -> None:
    case = json.loads(path.read_text(encoding="utf-8"))
    garage = garage_with_phones(database)
    for row in case["entries"]:
        with database.write() as session:
            intake.push(session, garage, "phone-a", [row["text"]])
    with database.write() as session:
        assert rebuild(session, garage).changed == 0
        assert {row["id"]: row["reason"] for row in set_aside(session, garage)} == case["expect"]["aside"]
        kept = {r["id"]: r for rows in all_records(session, garage, deleted=True).values() for r in rows}
    expected = {name: record["values"] for name, record in case["expect"]["records"].items()}
    plain = ("id", "conflicts", "deleted")
    assert {name: {k: v for k, v in r.items() if k not in plain} for name, r in kept.items()} == expected


def test_a_phone_pairs_syncs_and_sends_a_photo(address: str, tmp_path: Path) -> None:
    home = Home(tmp_path, database_url=address)
    phone = home.pair()
    text = entry("j1", {"name": "a\u0000b"}, id=f"e-{phone.id}", device=phone.id)
    assert phone.push(text, "\u0000").json["results"][0]["why"] == "invalid"
    kept = BytesIO()
    Image.new("RGB", (20, 20)).save(kept, "PNG")
    data = kept.getvalue()
    told = {"sha256": hashlib.sha256(data).hexdigest(), "size": len(data), "type": "image/png"}
    url = phone.post("/photos", told).json["url"]
    assert phone.ask("PATCH", url, {"Upload-Offset": "0"}, data=data).status_code == 204
    assert phone.get(f"/photos/{told['sha256']}").data == data
    home.close()
