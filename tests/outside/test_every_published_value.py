"""Every value of `fixtures/outside/` is looked at by a test, or stands in `unchecked.py` with its reason."""

import json
import subprocess
import sys

import pytest

from tests.machine import ROOT
from tests.outside.published import CHECKED, all_entries, by_source, short
from tests.outside.unchecked import UNCHECKED

# Asked in a process of its own when this session runs only some of the folder.
PROGRAM = """
import json, sys, pytest
failed = pytest.main(["-q", "tests/outside", "--ignore=tests/outside/test_every_published_value.py"])
from tests.outside.published import CHECKED
json.dump({name: sorted(keys) for name, keys in CHECKED.items()}, open(sys.argv[1], "w"))
sys.exit(failed)
"""


@pytest.fixture
def checked(request, other_files, tmp_path):
    """Entry id → keys, of all tests of the folder."""
    options = request.config.option
    ran = {item.path.name for item in request.session.items}
    whole = not (options.keyword or options.markexpr or any("::" in arg for arg in request.config.args))
    if whole and other_files <= ran:
        return CHECKED
    target = tmp_path / "checked.json"
    subprocess.run([sys.executable, "-c", PROGRAM, str(target)], cwd=ROOT, check=True, timeout=240)
    return {name: set(keys) for name, keys in json.loads(target.read_text(encoding="utf-8")).items()}


def test_every_published_value_is_looked_at_by_a_test_or_has_a_reason_not_to_be(checked):
    known = {f"{entry['id']} {key}" for entry in all_entries() for key in entry["expected"]}
    looked_at = {f"{identity} {key}" for identity, keys in checked.items() for key in keys}
    assert sorted(known - looked_at - UNCHECKED.keys()) == []
    assert sorted(UNCHECKED.keys() & looked_at) == []


def test_what_is_not_checked_has_a_reason_in_words():
    assert [identity for identity, reason in UNCHECKED.items() if len(reason.split()) < 5] == []


def test_values_are_counted_by_source():
    two = {"unc.conf.table": {"0.95", "0.99"}, "unit.lb": {"kg"}}
    printed = {entry["id"]: entry for entry in all_entries()}
    found = by_source({name: set(printed[name]["expected"]) for name in two})
    sources = {short(printed[name]["source"]) for name in two}
    assert found.keys() == sources
    assert all(values >= entries >= 1 for values, entries in found.values())


@pytest.mark.parametrize(
    ("source", "name"),
    [
        ("FAA-H-8083-30B (2023), Aviation Maintenance", "FAA-H-8083-30B"),
        ("JCGM 106:2012, sources/jcgm", "JCGM 106:2012"),
        ("statics (more than three wheels)", "statics"),
    ],
)
def test_a_source_is_named_without_where_in_it_to_look(source, name):
    assert short(source) == name
