"""`tarebook import` of what a real phone's code has exported: entries kept apart, photos proven, nothing twice."""

from __future__ import annotations

import base64
import json
import subprocess
from pathlib import Path
from typing import Any

import pytest
from build_app import need_node

from tarebook.cli import main
from tarebook.errors import TarebookError
from tarebook.garage.records import all_records, set_aside
from tarebook.importing.app_export import Item, head_of, is_app_export, items
from tarebook.importing.rescue import Rescued, rescue
from tarebook.store import garages
from tarebook.store.models import DeviceRow
from tarebook.store.photos import Photos
from tests.home import Device, Home, entry
from tests.machine import ROOT
from tests.photos import picture, sha

JOBS = ["Seats out — “tight”", "Exhaust", "Mats", "Wiper", "Jack", "Horn", "Ashtray"]
# Packages are found where the app finds them, though the module stands elsewhere.
BUNDLE = """
import { build } from "vite";
const [module, outDir] = process.argv.slice(1);
const asTheApp = {
  name: "as-the-app",
  enforce: "pre",
  resolveId(source, importer) {
    const elsewhere = /^(@[^/]+\\/)?[a-z][^:]*$/.test(source) && importer && !importer.startsWith(process.cwd());
    return elsewhere ? this.resolve(source, `${process.cwd()}/index.html`) : null;
  },
};
const rollupOptions = { output: { entryFileNames: "phone.mjs" } };
const built = { ssr: module, outDir, rollupOptions };
const plain = { configFile: false, logLevel: "error", publicDir: false };
await build({ ...plain, plugins: [asTheApp], ssr: { noExternal: true }, build: built });
"""
PROGRAM = """
import { readFileSync, writeFileSync } from "node:fs";
const [phone, wanted, target] = process.argv.slice(1);
const { exported } = await import(phone);
writeFileSync(target, await exported(JSON.parse(readFileSync(wanted, "utf8"))));
process.exit(0);
"""


def node(program: str, *arguments: Path) -> None:
    command = ["node", "--input-type=module", "--eval", program, "--", *map(str, arguments)]
    subprocess.run(command, cwd=ROOT / "webapp", env=need_node().env, check=True, timeout=120)


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The phone's own code in one module."""
    folder = tmp_path_factory.mktemp("app")
    node(BUNDLE, ROOT / "tests" / "importing" / "app_export.ts", folder)
    return folder / "phone.mjs"


class Exporter:
    """Writes what a phone with seven jobs it could not send exports."""

    def __init__(self, app: Path, folder: Path, garage: str) -> None:
        self.app, self.folder, self.garage = app, folder, garage

    def __call__(self, device: str, photos: int = 2) -> Path:
        wanted, target = self.folder / "wanted.json", self.folder / "export.json"
        pictures = [base64.b64encode(picture(seed)).decode() for seed in range(photos)]
        said = {"garage": self.garage, "device": device, "jobs": JOBS, "photos": pictures}
        wanted.write_text(json.dumps(said), encoding="utf-8")
        node(PROGRAM, self.app, wanted, target)
        return target


@pytest.fixture
def exported(app: Path, home: Home, tmp_path: Path) -> Exporter:
    return Exporter(app, tmp_path, home.garage)


def taken(home: Home, file: Path, strict: bool = False) -> tuple[Rescued, list[Item]]:
    bad: list[Item] = []
    photos = Photos(home.settings, home.database)
    return rescue(home.database, home.garage, photos, file, strict, bad.append), bad


def jobs(home: Home) -> set[str]:
    with home.database.read() as session:
        return {job["name"] for job in all_records(session, home.garage)["jobs"]}


def reasons(home: Home) -> list[str]:
    with home.database.read() as session:
        return [row["reason"] for row in set_aside(session, home.garage)]


def test_a_revoked_phones_unsent_entries_come_in_set_aside_and_are_taken_one_by_one(
    home: Home, exported: Exporter
) -> None:
    phone, desk = home.pair(), home.pair()
    desk.post(f"/devices/{phone.id}/revoke")
    done, bad = taken(home, exported(phone.id))
    assert (done, bad) == (Rescued(used=0, aside=9, known=0, photos=2, photos_known=0, bad=0), [])
    assert jobs(home) == set()
    assert reasons(home) == ["stranger"] * 9
    with home.database.read() as session:
        names = [row["id"] for row in set_aside(session, home.garage)]
    for number, name in enumerate(names):
        desk.push(entry(f"v{number}", {"entry": name, "take": True}, kind="verdict", device=desk.id))
    assert jobs(home) == set(JOBS)
    assert reasons(home) == []
    assert desk.get(f"/photos/{sha(picture(0))}").data == picture(0)


