"""Runs the command line in this process, on a data folder of its own."""

from dataclasses import dataclass

import pytest

from tarebook.cli import main
from tests.cli import nginx


@dataclass
class Ended:
    """What one command left behind."""

    code: int
    out: str
    err: str


@pytest.fixture
def tarebook(capsysbinary, tmp_path, monkeypatch):
    monkeypatch.setenv("TAREBOOK_DATA", str(tmp_path / "data"))

    def run(*arguments):
        try:
            code = main([str(argument) for argument in arguments])
        except SystemExit as end:
            code = int(end.code or 0)
        out, err = capsysbinary.readouterr()
        return Ended(code, out.decode(), err.decode())

    return run


def pytest_terminal_summary(terminalreporter):
    if not nginx.FOUND:
        terminalreporter.write_line("Engine nginx: NOT TRIED, it is not on this machine.")
