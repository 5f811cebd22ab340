"""What the project is built on: bounded, as it was locked, unchanged where it is installed, under licences we know.

Offline this cannot see whether a version has a known weakness: that takes an advisory database, so `pip-audit` and
`npm audit` by hand now and then. Nor who made a package: a hash says that it is as it was, not that it was good.
"""

from __future__ import annotations

import base64
import hashlib
import json
import re
import tomllib
from importlib.metadata import Distribution, distribution
from typing import Any

import pytest
from packaging.requirements import Requirement

from tests.machine import ROOT

# Free ones, of which those with "GPL" or "MPL" bind only who changes the package itself.
LICENCES = {
    "0BSD", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "CC0-1.0", "ISC", "LGPL-2.1-or-later", "LGPL-3.0-only", "MIT",
    "MIT-0", "MIT-CMU", "MPL-2.0", "PSF-2.0", "Python-2.0", "Unlicense", "Zlib",
}  # fmt: skip
CLASSIFIERS = {"MIT License", "BSD License", "Apache Software License", "Python Software Foundation License"}

PYPROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text())
PYTHON = [
    *PYPROJECT["build-system"]["requires"], *PYPROJECT["project"]["dependencies"],
    *(one for extra in PYPROJECT["project"]["optional-dependencies"].values() for one in extra),
]  # fmt: skip
PACKAGE = json.loads((ROOT / "webapp" / "package.json").read_text())
NPM: dict[str, str] = {**PACKAGE["dependencies"], **PACKAGE["devDependencies"]}
MODULES = ROOT / "webapp" / "node_modules"


def packages(file: str) -> dict[str, Any]:
    listed: dict[str, Any] = json.loads((ROOT / "webapp" / file).read_text())["packages"]
    return {name: told for name, told in listed.items() if name}


LOCKED = packages("package-lock.json")


def is_bounded(requirement: str) -> bool:
    return any(part.operator in ("<", "<=", "==", "~=") for part in Requirement(requirement).specifier)


@pytest.mark.parametrize("requirement", PYTHON)
def test_every_python_package_has_an_upper_bound(requirement: str) -> None:
    assert is_bounded(requirement)


@pytest.mark.parametrize("name", NPM)
def test_every_package_of_the_app_has_an_upper_bound(name: str) -> None:
    assert re.fullmatch(r"[~^]?\d+\.\d+\.\d+", NPM[name])


def test_an_open_range_would_be_seen() -> None:
    assert not is_bounded("flask>=3.1")
    assert not is_bounded("flask")
    assert is_bounded("flask>=3.1,<4")


def test_every_locked_package_has_its_hash_and_what_is_installed_has_the_same() -> None:
    assert len(LOCKED) > 50
    assert [name for name, told in LOCKED.items() if not told.get("integrity", "").startswith("sha512-")] == []
    installed = packages("node_modules/.package-lock.json")
    assert [name for name, told in installed.items() if told.get("integrity") != LOCKED[name]["integrity"]] == []
    said = {name: json.loads((ROOT / "webapp" / name / "package.json").read_text())["version"] for name in installed}
    assert said == {name: LOCKED[name]["version"] for name in installed}


def served() -> list[Distribution]:
    """What a server runs on: the packages of pyproject and theirs, as installed here."""
    found: dict[str, Distribution] = {}
    wanted = [Requirement(one) for one in PYPROJECT["project"]["dependencies"]]
    while wanted:
        one = wanted.pop()
        name = one.name.lower().replace("_", "-")
        if name in found or (one.marker and not one.marker.evaluate({"extra": ""})):
            continue
        found[name] = distribution(name)
        wanted += [Requirement(text) for text in found[name].requires or []]
    return list(found.values())


SERVED = served()


@pytest.mark.parametrize("package", SERVED, ids=lambda package: package.metadata["Name"])
def test_what_is_installed_is_what_its_wheel_held(package: Distribution) -> None:
    hashed = [file for file in package.files or [] if file.hash and file.suffix in (".py", ".so", ".pyd")]
    assert hashed
    for file in hashed:
        assert file.hash
        data = bytes(file.locate().read_bytes())  # type: ignore[attr-defined]
        found = base64.urlsafe_b64encode(hashlib.new(file.hash.mode, data).digest()).rstrip(b"=").decode()
        assert found == file.hash.value, file


def licences_of(package: Distribution) -> set[str]:
    if "License-Expression" in package.metadata:
        return set(re.split(r" (?:OR|AND) |[()]", package.metadata["License-Expression"])) - {""}
    return {line.split(" :: ")[-1] for line in package.metadata.get_all("Classifier") or [] if "License ::" in line}


def test_every_licence_is_known() -> None:
    assert {name for package in SERVED for name in licences_of(package)} <= LICENCES | CLASSIFIERS
    assert [package.metadata["Name"] for package in SERVED if not licences_of(package)] == []
    told = {one for each in LOCKED.values() for one in re.split(r" OR |[()]", each["license"]) if one}
    assert told <= LICENCES
