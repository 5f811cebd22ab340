"""A door page over an authority in a folder of its own, without a socket."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from tarebook.devices import authority
from tarebook.devices.origin import Origin
from tarebook.door import app

HOME = "192.168.1.20"


@dataclass
class Door:
    """What the page is about, and someone who asks it under an address of a home network."""

    folder: Path
    origin: Origin
    client: Any

    def get(self, path, host=f"{HOME}:8080", **more):
        return self.client.get(path, headers={"Host": host}, **more)

    def certificate(self):
        return authority.load_certificate(self.folder)


@pytest.fixture
def door(tmp_path):
    authority.make(tmp_path, "tarebook.local")
    origin = Origin("tarebook.local", 8443)
    return Door(tmp_path, origin, app.build(tmp_path, origin, 8080, (HOME, "fd12::5")).test_client())
