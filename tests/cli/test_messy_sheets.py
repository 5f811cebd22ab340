"""Twelve messy spreadsheets: every line's fate told, the sum equal to the truth; corrected, imported again, undone."""

import json
from random import Random
from time import perf_counter
from types import SimpleNamespace

import pytest

from tests.importing.fates import fates_in, lines_told
from tests.importing.messy import ALL

_SECONDS = 120  # for five thousand entries on a busy machine; measured: 9


@pytest.fixture
def removed(tarebook):
    """What came off, all in all, in kg, as the report has it."""

    def read():
        said = json.loads(tarebook("report", "--format", "json").out)["standing"]["removed"]
        return said["value"] if said else 0

    return read


@pytest.fixture
def backups(monkeypatch):
    """How many backups were asked for. Making them, which `test_import_again` looks at, would take most of the time."""
    asked = []

    def back_up(_settings, _database, now):
        asked.append(now)
        return SimpleNamespace(file=f"backup {len(asked)}")

    monkeypatch.setattr("tarebook.store.backup.back_up_daily", back_up)
    return asked


@pytest.mark.parametrize("write", ALL, ids=lambda write: write.__name__)
def test_a_messy_sheet_loses_nothing_in_silence(tarebook, tmp_path, removed, backups, write):
    sheet = write(Random(10))
    path = tmp_path / sheet.name
    path.write_bytes(sheet.encoded())

    began = perf_counter()
    ended = tarebook("import", "--yes", path)
    assert perf_counter() - began < _SECONDS
    wanted = {fate: numbers for fate, numbers in sheet.fates.items() if numbers}
    assert fates_in(ended.out) == {fate: len(numbers) for fate, numbers in wanted.items()}, ended.out
    for fate in wanted.keys() - {"taken", "same"}:
        if "…" not in ended.out:
            assert lines_told(ended.out, fate) == wanted[fate]
    assert {int(line.split()[1].strip(":,")) for line in ended.err.splitlines()} == sheet.fates["bad"]
    assert f": {sheet.told()} read" in ended.out
    assert "not the sum" not in ended.out
    assert f"no such column is known: {sheet.unknown}" in ended.out if sheet.unknown else "no such" not in ended.out
    assert removed() == pytest.approx(float(sheet.kg), rel=1e-12)

    corrected, kg, lines = sheet.corrected()
    path.write_bytes(corrected)
    ended = tarebook("import", "--yes", path)
    assert fates_in(ended.out).get("corrected") == 2
    assert lines_told(ended.out, "corrected") == lines
    assert removed() == pytest.approx(float(kg), rel=1e-12)

    ended = tarebook("import", "--yes", path)
    assert fates_in(ended.out)["same"] == len(sheet.fates["taken"])
    assert ended.out.endswith("There is nothing new in it.\n")

    tarebook("import", "--undo", path)
    assert removed() == pytest.approx(float(sheet.kg), rel=1e-12)
    tarebook("import", "--undo", path)
    assert removed() == 0
    assert len(backups) == 3  # all but the first import found something to lose
