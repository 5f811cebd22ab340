"""The OpenAPI document at its word: requests are made from it, and the answers have to be as it says."""

from __future__ import annotations

from typing import Any

import schemathesis
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
    unsupported_method,
)

from tests.home import Home

CHECKS = [
    not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance,
    unsupported_method,
]  # fmt: skip


class Served:
    """The application, put in when there is one: the tests are named before."""

    app: Any = None

    def __call__(self, *request: Any) -> Any:
        return self.app(*request)


served = Served()


def operations(document: dict[str, Any]) -> Any:
    """What a test is parametrised with: every operation of the document."""
    read = schemathesis.openapi.from_dict(document)
    read.app, read.location = served, "/api/v1/openapi.json"
    return read


def answers_as_documented(case: Any, home: Home, headers: dict[str, str]) -> None:
    """No fault, and nothing in the answer that the document does not say."""
    served.app = home.app
    case.call_and_validate(headers=headers, checks=CHECKS)
