"""The types of the routes: what the document allows, as TypeScript says it."""

import pytest

from tarebook.api.app import openapi_document
from tarebook.api.typescript import routes_ts, type_of


@pytest.mark.parametrize(
    ("schema", "said"),
    [
        ({"type": "integer", "minimum": 0}, "number"),
        ({"type": ["string", "null"], "maxLength": 3}, "string | null"),
        ({"type": "string", "enum": ["in", "out"]}, '"in" | "out"'),
        ({"anyOf": [{"$ref": "#/components/schemas/Told"}, {"type": "null"}]}, "Told | null"),
        ({"type": "array", "items": {"type": ["number", "null"]}}, "readonly (number | null)[]"),
        ({"type": "object", "additionalProperties": {}}, "Record<string, unknown>"),
        (
            {"type": "object", "properties": {"a": {"type": "boolean"}, "b": {"type": "string"}}, "required": ["a"]},
            "{ a: boolean; b?: string }",
        ),
    ],
)  # fmt: skip
def test_a_schema_is_said_in_full(schema, said):
    assert type_of(schema) == said


def test_what_is_not_known_is_not_passed_over():
    with pytest.raises(KeyError):
        type_of({"type": "tuple"})


def test_a_route_that_waits_answers_in_two_ways_and_no_computation_is_there():
    written = routes_ts(openapi_document())
    assert '"POST /pair": { json: Pair; answer: Waiting | Paired };' in written
    assert "calc" not in written.lower()
