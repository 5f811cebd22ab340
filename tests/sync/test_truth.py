"""The truth beside the simulation (`tests/sync/simulation/truth.py`): what it holds the program to, and what not."""

from __future__ import annotations

import json
from typing import Any

from tests.sync.simulation.truth import Truth

NOBODY = {"job-1": {"hours": "9"}}


def test_an_edit_that_waited_is_promised_once_a_phone_has_heard_of_what_made_it_count() -> None:
    truth = Truth()
    edit = _entry("edit", {"hours": "2"}, base=["never-came"])
    verdict = _entry("verdict", {"entry": "never-came", "take": False}, kind="verdict")
    truth.save([edit, verdict])
    truth.hear(_page(edit), counted=set())
    truth.accept(edit)
    truth.accept(verdict)
    truth.takes.clear()  # that verdict is nowhere to be found any more
    assert truth.missing(NOBODY) == []
    truth.hear({"results": [{"id": "verdict", "why": None, "receipt": "r"}]}, counted={"edit", "verdict"})
    assert [line.split()[0] for line in truth.missing(NOBODY)] == ["edit", "verdict", "verdict"]


def test_what_is_counted_on_the_last_page_is_heard_and_before_it_nothing_is() -> None:
    truth = Truth()
    edit = _entry("edit", {"hours": "2"})
    truth.accept(edit)
    truth.hear({**_page(edit), "more": True}, counted={"edit"})
    assert truth.missing(NOBODY) == []
    truth.hear({**_page(), "more": False}, counted={"edit"})
    assert truth.missing(NOBODY) == ["edit set hours of job-1 to '2', which is ['9']"]


def test_an_edit_that_is_aside_because_another_took_the_name_it_rests_on_is_not_missing() -> None:
    truth = Truth()
    made, edit = _entry("made", {"name": "Seats"}), _entry("edit", {"hours": "2"}, base=["made"])
    for text in (made, edit):
        truth.accept(text)
    truth.heard.update(truth.accepted)
    found = ["made set name of job-1 to 'Seats', which is [None]", "edit set hours of job-1 to '2', which is ['9']"]
    assert truth.missing(NOBODY, {"edit": "invalid"}) == found
    truth.save([_entry("made", {"name": "Doors"}, record="job-2")])
    assert truth.missing(NOBODY, {"edit": "invalid"}) == []
    assert truth.missing(NOBODY) == found[1:]


def _page(*texts: str) -> dict[str, Any]:
    return {"entries": [{"text": text, "aside": None, "receipt": "r"} for text in texts], "more": False}


def _entry(
    name: str, fields: dict[str, Any], base: list[str] | None = None, record: str = "job-1", kind: str = "job"
) -> str:
    where = f"{record}-verdict" if kind == "verdict" else record
    return json.dumps({"id": name, "kind": kind, "record": where, "set": fields, "base": base or []})
