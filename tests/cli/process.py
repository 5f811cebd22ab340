"""Runs the command line as people do: a process of its own."""

import os
import subprocess
import sys
import urllib.error
import urllib.request
from contextlib import contextmanager

COMMAND = [sys.executable, "-m", "tarebook"]


def environment(**more):
    """This machine's, without a screen, so that no browser opens."""
    hidden = ("DISPLAY", "WAYLAND_DISPLAY")
    return {**{name: value for name, value in os.environ.items() if name not in hidden}, **more}


def run(*arguments, stdin=None, **env):
    command = [*COMMAND, *map(str, arguments)]
    return subprocess.run(command, input=stdin, capture_output=True, text=True, env=environment(**env), timeout=120)


@contextmanager
def serving(*arguments, **env):
    """(process, the lines it printed) of a server that answers; killed at the end if it is still there."""
    command = [*COMMAND, "serve", *map(str, arguments)]
    pipes = {"stdout": subprocess.PIPE, "stderr": subprocess.PIPE, "text": True}
    process = subprocess.Popen(command, env=environment(**env), start_new_session=True, **pipes)
    try:
        lines = []
        while line := process.stdout.readline():
            lines.append(line)
            if line.startswith("Ctrl-C"):
                break
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