def test_entries_of_a_device_on_the_list_are_used_at_once(home: Home, exported: Exporter) -> None:
    phone = home.pair()
    assert taken(home, exported(phone.id))[0] == Rescued(used=9, photos=2)
    assert jobs(home) == set(JOBS)


def test_a_second_time_everything_is_known(home: Home, exported: Exporter) -> None:
    file = exported("stranger")
    taken(home, file)
    assert taken(home, file)[0] == Rescued(known=9, photos_known=2)


def test_it_comes_in_the_same_as_if_the_phone_had_sent_it(home: Home, tmp_path: Path, exported: Exporter) -> None:
    """What the wire would have brought, and what the file brings, folds alike."""
    phone = home.pair()
    file = exported(phone.id)
    texts = [item.entry for item in items(file) if item.entry is not None]
    other = Home(tmp_path / "other")
    with other.database.write() as session:
        session.add(DeviceRow(garage=other.garage, id=phone.id, name="", token_hash="x", paired_at="", last_seen=""))
    taken(other, file)
    phone.push(*texts)
    assert pulled(home) == pulled(other)


def pulled(home: Home) -> list[Any]:
    device: Device = home.pair()
    return [(row["text"], row["aside"]) for row in device.pull().json["entries"]]


def test_the_head_says_whose_it_is(home: Home, exported: Exporter) -> None:
    file = exported("phone-x", photos=0)
    assert is_app_export(file)
    head = head_of(file)
    assert (head.garage, head.name, head.device) == (home.garage, "Garage — “ours”", "phone-x")
    assert not is_app_export(ROOT / "fixtures" / "demo" / "parts.csv")


def test_an_export_of_another_garage_goes_only_into_an_empty_one(
    home: Home, tmp_path: Path, exported: Exporter
) -> None:
    file = exported("phone-x", photos=0)
    other = Home(tmp_path / "other")
    assert taken(other, file)[0].aside == 7
    full = Home(tmp_path / "full")
    phone = full.pair()
    phone.push(entry("j1", {"name": "x"}, device=phone.id))
    with pytest.raises(TarebookError) as refusal:
        taken(full, file)
    assert refusal.value.code == "export_other_garage"
    assert jobs(full) == {"x"}


def lines_of(file: Path) -> list[str]:
    return file.read_text(encoding="utf-8").splitlines()


def test_a_file_cut_short_gives_what_came_before(home: Home, exported: Exporter) -> None:
    file = exported("phone-x")
    whole = file.read_bytes()
    for part in (0.5, 0.9, 0.999):
        file.write_bytes(whole[: int(part * len(whole))])
        _done, bad = taken(home, file)
        assert bad[-1].fault == "export_cut_short"
    assert len(reasons(home)) == 9
    file.write_bytes(whole[:40])
    with pytest.raises(TarebookError) as refusal:
        taken(home, file)
    assert refusal.value.code == "export_unreadable"


@pytest.mark.parametrize(
    "bad_line",
    [
        "{", '"text"', "{}", '{"text": 7}', '{"text": null}', "[" * 100_000, '{"text": "a"} {}',
        json.dumps({"text": "x" * 70_000}),
    ],
    ids=lambda line: line[:16],
)  # fmt: skip
def test_a_bad_line_is_told_and_the_others_come_in(home: Home, exported: Exporter, bad_line: str) -> None:
    file = exported("phone-x", photos=0)
    lines = lines_of(file)
    assert lines[1] == '"entries":['
    file.write_text("\n".join([*lines[:3], f"{bad_line},", *lines[3:], ""]), encoding="utf-8")
    done, bad = taken(home, file)
    assert (done.aside, done.bad) == (7, 1)
    assert [(item.line, item.fault) for item in bad] == [(4, "export_line_unreadable")]


