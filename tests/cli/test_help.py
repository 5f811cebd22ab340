"""Every command explains itself, quickly, and is never rude about a mistake."""

import subprocess
import sys

import pytest

from tarebook.cli.arguments import COMMANDS
from tarebook.version import __version__

HEAVY = ("flask", "sqlalchemy", "pint", "PIL", "gunicorn", "marshmallow", "numpy")


def test_the_version_is_the_packages(tarebook):
    assert tarebook("--version").out == f"tarebook {__version__}\n"


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help_with_examples(tarebook, command):
    ended = tarebook(command, "--help")
    assert ended.code == 0
    assert f"examples:\n  tarebook {command}" in ended.out
    assert max(map(len, ended.out.splitlines())) <= 120


def test_the_overview_names_every_command(tarebook):
    out = tarebook("--help").out
    assert all(f"    {command}" in out for command in COMMANDS)


def test_help_and_version_load_nothing_heavy():
    build = "import sys; from tarebook.cli.arguments import build_parser; build_parser()"
    code = f"{build}; print([name for name in {HEAVY} if name in sys.modules])"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True).stdout == "[]\n"


@pytest.mark.parametrize(
    "typed", ["", "fly", "serve --port 70000", "report --format pdf", "import", "devices forget", "devices revoke"]
)
def test_wrong_usage_is_told_apart_from_a_refusal_by_code_2(tarebook, typed):
    ended = tarebook(*typed.split())
    assert ended.code == 2
    assert "usage: tarebook" in ended.err


@pytest.mark.parametrize("command", ["report", "export x.json", "rebuild", "pair", "devices"])
def test_a_garage_that_is_not_there_is_one_sentence(tarebook, command, tmp_path):
    ended = tarebook(*command.split())
    assert ended.code == 1
    assert ended.err == (
        f"tarebook: There is no garage in the folder {tmp_path / 'data'} yet. "
        "Start one with tarebook serve, or name its folder with --data.\n"
    )


def test_a_fault_of_the_programs_own_is_a_sentence_and_a_file(tarebook, monkeypatch, tmp_path):
    def fail(*_arguments):
        raise ZeroDivisionError("division by zero")

    monkeypatch.setattr("tempfile.tempdir", str(tmp_path))
    monkeypatch.setattr("tarebook.papers.report.report", fail)
    ended = tarebook("report", "--demo")
    assert ended.code == 1
    assert ended.err.startswith("tarebook: Tarebook met a fault of its own: division by zero.")
    written = ended.err.rstrip(".\n").rsplit(" ", 1)[1]
    with open(written, encoding="utf-8") as file:
        assert "ZeroDivisionError" in file.read()
