"""The OpenAPI document at its word: with a valid token no request makes a fault, and answers are as documented."""

from __future__ import annotations

from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.checks import not_a_server_error
from schemathesis.specs.openapi.checks import (
    content_type_conformance,
    response_schema_conformance,
    status_code_conformance,
    unsupported_method,
)

from tarebook.api.app import openapi_document
from tests.home import Home

CHECKS = [
    not_a_server_error, status_code_conformance, content_type_conformance, response_schema_conformance,
    unsupported_method,
]  # fmt: skip


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Home:
    return Home(tmp_path_factory.mktemp("home"))


@pytest.fixture(scope="module")
def headers(home: Home) -> dict[str, str]:
    return home.pair().headers


class Served:
    """The application, put in when there is one: the tests are named before."""

    app: Any = None

    def __call__(self, *request: Any) -> Any:
        return self.app(*request)


served = Served()
document = schemathesis.openapi.from_dict(openapi_document())
document.app, document.location = served, "/api/v1/openapi.json"


@document.parametrize()
@settings(max_examples=8, suppress_health_check=list(HealthCheck), deadline=None)
def test_no_request_makes_a_fault_and_answers_are_as_documented(home: Home, headers: dict[str, str], case: Any) -> None:
    served.app = home.app
    case.call_and_validate(headers=headers, checks=CHECKS)
