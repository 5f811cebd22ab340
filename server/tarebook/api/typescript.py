"""What a phone asks and is answered, as TypeScript types made from the OpenAPI document."""

import json
import re
from collections.abc import Collection, Iterator, Mapping
from typing import Any

from tarebook.api.answers import API

Schema = Mapping[str, Any]
_NOT_ASKED = {"calc", "report"}  # a phone reckons by itself
_PLAIN = {"string": "string", "integer": "number", "number": "number", "boolean": "boolean", "null": "null"}
_REFERENCE = re.compile(r'"#/components/schemas/(\w+)"')


def routes_ts(document: Schema) -> str:
    """A type for each schema, and the table of routes: `"POST /pair": { json: Pair; answer: Paired | Waiting }`."""
    routes, schemas = dict(_routes(document["paths"])), document["components"]["schemas"]
    reached = _reached(routes, schemas)
    types = "".join(f"export type {name} = {type_of(schemas[name])};\n" for name in schemas if name in reached)
    rows = "".join(f'  "{route}": {type_of(sides)};\n' for route, sides in routes.items())
    return f"{types}\n/** What each route takes, and answers in JSON. */\nexport type Routes = {{\n{rows}}};\n"


def type_of(schema: Schema) -> str:
    """The type of what a JSON schema allows. Raises KeyError for a word it does not know."""
    if "$ref" in schema:
        return str(schema["$ref"]).rpartition("/")[2]
    if "anyOf" in schema:
        return " | ".join(dict.fromkeys(type_of(each) for each in schema["anyOf"]))
    if "enum" in schema:
        return " | ".join(json.dumps(each) for each in schema["enum"])
    kinds = schema["type"] if isinstance(schema["type"], list) else [schema["type"]]
    return " | ".join(_of_kind(kind, schema) for kind in kinds)


def _of_kind(kind: str, schema: Schema) -> str:
    if kind == "array":
        item = type_of(schema["items"])
        return f"readonly ({item})[]" if " | " in item else f"readonly {item}[]"
    if kind != "object":
        return _PLAIN[kind]
    if "properties" not in schema:
        return "Record<string, unknown>"
    required = schema.get("required", ())
    named = (f"{name}{'' if name in required else '?'}: {type_of(each)}" for name, each in schema["properties"].items())
    return f"{{ {'; '.join(named)} }}"


def _routes(paths: Schema) -> Iterator[tuple[str, Schema]]:
    """By method and path, of every route that answers in JSON, what it takes and answers."""
    for path, item in paths.items():
        within = _named(item.get("parameters", ()), "path")
        for method, operation in item.items():
            if method == "parameters" or not _NOT_ASKED.isdisjoint(operation["tags"]):
                continue
            told = (_json(each) for status, each in operation["responses"].items() if status < "3")
            answers = [each for each in told if each]
            if answers:
                sides = {**within, **_query(operation), **_body(operation), "answer": {"anyOf": answers}}
                yield f"{method.upper()} {path.removeprefix(API)}", _object(sides, required=sides)


def _query(operation: Schema) -> Schema:
    asked = _named(operation.get("parameters", ()), "query")
    return {"query": _object(asked, required=())} if asked else {}


def _body(operation: Schema) -> Schema:
    body = _json(operation.get("requestBody", {}))
    return {"json": body} if body else {}


def _named(parameters: Collection[Schema], where: str) -> dict[str, Schema]:
    return {each["name"]: each["schema"] for each in parameters if each["in"] == where}


def _json(part: Schema) -> Any:
    return part.get("content", {}).get("application/json", {}).get("schema")


def _object(properties: Schema, required: Collection[str]) -> Schema:
    return {"type": "object", "properties": properties, "required": required}


def _reached(start: Schema, schemas: Schema) -> set[str]:
    """The names of all schemas that are referred to, here or by one another."""
    reached: set[str] = set()
    todo = [start]
    while todo:
        new = set(_REFERENCE.findall(json.dumps(todo.pop()))) - reached
        reached |= new
        todo += [schemas[name] for name in new]
    return reached
