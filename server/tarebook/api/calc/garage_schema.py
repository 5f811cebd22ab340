"""What `calc` takes: a garage as lists of plain records, every field as the table of kinds has it, and a few options.

The schemas are made from `journal/kinds`, so a field added there is taken here at once. They check shapes and
refuse what they do not know; whether a typed quantity can be read is not theirs to say: the core tells that with a
sentence and computes the rest. A mass, length or volume is a text as typed ("6 3/8 oz") or `{value, unit}`. A record
may leave out its `id` when nothing refers to it.
"""

import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from marshmallow import Schema, ValidationError, fields, pre_load, validate

from tarebook.journal.entries import TYPED_CHARACTERS
from tarebook.journal.kinds import KINDS, MASS_UNITS, Field, Kind

LISTED = 50_000  # records of one kind
_NAMED = validate.Regexp(r"^[ -~]{1,80}\Z", error="Give a name of 1 to 80 plain characters.")
_LONG = "This may have {max} characters at most."
_SENTENCES = {"unknown": "There is no such field here.", "type": "This must be an object with named fields."}


class StrictSchema(Schema):
    """Refuses what it does not know, in plain words."""

    error_messages = _SENTENCES


_NUMBER = {"type": ["string", "number"]}
_WITH_UNIT = {
    "type": "object",
    "properties": {"value": _NUMBER, "unit": {"type": "string"}},
    "required": ["value", "unit"],
    "additionalProperties": False,
}


class Typed(fields.Field[Any]):
    """A quantity as typed, or `{value, unit}`; passed on as it is."""

    def __init__(self) -> None:
        text = {"type": "string", "maxLength": TYPED_CHARACTERS}
        super().__init__(allow_none=True, metadata={"anyOf": [text, _WITH_UNIT, {"type": "null"}]})

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> Any:
        if isinstance(value, str) and len(value) <= TYPED_CHARACTERS:
            return value
        if isinstance(value, Mapping) and value.keys() == {"value", "unit"} and _is_number_with_unit(value):
            return value
        raise ValidationError('Type it with its unit, like "6 3/8 oz", or give {"value", "unit"}.')


def _is_number_with_unit(value: Mapping[str, Any]) -> bool:
    number, unit = value["value"], value["unit"]
    is_number = isinstance(number, str | int | float) and not isinstance(number, bool)
    return is_number and isinstance(unit, str) and len(f"{number} {unit}") <= TYPED_CHARACTERS


class Decimal(fields.Field[str]):
    """A plain decimal: a text ("12.50") or a number."""

    def __init__(self) -> None:
        super().__init__(allow_none=True, metadata={"anyOf": [_NUMBER, {"type": "null"}]})

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> str:
        is_number = isinstance(value, str | int | float) and not isinstance(value, bool)
        if is_number and len(str(value)) <= TYPED_CHARACTERS:
            return str(value)
        raise ValidationError('Give a plain number, like "12.50".')


class Flag(fields.Boolean):
    """True or false and nothing that could be meant so."""

    def _deserialize(self, value: Any, attr: str | None, data: Any, **kwargs: Any) -> bool:
        if not isinstance(value, bool):
            raise ValidationError("This is true or false.")
        return value


def one_of(choices: Sequence[str]) -> validate.OneOf:
    return validate.OneOf(choices, error="This must be one of: {choices}.")


def _choice(spec: Field) -> fields.Field[Any]:
    return fields.String(validate=one_of(tuple(spec.of)))


def _whole(spec: Field) -> fields.Field[Any]:
    least = 1 if spec.type == "count" else 0
    within = validate.Range(min=least, max=spec.most, error="This is a whole number from {min} to {max}.")
    return fields.Integer(strict=True, validate=within)


def _several(one: Callable[[Field], fields.Field[Any]]) -> Callable[[Field], fields.Field[Any]]:
    return lambda spec: fields.List(one(spec), validate=validate.Length(max=spec.most))


_FIELDS: dict[str, Callable[[Field], fields.Field[Any]]] = {
    "text": lambda spec: fields.String(validate=validate.Length(max=spec.most, error=_LONG)),
    "mass": lambda spec: Typed(),
    "length": lambda spec: Typed(),
    "volume": lambda spec: Typed(),
    "money": lambda spec: Decimal(),
    "hours": lambda spec: Decimal(),
    "fraction": lambda spec: Decimal(),
    "count": _whole,
    "integer": _whole,
    "flag": lambda spec: Flag(),
    "choice": _choice,
    "choices": _several(_choice),
    "ref": lambda spec: fields.String(validate=_NAMED),
    "refs": _several(lambda spec: fields.String(validate=_NAMED)),
    "moment": lambda spec: fields.String(validate=validate.Length(max=40)),
    "hash": lambda spec: fields.String(validate=validate.Regexp(r"^[0-9a-f]{64}\Z")),
}


def _record_schema(kind: Kind) -> type[Schema]:
    """The schema of one record; null is the same as left out, and `conflicts` of an export is not looked at."""
    given = {name: _FIELDS[spec.type](spec) for name, spec in kind.fields.items()}
    for field in given.values():
        field.allow_none = True
    own: dict[str, fields.Field[Any]] = {
        "id": fields.String(validate=_NAMED),
        "deleted": Flag(allow_none=True),
        "conflicts": fields.Dict(),
    }
    name = "Calc" + "".join(word.capitalize() for word in kind.name.split("_"))
    return StrictSchema.from_dict({**own, **given}, name=name)


_LISTS = {
    f"{name}s": fields.List(fields.Nested(_record_schema(kind)), validate=validate.Length(max=LISTED))
    for name, kind in KINDS.items()
}


class _Given(StrictSchema):
    """The options every computation has; the lists of records are put beside them."""

    car = fields.String(allow_none=True, metadata={"description": "Id of the car meant; by default the first."})
    trim = fields.String(allow_none=True, validate=one_of(("road", "event")))
    mass_unit = fields.String(validate=one_of(MASS_UNITS), metadata={"description": "Unit of what is shown."})
    length_unit = fields.String(validate=one_of(("mm", "in")))
    currency = fields.String(validate=validate.Length(max=8))
    export = fields.Dict(metadata={"description": "As written by tarebook export; not looked at."})
    entries = fields.List(fields.Raw(), metadata={"description": "As written by tarebook export; not looked at."})

    @pre_load
    def name_the_nameless(self, given: Any, **kwargs: Any) -> Any:
        """Gives records without an id one of their own: the kind and their place in its list."""
        if not isinstance(given, Mapping):
            return given
        if not _can_be_answered(given):
            raise ValidationError("This holds a number or a text that JSON in UTF-8 cannot.")
        return {name: _named(name, value) if name in _LISTS else value for name, value in given.items()}


def _can_be_answered(given: Mapping[str, Any]) -> bool:
    """False for lone surrogates, NaN and infinities: nothing that repeats them could be sent back."""
    try:
        json.dumps(given, ensure_ascii=False, allow_nan=False).encode()
    except ValueError:
        return False
    return True


def _named(name: str, records: Any) -> Any:
    if not isinstance(records, list):
        return records
    return [
        {"id": f"{name[:-1]}-{place}", **record} if isinstance(record, Mapping) else record
        for place, record in enumerate(records, start=1)
    ]


def garage_schema(name: str, **options: fields.Field[Any]) -> type[Schema]:
    """The input schema of one computation: the lists, the common options, and its own."""
    given: type[Schema] = _Given.from_dict({**_LISTS, **options}, name=name)
    return given
