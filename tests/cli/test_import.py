"""`tarebook import` takes in what can be read, says what cannot, and never takes anything in twice."""

import json
from pathlib import Path

import pytest

from tests.importing.fates import fates_in

FIXTURES = Path(__file__).parents[2] / "fixtures" / "demo"
LONG, CLEAN = FIXTURES / "long.csv", FIXTURES / "parts.csv"


@pytest.fixture
def garage(tarebook, tmp_path):
    def read():
        assert tarebook("export", tmp_path / "out.json").code == 0
        return json.loads((tmp_path / "out.json").read_text(encoding="utf-8"))

    return read


@pytest.fixture
def sheet(tmp_path):
    def write(*lines):
        path = tmp_path / "parts.csv"
        header = "part,off,on,unit,quantity,stage,money"
        path.write_text("\n".join([header, *lines, ""]), encoding="utf-8")
        return path

    return write


def by_name(records):
    return {record["name"]: record for record in records}


def test_two_hundred_lines_with_ten_bad_ones(tarebook, garage):
    ended = tarebook("import", "--yes", LONG)
    assert ended.code == 0
    assert fates_in(ended.out) == {"taken": 190, "heading": 1, "bad": 10}
    said = [line.split(": ", 1)[0] for line in ended.err.splitlines()]
    assert said == [
        "line 17", "line 34, off", "line 51, part", "line 68, off", "line 85, off", "line 102, off", "line 119, off",
        "line 136, quantity", "line 153, money", "line 170, off",
    ]  # fmt: skip
    assert len(garage()["jobs"]) == 190
    assert tarebook("report").code == 0


def test_a_bad_line_is_told_with_what_to_type(tarebook, sheet):
    ended = tarebook("import", "--yes", sheet('Mat,"1,250 kg"'))
    assert ended.err == (
        "line 2, off: The comma in “1,250 kg” can mean two things: type 1250 kg or 1.250 kg. "
        "Write decimals with a point, like 1.25, and thousands without any mark.\n"
    )


def test_a_bad_line_steers_no_terminal(tarebook, sheet):
    ended = tarebook("import", "--yes", sheet("Seat,1 kg,,,\x1b[2J,,"))
    assert "\x1b" not in ended.err
    assert "“?[2J” is not a number of pieces" in ended.err


def test_a_report_of_our_own_is_not_taken_in_beside_the_jobs_it_tells_of(tarebook, garage, tmp_path):
    tarebook("import", "--yes", CLEAN)
    before = garage()
    report = tmp_path / "build.csv"
    report.write_text(tarebook("report", "--format", "csv").out, encoding="utf-8")
    ended = tarebook("import", "--yes", report)
    assert (ended.code, ended.out) == (1, "")
    assert "here its jobs would count twice" in ended.err
    assert garage() == before


def test_a_file_of_which_nothing_can_be_read_is_a_failure_and_says_so(tarebook, sheet):
    ended = tarebook("import", "--yes", sheet("Mat,heavy", "Hook,light"))
    assert ended.code == 1
    assert fates_in(ended.out) == {"heading": 1, "bad": 2}
    assert ended.out.endswith("There is nothing new in it.\n")


def test_strict_takes_in_nothing_when_a_line_is_bad(tarebook, garage):
    ended = tarebook("import", "--yes", "--strict", LONG)
    assert ended.code == 1
    assert ended.err.splitlines()[-1].startswith("tarebook: 10 of 201 lines cannot be read, so nothing was taken in.")
    assert garage()["jobs"] == []


def test_strict_takes_in_everything_when_all_is_well(tarebook):
    assert fates_in(tarebook("import", "--yes", "--strict", CLEAN).out) == {"taken": 13, "heading": 1}


def test_importing_twice_adds_nothing_twice(tarebook, garage):
    tarebook("import", "--yes", CLEAN)
    once = garage()
    assert fates_in(tarebook("import", "--yes", CLEAN).out) == {"same": 13, "heading": 1}
    assert garage() == once


def test_columns_in_another_order_separator_and_encoding_are_the_same_lines(tarebook, tmp_path):
    first, second = tmp_path / "a.csv", tmp_path / "b.csv"
    first.write_text("part,off,note\nHülle,7 lb,rund\n", encoding="utf-8")
    second.write_bytes("NOTE;Part;Off\r\nrund;Hülle;7 lb\r\n".encode("latin-1"))
    tarebook("import", "--yes", first)
    assert fates_in(tarebook("import", "--yes", second).out) == {"same": 1, "heading": 1}


def test_two_equal_lines_are_two_jobs(tarebook, garage, sheet):
    path = sheet("Clip,10 g", "Clip,10 g")
    tarebook("import", "--yes", path)
    assert fates_in(tarebook("import", "--yes", path).out) == {"same": 2, "heading": 1}
    assert len(garage()["jobs"]) == 2


