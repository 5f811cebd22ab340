"""Getting everything out again, and making the tables again from the journal."""

import hashlib
import json
import sqlite3
import zipfile

import pytest

from tarebook.demo.scenario import fill
from tarebook.settings import Settings
from tarebook.store import garages
from tarebook.store.migrate import prepare
from tarebook.store.photos import Photos


@pytest.fixture
def filled(tmp_path, tarebook):
    """The demo in the data folder the commands use."""
    settings = Settings(data=tmp_path / "data")
    database = prepare(settings)
    with database.write() as session:
        garage = garages.open_or_create(session).id
    fill(database, garage, Photos(settings, database))
    database.close()
    return settings.data


def test_an_export_is_what_calc_reads_and_the_journal_beside_it(filled, tarebook, tmp_path):
    assert tarebook("export", tmp_path / "out.json").code == 0
    out = json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))
    assert {"Pebble"} == {car["name"] for car in out["cars"]}
    journal = [json.loads(text) for text in out["entries"]]
    assert len(journal) == sum(len(records) for kind, records in out.items() if kind not in ("export", "entries"))
    assert {entry["device"] for entry in journal} == {"home"}


def test_an_export_to_a_pipe_is_the_same(filled, tarebook, tmp_path):
    tarebook("export", tmp_path / "out.json")
    assert tarebook("export", "-").out == (tmp_path / "out.json").read_text(encoding="utf-8")


def test_a_zip_has_every_photo_under_its_hash(filled, tarebook, tmp_path):
    ended = tarebook("export", "--format", "zip", tmp_path / "out.zip")
    assert (ended.code, ended.out) == (0, "")
    with zipfile.ZipFile(tmp_path / "out.zip") as archive:
        assert archive.testzip() is None
        wanted = {photo["sha256"] for photo in json.loads(archive.read("garage.json"))["photos"]}
        hashes = {name: hashlib.sha256(archive.read(name)).hexdigest() for name in archive.namelist()[1:]}
    assert len(wanted) > 10
    assert hashes == {f"photos/{sha256}.jpg": sha256 for sha256 in wanted}


def test_a_photo_that_is_still_on_a_phone_is_told(filled, tarebook, tmp_path):
    next(path for path in (filled / "photos").glob("??/*") if path.is_file()).unlink()
    ended = tarebook("export", "--format", "zip", tmp_path / "out.zip")
    assert ended.out == "Photos that have not arrived on this computer, and so are not in the file: 1.\n"


def test_an_export_that_cannot_be_written_is_one_sentence_and_keeps_the_old_file(filled, tarebook, tmp_path):
    ended = tarebook("export", tmp_path / "none" / "out.json")
    assert (ended.code, ended.err.count("\n")) == (1, 1)
    assert "cannot be written" in ended.err


def test_rebuild_makes_the_same_tables(filled, tarebook):
    before = _rows(filled)
    ended = tarebook("rebuild")
    assert ended.out.endswith("Nothing changed.\n")
    assert _rows(filled) == before


def test_rebuild_repairs_a_table_that_was_spoilt(filled, tarebook):
    before = _rows(filled)
    with sqlite3.connect(filled / "tarebook.sqlite3") as database:
        database.execute("""UPDATE record SET standing = '{"name": "nonsense"}' WHERE kind = 'part'""")
    ended = tarebook("rebuild")
    assert "were wrong and are right now" in ended.out
    assert _rows(filled) == before


def _rows(folder):
    with sqlite3.connect(folder / "tarebook.sqlite3") as database:
        return database.execute("SELECT id, kind, standing, deleted FROM record ORDER BY id").fetchall()


def test_devices_are_listed_and_taken_off(filled, tarebook):
    assert tarebook("devices").out == "No device is paired yet. tarebook pair lets one in.\n"
    _pair_one(filled)
    [line] = tarebook("devices").out.splitlines()
    name = line.split()[0]
    assert "phone" in line
    assert tarebook("devices", "revoke", name).out == f"{name}, phone, is taken off the list.\n"
    assert "taken off" in tarebook("devices").out


def test_taking_off_an_unknown_device_is_one_sentence(filled, tarebook):
    ended = tarebook("devices", "revoke", "nobody")
    assert (ended.code, ended.err) == (1, "tarebook: There is no such device. Reload the list of devices.\n")


def _pair_one(folder):
    from tarebook.devices import pairing

    database = prepare(Settings(data=folder))
    with database.write() as session:
        pairing.admit(session, garages.open_or_create(session).id, "phone")
    database.close()
