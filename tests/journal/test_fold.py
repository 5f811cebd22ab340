"""The fold on the histories of `fixtures/journals/`, which the phone's fold must pass as well."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tarebook.journal.fold import Fold
from tarebook.journal.hanging import brought_back
from tarebook.journal.ids import raw_id
from tests.journal.older import without

JOURNALS = sorted((Path(__file__).parents[2] / "fixtures" / "journals").glob("*.json"))


def folded(history: list[dict[str, Any]]) -> Fold:
    fold = Fold()
    for row in history:
        fold.add(row["number"], row["text"], row.get("aside"))
    return fold


def as_expected(fold: Fold) -> dict[str, Any]:
    records = {
        name: {
            "kind": record.kind,
            "values": record.values,
            "conflicts": {key: [head.value for head in heads] for key, heads in record.conflicts.items()},
            "heads": record.heads,
            "deleted": record.deleted,
        }
        for name, record in fold.records.items()
    }
    return {"records": records, "aside": fold.aside()}


@pytest.mark.parametrize("path", JOURNALS, ids=lambda path: path.stem)
def test_the_history_folds_to_what_its_file_says(path: Path) -> None:
    case = json.loads(path.read_text(encoding="utf-8"))
    fold = folded(case["entries"])
    assert as_expected(fold) == case["expect"]
    assert brought_back(fold.records) == case.get("brought_back", {})


def test_a_program_that_does_not_know_a_field_keeps_it_and_folds_the_others() -> None:
    case = json.loads((JOURNALS[0].parent / "unknown_field.json").read_text(encoding="utf-8"))
    with without(case["older"]["without"]):
        assert as_expected(folded(case["entries"])) == case["older"]["expect"]


@pytest.mark.parametrize("path", JOURNALS, ids=lambda path: path.stem)
def test_a_name_given_in_a_file_is_the_hash_of_the_text(path: Path) -> None:
    rows = json.loads(path.read_text(encoding="utf-8"))["entries"]
    assert all(row["id"] == raw_id(row["text"]) for row in rows if "id" in row)


def test_every_reason_to_set_aside_occurs_in_some_file() -> None:
    seen = {reason for path in JOURNALS for reason in json.loads(path.read_text("utf-8"))["expect"]["aside"].values()}
    assert seen == {
        "unreadable",
        "newer_schema",
        "unknown_kind",
        "invalid",
        "waiting",
        "fact",
        "id_reuse",
        "stranger",
        "kind_changed",
    }