def test_a_corrected_file_adds_only_its_corrected_lines(tarebook, garage, sheet):
    tarebook("import", "--yes", sheet("Jack,7 lb", "Mat,heavy", "Hook,4.3 lb"))
    ended = tarebook("import", "--yes", sheet("Jack,7 lb", "Mat,2 lb", "Hook,4.3 lb"))
    assert fates_in(ended.out) == {"taken": 1, "same": 2, "heading": 1}
    assert sorted(by_name(garage()["jobs"])) == ["Hook", "Jack", "Mat"]


def test_a_line_is_a_fitted_job_with_its_parts_as_typed(tarebook, garage, sheet):
    tarebook("import", "--yes", sheet("Battery,31.4 lb,9 lb 11.5 oz,,1,Swaps,189"))
    got = garage()
    off, on = by_name(got["parts"])["Battery"], by_name(got["parts"])["Battery (new)"]
    assert (off["claim"], off["claim_basis"], off["claim_from"]) == ("31.4 lb", "quoted", "parts.csv line 2")
    assert (on["claim"], on["whereabouts"], on["instead_of"]) == ("9 lb 11.5 oz", "car", off["id"])
    [job], [stage] = got["jobs"], got["stages"]
    assert (job["name"], job["state"], job["money"], job["stage"]) == ("Battery", "fitted", "189", stage["id"])
    assert {(each["part"], each["way"]) for each in got["job_parts"]} == {(off["id"], "off"), (on["id"], "on")}


def test_a_mass_below_one_is_a_mass_however_it_is_written(tarebook, garage, sheet):
    lines = ["Clip,0.823,,kg,,,5", "Cap,0.5kg,,,,,5", "Nut,.25,,lb,,,5", "Pin,,0.5 lb,kg,,,5", "Tie,½,,oz,,,5"]
    ended = tarebook("import", "--yes", sheet(*lines))
    assert fates_in(ended.out) == {"taken": 5, "heading": 1}
    claims = {name: part["claim"] for name, part in by_name(garage()["parts"]).items()}
    assert claims == {"Clip": "0.823 kg", "Cap": "0.5kg", "Nut": ".25 lb", "Pin": "0.5 lb", "Tie": "½ oz"}


def test_a_mass_that_cannot_be_read_is_told_and_its_line_stays_out_though_it_has_money(tarebook, garage, sheet):
    ended = tarebook(
        "import", "--yes", sheet('Clip,"1,823",,kg,,,5', "Cap,0.5,,,,,5", "Nut,-0.5 kg,,,,,5", "Pin,0,,kg,,,5")
    )
    assert fates_in(ended.out) == {"taken": 1, "heading": 1, "bad": 3}
    assert [line.split(": ", 1)[0] for line in ended.err.splitlines()] == ["line 2, off", "line 3, off", "line 4, off"]
    assert (len(garage()["parts"]), [job["name"] for job in garage()["jobs"]]) == (0, ["Pin"])


def test_the_mass_of_a_line_is_of_one_piece(tarebook, sheet):
    tarebook("import", "--yes", sheet("Wheel,10 kg,,,4"))
    report = json.loads(tarebook("report", "--format", "json").out)
    assert report["standing"]["removed"]["value"] == 40


def test_stages_are_found_by_name_and_made_once(tarebook, garage, sheet):
    tarebook("import", "--yes", sheet("Jack,7 lb,,,1,Strip-out", "Hook,4 lb,,,1,STRIP-OUT", "Mat,1 lb,,,1,Swaps"))
    tarebook("import", "--yes", sheet("Belt,1 lb,,,1,strip-out"))
    assert {stage["name"]: stage["rank"] for stage in garage()["stages"]} == {"Strip-out": 1, "Swaps": 2}


def test_a_file_that_is_no_sheet_is_one_sentence(tarebook, tmp_path):
    (tmp_path / "photo.csv").write_bytes(bytes(range(256)) * 40)
    ended = tarebook("import", "--yes", tmp_path / "photo.csv")
    assert ended.code == 1
    assert "has no line that names its columns" in ended.err


@pytest.mark.parametrize("name", ["none.csv", "."])
def test_a_file_that_cannot_be_read_is_one_sentence(tarebook, tmp_path, name):
    ended = tarebook("import", "--yes", tmp_path / name)
    assert (ended.code, ended.err.count("\n")) == (1, 1)
    assert "cannot be read" in ended.err


def test_progress_is_shown_on_a_terminal_only(tarebook, monkeypatch):
    assert tarebook("import", "--yes", LONG).err.startswith("line 17")
    monkeypatch.setattr("sys.stderr.isatty", lambda: True)
    assert "13 lines" in tarebook("import", "--yes", CLEAN).err


def test_a_file_of_many_thousand_lines_goes_in(tarebook, tmp_path):
    path = tmp_path / "many.csv"
    path.write_text("part,off\n" + "".join(f"Bolt {n},{n % 90 + 1} g\n" for n in range(3000)), encoding="utf-8")
    assert fates_in(tarebook("import", "--yes", path).out) == {"taken": 3000, "heading": 1}
