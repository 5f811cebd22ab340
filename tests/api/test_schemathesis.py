"""The OpenAPI document at its word: with a valid token no request makes a fault, and answers are as documented.

Every operation is asked for the edges of everything it takes, the same in each run, and for a few things at random.
The computations all take a garage, so the lists of its records are dealt out among them: the edges of each kind are
asked for once. `tests/api/every_case.py` asks each computation for all of them.
"""

from __future__ import annotations

from typing import Any

from hypothesis import HealthCheck, settings

from tarebook.api.app import openapi_document
from tests.api.documented import answers_as_documented, operations
from tests.home import Home


def lists_of_records(given: dict[str, Any]) -> set[str]:
    """Which of the things a computation takes are lists."""
    return {name for name, kind in given["properties"].items() if "$ref" in kind.get("items", {})}


def dealt_out() -> dict[str, Any]:
    """The document, with each list of records taken by one computation only."""
    document = openapi_document()
    schemas = document["components"]["schemas"]
    computations = [given for name, given in schemas.items() if name.startswith("Calc") and name.endswith("Given")]
    shared = set.intersection(*map(lists_of_records, computations))
    for turn, name in enumerate(sorted(shared)):
        for place, given in enumerate(computations):
            if place != turn % len(computations):
                del given["properties"][name]
    return document


DOCUMENT = operations(dealt_out())


@DOCUMENT.parametrize()
@settings(max_examples=8, derandomize=True, suppress_health_check=list(HealthCheck), deadline=None)
def test_no_request_makes_a_fault_and_answers_are_as_documented(
    lasting_home: Home, headers: dict[str, str], case: Any
) -> None:
    answers_as_documented(case, lasting_home, headers)
