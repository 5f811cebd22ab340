"""Every way a sync is known to fail, by its sentence in `tests/sync/cases.tsv`, is shown by a test that is there."""

from __future__ import annotations

import csv
import re

import pytest

from tests.machine import ROOT

CASES = list(csv.DictReader((ROOT / "tests/sync/cases.tsv").open(encoding="utf-8"), delimiter="\t"))


@pytest.mark.parametrize("case", CASES, ids=[case["case"] for case in CASES])
def test_it_is_shown(case: dict[str, str]) -> None:
    text = (ROOT / case["shown in"]).read_text(encoding="utf-8")
    name = re.escape(case["by"])
    begins = rf"^def {name}\(" if case["shown in"].endswith(".py") else rf'^ +(it\(|\[)"{name}"'
    assert re.search(begins, text, re.MULTILINE)
