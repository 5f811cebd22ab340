"""`tarebook calc`: JSON in, JSON out, by file or pipe; a refusal is JSON too, and exit code 1."""

import json

import pytest

from tarebook.api.calc import CALCULATIONS
from tarebook.demo import scenario
from tests.cli.process import run


@pytest.fixture
def demo_file(tmp_path):
    path = tmp_path / "garage.json"
    path.write_text(json.dumps(scenario.records()), encoding="utf-8")
    return path


def test_the_list_names_every_computation_with_what_it_is_for(tarebook):
    lines = tarebook("calc", "--list").out.splitlines()
    assert tuple(line.split()[0] for line in lines) == tuple(CALCULATIONS)
    assert all(len(line.split()) > 3 for line in lines)


def test_the_fields_of_a_computation_are_listed(tarebook):
    lines = dict(line.partition(": ")[::2] for line in tarebook("calc", "standing", "--fields").out.splitlines())
    assert {"class_sheet", "weigh_ins", "mass_unit"} <= set(lines)
    assert {"shown", "scale", "method"} <= set(lines["weighings"].split(", "))


def test_unreadable_json_is_told_with_its_line_and_column(tarebook, tmp_path):
    (tmp_path / "in.json").write_text('{"parts": [\n{"id": "a",}]}')
    error = json.loads(tarebook("calc", "ledger", tmp_path / "in.json").out)["error"]
    assert "in line 2, column 1" in error["sentence"]


@pytest.mark.parametrize("name", CALCULATIONS)
def test_every_computation_takes_the_demo(tarebook, demo_file, name):
    ended = tarebook("calc", name, demo_file)
    assert ended.code == 0
    assert isinstance(json.loads(ended.out), dict)


def test_a_pipe_gives_the_same_as_a_file(tarebook, demo_file):
    piped = run("calc", "standing", stdin=demo_file.read_text(encoding="utf-8"))
    assert (piped.returncode, piped.stderr) == (0, "")
    assert json.loads(piped.stdout) == json.loads(tarebook("calc", "standing", demo_file).out)


@pytest.mark.parametrize(
    ("name", "text", "code"),
    [
        ("tides", "{}", "calc_unknown"), ("ledger", "", "malformed_json"), ("ledger", "{", "malformed_json"),
        ("ledger", '{"parts": NaN}', "malformed_json"), ("ledger", "[" * 5000, "malformed_json"),
        ("ledger", '{"parts": 3}', "bad_input"), ("ledger", "[]", "bad_input"),
        ("ledger", '{"prats": []}', "bad_input"),
    ],
)  # fmt: skip
def test_a_refusal_is_a_sentence_in_json(tarebook, tmp_path, name, text, code):
    (tmp_path / "in.json").write_text(text)
    ended = tarebook("calc", name, tmp_path / "in.json")
    assert (ended.code, ended.err) == (1, "")
    error = json.loads(ended.out)["error"]
    assert error["code"] == code
    assert error["sentence"].endswith(".")


def test_a_file_that_is_not_there_is_a_refusal_too(tarebook, tmp_path):
    ended = tarebook("calc", "ledger", tmp_path / "none.json")
    assert (ended.code, json.loads(ended.out)["error"]["code"]) == (1, "file_unreadable")


def test_bytes_that_are_no_text_are_a_refusal_too(tarebook, tmp_path):
    (tmp_path / "in.json").write_bytes(b"\xff\xfe\x00")
    ended = tarebook("calc", "ledger", tmp_path / "in.json")
    assert (ended.code, json.loads(ended.out)["error"]["code"]) == (1, "malformed_json")
