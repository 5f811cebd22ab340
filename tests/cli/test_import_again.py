"""A sheet that comes again: the same lines, corrected ones, and an import taken back."""

import json
import re

import pytest

from tarebook.garage.intake import StoredFold
from tests.home import Home, entry
from tests.importing.fates import fates_in

HEADER = "part;zone;off (kg);qty;notes"


@pytest.fixture
def take(tarebook, tmp_path):
    def run(*lines, header=HEADER, said=("--yes",), name="parts.csv"):
        path = tmp_path / name
        path.write_text("\n".join([header, *lines, ""]), encoding="utf-8")
        return tarebook("import", *said, path)

    return run


@pytest.fixture
def garage(tarebook, tmp_path):
    """The records that stand, as `tarebook export` writes them."""

    def read():
        tarebook("export", tmp_path / "out.json")
        everything = json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))
        return {kind: records for kind, records in everything.items() if kind not in ("export", "entries")}

    return read


@pytest.fixture
def home_of(tmp_path):
    """Lets a phone say something of a record, having seen all there is."""

    def say(record, kind, fields, base=None):
        home = Home(tmp_path / "data")
        phone = home.pair()
        seen = base if base is not None else heads(home, record)
        pushed = phone.push(entry(record, fields, base=tuple(seen), kind=kind, device=phone.id))
        assert [result["state"] for result in pushed.json["results"]] == ["accepted"]
        home.close()

    return say


def heads(home, record):
    with home.database.read() as session:
        found = StoredFold(session, home.garage).fetch_record(record)
        return found.heads if found else []


def claims(records):
    return {part["name"]: part["claim"] for part in records["parts"]}


def test_without_a_yes_nothing_is_taken_in(take, garage):
    ended = take("Jack;boot;7,5;1;", said=())
    assert ended.code == 1
    assert fates_in(ended.out) == {"taken": 1, "heading": 1}
    assert "nobody has said yes" in ended.err
    assert garage()["parts"] == []


@pytest.mark.parametrize(("answer", "parts"), [("y", 1), ("n", 0), ("", 0)])
def test_on_a_terminal_it_asks(take, garage, monkeypatch, answer, parts):
    monkeypatch.setattr("sys.stdin.isatty", lambda: True)
    monkeypatch.setattr("builtins.input", lambda _question: answer)
    take("Jack;boot;7,5;1;", said=())
    assert len(garage()["parts"]) == parts


def test_a_corrected_line_replaces_the_one_it_corrects_and_says_so(take, garage):
    take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;")
    before = garage()
    asked = take("Jack;boot;7,25;2;bent", "Hook;tail;1,9;1;", said=())
    assert fates_in(asked.out) == {"corrected": 1, "same": 1, "heading": 1}
    assert "line 2, Jack: off 7.5 kg → 7.25 kg, pieces nothing → 2, note nothing → bent" in asked.out
    assert garage() == before
    assert fates_in(take("Jack;boot;7,25;2;bent", "Hook;tail;1,9;1;").out) == {"corrected": 1, "same": 1, "heading": 1}
    after = garage()
    assert claims(after) == {"Jack": "7.25 kg", "Hook": "1.9 kg"}
    assert [job["id"] for job in after["jobs"]] == [job["id"] for job in before["jobs"]]
    again = take("Hook;tail;1,9;1;", "Jack;boot;7,25;2;bent")
    assert fates_in(again.out) == {"same": 2, "heading": 1}


def test_a_backup_stands_before_what_has_something_to_lose(take, tarebook, tmp_path):
    assert "backup" not in take("Jack;boot;7,5;1;").out
    before = tarebook("export", "-").out
    told = take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;").out
    [file] = re.findall("The backup before it: (.*)", told)
    tarebook("restore", file, "--phones", "all", "--data", tmp_path / "elsewhere")
    assert (
        json.loads(tarebook("export", "-", "--data", tmp_path / "elsewhere").out)["entries"]
        == json.loads(before)["entries"]
    )


