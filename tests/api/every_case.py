"""`pytest tests/api/every_case.py`: each computation is asked for the edges of all it takes, and for much at random.

It takes minutes, so it is no part of every run, which deals the same edges out among the computations.
"""

from __future__ import annotations

from typing import Any

from hypothesis import HealthCheck, settings

from tarebook.api.app import openapi_document
from tests.api.documented import answers_as_documented, operations
from tests.home import Home

DOCUMENT = operations(openapi_document())


@DOCUMENT.parametrize()
@settings(max_examples=100, suppress_health_check=list(HealthCheck), deadline=None)
def test_no_request_whatever_makes_a_fault_and_answers_are_as_documented(
    lasting_home: Home, headers: dict[str, str], case: Any
) -> None:
    answers_as_documented(case, lasting_home, headers)
