"""`tarebook import` takes what `tarebook export` wrote, both forms: what is exported again is the same."""

import json
import zipfile

import pytest

from tarebook.demo.scenario import fill
from tarebook.store.photos import Photos
from tests.home import Home, entry


@pytest.fixture
def written(tmp_path, tarebook):
    """The demo with work of a paired phone and of a stranger; writes it out in a form."""

    def write(form):
        home = Home(tmp_path / "data")
        fill(home.database, home.garage, Photos(home.settings, home.database))
        phone = home.pair()
        phone.push(entry("j-new", {"name": "From a phone"}, device=phone.id))
        phone.push(entry("j-strange", {"name": "A stranger's"}, device="nobody"))
        home.close()
        file = tmp_path / f"out.{form}"
        assert tarebook("export", "--format", form, file).code == 0
        return file

    return write


def everything(file):
    if zipfile.is_zipfile(file):
        with zipfile.ZipFile(file) as archive:
            inside = {name: archive.read(name) for name in archive.namelist()}
        return {**inside, "garage.json": without_epoch(inside["garage.json"])}
    return without_epoch(file.read_bytes())


def without_epoch(text):
    read = json.loads(text)
    del read["export"]["epoch"]
    return read


@pytest.mark.parametrize("form", ["json", "zip"])
def test_what_was_exported_comes_back_identically(written, tarebook, tmp_path, monkeypatch, form):
    file = written(form)
    monkeypatch.setenv("TAREBOOK_DATA", str(tmp_path / "elsewhere"))
    asked = tarebook("import", file)
    assert (asked.code, "nobody has said yes" in asked.err) == (1, True)
    assert tarebook("import", "--yes", file).code == 0
    assert tarebook("export", "--format", form, tmp_path / f"again.{form}").code == 0
    assert everything(tmp_path / f"again.{form}") == everything(file)
    again = tarebook("import", "--yes", file)
    assert again.out.splitlines()[-2].startswith("0 records taken in, 0 set aside, ")


def test_all_of_one_garage_does_not_go_into_another(written, tarebook, tmp_path, monkeypatch):
    file = written("json")
    sheet = tmp_path / "parts.csv"
    sheet.write_text("part,off\nJack,7 lb\n", encoding="utf-8")
    monkeypatch.setenv("TAREBOOK_DATA", str(tmp_path / "elsewhere"))
    tarebook("import", "--yes", sheet)
    ended = tarebook("import", "--yes", file)
    assert (ended.code, "is of another garage" in ended.err) == (1, True)


def test_a_backup_is_told_from_an_export(written, tarebook, tmp_path):
    written("json")
    tarebook("backup", tmp_path / "backup.zip")
    ended = tarebook("import", "--yes", tmp_path / "backup.zip")
    assert (ended.code, "is a backup" in ended.err) == (1, True)


@pytest.mark.parametrize(
    "text", ['{\n "export": {', '{\n "export": {}}', '{\n "export": {"garage": "g"}, "entries": [7]}']
)
def test_an_export_cut_short_or_spoilt_is_one_sentence(tarebook, tmp_path, text):
    (tmp_path / "out.json").write_text(text, encoding="utf-8")
    ended = tarebook("import", "--yes", tmp_path / "out.json")
    assert (ended.code, ended.err.count("\n"), "is cut short" in ended.err) == (1, 1, True)
