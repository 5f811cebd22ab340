"""Builds the web app when the Python package is built, so that `pip install .` is all anyone needs.

Without a usable Node on PATH pip is asked to bring one into its own build environment.
"""

import sys
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

sys.path.insert(0, str(Path(__file__).parent))
from build_app import build_if_changed, is_current
from find_node import NODE_WHEEL, node_on_path


class WebAppHook(BuildHookInterface[Any]):
    """hatchling calls `dependencies` before the build and `initialize` inside it."""

    def dependencies(self) -> list[str]:
        """What pip must bring for this build: a Node, when one is needed and none is here."""
        return [] if is_current() or node_on_path() else [NODE_WHEEL]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build the app unless it is already built from these sources."""
        build_if_changed()