def test_an_entry_that_is_none_is_kept_raw_and_set_aside(home: Home, exported: Exporter) -> None:
    file = exported("phone-x", photos=0)
    lines = lines_of(file)
    file.write_text("\n".join([*lines[:2], '{"text": "no entry"},', *lines[2:], ""]), encoding="utf-8")
    assert taken(home, file)[0].aside == 8
    assert sorted(reasons(home)) == ["stranger"] * 7 + ["unreadable"]


def forged(file: Path, change: Any) -> None:
    """The export with each photo's row changed."""
    lines = lines_of(file)
    start = lines.index('"photo_bytes":[') + 1
    for number in range(start, len(lines)):
        row, end = json.JSONDecoder().raw_decode(lines[number])
        lines[number] = json.dumps({**row, **change(row)}) + lines[number][end:]
    file.write_text("\n".join([*lines, ""]), encoding="utf-8")


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (lambda row: {"sha256": "0" * 64}, "export_photo_damaged"),
        (lambda row: {"base64": row["base64"][:-8]}, "export_photo_damaged"),
        (lambda row: {"base64": "*" + row["base64"]}, "export_photo_damaged"),
        (lambda row: {"base64": None}, "export_photo_damaged"),
        (lambda row: {"type": "image/png"}, "photo_wrong_type"),
        (
            lambda row: {"base64": base64.b64encode(b"no picture").decode(), "sha256": sha(b"no picture")},
            "photo_not_an_image",
        ),
    ],
)
def test_a_photo_that_is_not_what_it_says_stays_out(home: Home, exported: Exporter, change: Any, code: str) -> None:
    file = exported("phone-x", photos=1)
    forged(file, change)
    done, bad = taken(home, file)
    assert (done.photos, done.aside) == (0, 8)
    assert [item.fault for item in bad] == [code]
    assert not [path for path in home.settings.photos.rglob("*") if path.is_file()]


def test_with_strict_one_bad_line_keeps_all_of_it_out(home: Home, exported: Exporter) -> None:
    file = exported("phone-x", photos=1)
    forged(file, lambda row: {"sha256": "0" * 64})
    with pytest.raises(TarebookError) as refusal:
        taken(home, file, strict=True)
    assert refusal.value.code == "import_strict"
    assert reasons(home) == []


def test_a_newer_apps_export_is_refused(home: Home, exported: Exporter) -> None:
    file = exported("phone-x", photos=0)
    file.write_text(file.read_text(encoding="utf-8").replace('"version":1', '"version":2'), encoding="utf-8")
    with pytest.raises(TarebookError) as refusal:
        taken(home, file)
    assert refusal.value.code == "export_newer"


def test_the_command_says_what_came_in_and_where_to_look(home: Home, exported: Exporter, capsys: Any) -> None:
    file = exported("phone-x", photos=1)
    forged(file, lambda row: {"type": "image/png"})
    assert main(["import", str(file), "--data", str(home.settings.data)]) == 0
    told = capsys.readouterr()
    assert told.out == (
        "0 records taken in, 8 set aside, 0 known already.\n"
        "0 photos taken in, 0 known already. 1 lines not readable.\n"
        "What is set aside stands in the app under Records: look at it there, and take it in or leave it.\n"
    )
    assert told.err.endswith(": This picture is image/jpeg, not image/png. Choose it again.\n")


def test_the_receipts_in_a_file_bring_back_what_was_accepted_once(home: Home, tmp_path: Path) -> None:
    one = home.pair()
    accepted, new = (entry(name, {"name": name}, device=one.id) for name in ("accepted", "new"))
    (told,) = one.push(accepted).json["results"]
    other = Home(tmp_path / "other")
    with home.database.read() as here, other.database.write() as there:
        key = garages.get(here, home.garage).receipt_key
        garages.get(there, other.garage).receipt_key = key
    head = json.dumps({"format": "tarebook-takeout", "version": 1, "garage": "g", "name": "", "device": one.id})[:-1]
    rows = [{"text": accepted, "receipt": told["receipt"]}, {"text": new, "receipt": told["receipt"]}]
    lines = ",\n".join(json.dumps(row) for row in rows)
    file = tmp_path / "export.json"
    file.write_text(f'{head},\n"entries":[\n{lines}],\n"photo_bytes":[\n]}}\n', encoding="utf-8")
    assert taken(other, file)[0] == Rescued(used=1, aside=1)
    assert jobs(other) == {"accepted"}
    assert [row.get("sent_by") for row in other.pair().pull().json["entries"]] == [None, "home"]
