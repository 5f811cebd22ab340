"""Every command the README shows does what it says.

The `sh` blocks are run as scripts, in the README's order, in one folder with the fixtures at hand. The two lines that
make a virtual environment are what runs these tests in the first place; lines that serve are only checked for options
the command line has.
"""

import re
import shlex
import subprocess
from pathlib import Path

import pytest

from tarebook.cli.arguments import build_parser
from tests.cli.process import COMMAND, environment

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```sh\n(.*?)^```", README, re.MULTILINE | re.DOTALL)
SHOWN = re.compile(r"(?:^|`|&& |\| |bin/)tarebook ([a-z][^`\n|&<>]*)", re.MULTILINE)


@pytest.fixture
def folder(tmp_path):
    """A folder where `tarebook` and `.venv/bin/tarebook` are this program."""
    (tmp_path / ".venv" / "bin").mkdir(parents=True)
    command = tmp_path / ".venv" / "bin" / "tarebook"
    command.write_text(f'#!/bin/sh\nexec {shlex.join(COMMAND)} "$@"\n')
    command.chmod(0o755)
    (tmp_path / "fixtures").symlink_to(ROOT / "fixtures")
    return tmp_path


def runs(line):
    return "pip install" not in line and "tarebook serve" not in line


def test_every_block_of_commands_runs(folder):
    path = f"{folder / '.venv' / 'bin'}:{environment()['PATH']}"
    for block in BLOCKS:
        script = "\n".join(line for line in block.splitlines() if runs(line))
        ended = subprocess.run(
            ["sh", "-e", "-c", script], cwd=folder, env=environment(PATH=path, TAREBOOK_DATA=str(folder / "data")),
            capture_output=True, text=True, timeout=300,
        )  # fmt: skip
        assert ended.returncode == 0, f"{script}\n{ended.stdout}\n{ended.stderr}"


def test_every_command_shown_is_one_the_program_has():
    shown = [command.strip() for command in SHOWN.findall(README)]
    assert "serve --demo" in shown
    for command in shown:
        build_parser().parse_args(shlex.split(command))