def test_of_several_alike_the_equal_ones_are_the_same_and_the_rest_is_corrected(take, garage):
    take("Bolt;nose;0,01;1;", "Bolt;nose;0,02;1;", "Bolt;nose;0,03;1;")
    ended = take("Bolt;nose;0,03;1;", "Bolt;nose;0,02;1;", "Bolt;nose;0,04;1;", "Bolt;nose;0,05;1;")
    assert fates_in(ended.out) == {"same": 2, "corrected": 1, "taken": 1, "heading": 1}
    assert sorted(part["claim"] for part in garage()["parts"]) == ["0.02 kg", "0.03 kg", "0.04 kg", "0.05 kg"]


def test_a_second_thing_of_the_same_name_comes_in_beside_the_first_when_told_so(take, garage):
    take("Seat;cabin front;9,5;1;")
    take("Seat;cabin front;9,7;1;", said=("--yes", "--beside"))
    assert sorted(part["claim"] for part in garage()["parts"]) == ["9.5 kg", "9.7 kg"]


def test_one_import_is_taken_back_as_one(take, garage, tarebook):
    take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;")
    first = garage()
    take("Jack;boot;7,25;1;", "Hook;tail;1,9;1;", "Mat;;3,1;1;")
    assert tarebook("import", "--undo", "parts.csv").code == 0
    restored = garage()
    for part in restored["parts"]:
        assert part in first["parts"]
    assert {kind: len(records) for kind, records in restored.items()} == {kind: len(r) for kind, r in first.items()}
    tarebook("import", "--undo", "parts.csv")
    assert not any(garage().values())
    assert tarebook("import", "--undo", "parts.csv").code == 1
    assert fates_in(take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;").out) == {"taken": 2, "heading": 1}
    assert claims(garage()) == claims(first)


def test_a_line_that_a_person_has_deleted_stays_deleted(take, garage, home_of):
    take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;")
    [jack] = [job for job in garage()["jobs"] if job["name"] == "Jack"]
    home_of(jack["id"], "job", {"deleted": True})
    ended = take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;")
    assert fates_in(ended.out) == {"same": 2, "heading": 1}
    assert "deleted in the app since, and left so: 2" in ended.out
    assert [job["name"] for job in garage()["jobs"]] == ["Hook"]


def test_taking_back_keeps_and_tells_what_somebody_has_worked_on_since(take, garage, tarebook, home_of):
    take("Jack;boot;7,5;1;", "Hook;tail;1,9;1;", "Mat;;3,1;1;")
    ids = {part["name"]: part["id"] for part in garage()["parts"]}
    home_of(ids["Jack"], "part", {"claim": "7.4 kg"})
    home_of("w1", "weighing", {"of": ids["Hook"], "method": "direct", "shown": "1.88 kg"})
    ended = tarebook("import", "--undo", "parts.csv")
    assert "1 jobs taken back" in ended.out
    assert "Kept, as somebody has worked on them since: Jack, Hook." in ended.out
    assert claims(garage()) == {"Jack": "7.4 kg", "Hook": "1.9 kg"}


def test_a_value_nobody_has_heard_of_yet_meets_the_taking_back_as_a_conflict(take, garage, tarebook, home_of, tmp_path):
    """A phone that was away changed the part before it heard of the undo: its value is not lost."""
    take("Jack;boot;7,5;1;")
    [part] = garage()["parts"]
    home = Home(tmp_path / "data")
    seen = heads(home, part["id"])
    home.close()
    tarebook("import", "--undo", "parts.csv")
    home_of(part["id"], "part", {"claim": "7.4 kg"}, base=seen)
    with home.database.read() as session:
        record = StoredFold(session, home.garage).fetch_record(part["id"])
    assert record.values["claim"] == "7.4 kg"
    assert len(record.heads) == 2
