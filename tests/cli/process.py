"""Runs the command line as people do: a process of its own."""

import os
import subprocess
import sys
import urllib.error
import urllib.request
from contextlib import contextmanager
from subprocess import PIPE

COMMAND = [sys.executable, "-m", "tarebook"]


def environment(**more):
    """This machine's, without a screen, so that no browser opens."""
    hidden = ("DISPLAY", "WAYLAND_DISPLAY")
    return {**{name: value for name, value in os.environ.items() if name not in hidden}, **more}


def run(*arguments, stdin=None, **env):
    command = [*COMMAND, *map(str, arguments)]
    pipes = {"input": stdin, "capture_output": True, "encoding": "utf-8"}
    return subprocess.run(command, env=environment(**env), timeout=120, **pipes)


@contextmanager
def serving(*arguments, altered="", **env):
    """(process, the lines it printed) of a server that answers; killed at the end if it is still there.

    `altered`: a statement run before the program, for what no setting changes.
    """
    begun = [sys.executable, "-c", f"{altered}; from tarebook.cli import main; main()"] if altered else COMMAND
    command = [*begun, "serve", *map(str, arguments)]
    process = subprocess.Popen(
        command, env=environment(**env), start_new_session=True, stdout=PIPE, stderr=PIPE, encoding="utf-8"
    )
    assert process.stdout
    try:
        lines = []
        while (line := process.stdout.readline()) and not line.startswith("Ctrl-C"):
            lines.append(line)
        yield process, "".join(lines)
    finally:
        if process.poll() is None:
            process.kill()
        process.communicate()


def status_of(url, **headers):
    """(status, body) of a GET."""
    try:
        with urllib.request.urlopen(urllib.request.Request(url, headers=headers), timeout=30) as answer:
            return answer.status, answer.read()
    except urllib.error.HTTPError as refused:
        return refused.code, refused.read()
