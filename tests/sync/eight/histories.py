"""Random histories of real phones and the real server under one seeded scheduler; the seeds of what is found."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from tests.machine import ROOT
from tests.sync.eight import Outcome


def run(_folder: Path, seed: int, steps: int) -> Outcome:
    """Worlds from that seed on, in a process of its own, as it owns clock and chance."""
    command = [sys.executable, "-m", "tests.sync.simulation", "--seed", str(seed), "--steps", str(steps)]
    ended = subprocess.run(command, cwd=ROOT, text=True, stdout=subprocess.PIPE, check=False)
    assert ended.returncode == 0, ended.stdout[-3000:]
    closing = re.search(r"^(\d+) steps in (\d+) worlds", ended.stdout, re.MULTILINE)
    assert closing, ended.stdout[-3000:]
    counts = re.findall(r"^ +(\d+) (.+)$", ended.stdout, re.MULTILINE)
    found = Outcome()
    found.did.update({"steps": int(closing[1]), "worlds": int(closing[2])})
    found.did["moves and faults of each kind, at the least"] = min(int(count) for count, _kind in counts)
    return found
