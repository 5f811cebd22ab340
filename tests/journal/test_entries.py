"""Reading an entry: any text gives an entry or none, and never a fault."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.journal.entries import Entry, load_json, problem, read, well_formed
from tarebook.journal.kinds import KINDS
from tests.home import entry

json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)


@given(st.text())
def test_any_text_gives_an_entry_or_none(text: str) -> None:
    assert read(text) is None


@given(st.dictionaries(st.sampled_from([*json.loads(entry("r", {})), "schema"]), json_values))
def test_any_object_gives_an_entry_or_none(fields: dict[str, object]) -> None:
    made = read(json.dumps({**json.loads(entry("r", {"name": "x"})), **fields}))
    assert made is None or problem(made) in (None, "newer_schema", "unknown_kind", "invalid")


@given(st.sampled_from(list(KINDS)), json_values, st.data())
def test_any_value_of_any_field_fits_or_is_invalid(kind: str, value: object, data: st.DataObject) -> None:
    name = data.draw(st.sampled_from([*KINDS[kind].fields, "deleted"]))
    made = read(entry("r", {name: value}, kind=kind))
    assert made is None or problem(made) in (None, "invalid")


@pytest.mark.parametrize(
    "text",
    ["[" * 65_000, '{"a":' * 10_000, '"' * 65_000, '"\\' * 32_000 + "[" * 30, "[" * 30 + '"\\"' * 20_000, "9" * 60_000],
    ids=["brackets", "objects", "quotes", "escapes", "unclosed", "digits"],
)
def test_texts_made_to_exhaust_a_reader_do_not(text: str) -> None:
    assert read(text) is None


def test_numbers_are_those_a_browser_has() -> None:
    told = load_json("[2.0, 1e2, 9007199254740993, 1.5, -0, " + "9" * 400 + "]")
    assert told[:5] == [2, 100, 9007199254740992, 1.5, 0]
    assert [type(number) for number in told[:5]] == [int, int, float, float, int]
    assert told[5] == float("inf")


def test_an_entry_is_read_as_written() -> None:
    made = read(entry("j1", {"name": "Seats"}, ("e0",), id="e9", n=3, photos=["a" * 64]))
    assert made == Entry(
        "e9", "phone-a", "w", 3, "job", "j1", {"name": "Seats"}, ("e0",), ("a" * 64,), "2026-05-02T10:00:00Z", 1
    )


def test_lone_surrogates_become_replacement_characters_and_pairs_stay() -> None:
    assert well_formed("a\ud800b\U0001f529\udc00") == "a\ufffdb\U0001f529\ufffd"
