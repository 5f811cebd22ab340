"""What `calc` answers: a schema takes a result of the core as it is and writes it.

`written(Place, but="apart", length="x y z")` writes every attribute of `Place` but that one. Their types say how:
texts, flags, warnings, results within results. What a number measures no type says, so it is said here. Where
something is written in its own way, a class says that, and `@writes(…)` above it the rest. An attribute added to a
result is answered at once, or asked about.
"""

from collections.abc import Callable, Mapping
from dataclasses import is_dataclass
from types import NoneType
from typing import Any, get_args, get_origin, get_type_hints

from marshmallow import Schema, fields

from tarebook.api.calc.numbers import MEASURES, Asking, Json, Number
from tarebook.api.schemas import DescribedSchema
from tarebook.core.garage.records import Warned
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.words.said import Said as SaidOf
from tarebook.errors import describe


class Told(fields.Nested):
    """A warning, or the reason for an answer that is null: a code of the error table with its sentence."""

    def __init__(self, of: str | None = None, optional: bool = True) -> None:
        super().__init__(DescribedSchema, required=True, allow_none=optional, attribute=of)

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Json | None:  # type: ignore[override]
        return None if value is None else describe(value["code"], value["data"])


class Warnings(fields.List[Any]):
    """Every warning once, in the order of their first saying. `of_garage`: those of the garage before."""

    def __init__(self, of: str | None = None, of_garage: bool = False) -> None:
        super().__init__(Told(optional=False), required=True, attribute=of)
        self.of_garage = of_garage

    def _serialize(self, value: Any, attr: str | None, obj: Any, **kwargs: Any) -> list[Json]:
        found: list[Json] = []
        for warning in (*(Asking.get().garage.warnings if self.of_garage else ()), *(value or ())):
            described = describe(warning["code"], warning["data"])
            if described not in found:
                found.append(described)
        return found


class Values(fields.List[Any]):
    """What a result has by name, as a list."""

    def _serialize(self, value: Any, attr: str | None, obj: Any, **kwargs: Any) -> list[Any] | None:
        return super()._serialize(value.values(), attr, obj, **kwargs)


class SaidSchema(Schema):
    code = fields.String(required=True)
    text = fields.String(required=True)


class Said(fields.Nested):
    """A sentence of the core: `sentence` takes the result it stands with, in a list the item, and what is asked."""

    _CHECK_ATTRIBUTE = False

    def __init__(self, sentence: Callable[..., SaidOf]) -> None:
        super().__init__(SaidSchema, required=True)
        self._sentence = sentence

    def _serialize(self, value: Any, attr: Any, obj: Any, **kwargs: Any) -> Json:  # type: ignore[override]
        said = self._sentence(obj if value is None else value, Asking.get())
        return {"code": said.code, "text": said.text}


class Answer(Schema):
    """Writes a result of the core, or a mapping with such in it; a name with points leads on from what is there."""

    def get_attribute(self, obj: Any, attr: str, default: Any) -> Any:
        for name in attr.split("."):
            obj = obj[name] if isinstance(obj, dict) else None if obj is None else getattr(obj, name)
        return obj


_WRITTEN: dict[Any, type[Schema]] = {}
_PLAIN: dict[Any, type[fields.Field[Any]]] = {str: fields.String, bool: fields.Boolean, int: fields.Integer}


def writes(result: Any, but: str = "", **measured: str) -> Callable[[type[Schema]], type[Schema]]:
    """Adds to a schema what it does not write in its own way of a result, in the order it has there."""
    numbers = {name: MEASURES[measure] for measure, names in measured.items() for name in names.split()}
    hints = {name: hint for name, hint in get_type_hints(result).items() if name not in but.split()}

    def derive(schema: type[Schema]) -> type[Schema]:
        schema._declared_fields = _in_order(schema._declared_fields, hints, numbers)
        return _WRITTEN.setdefault(result, schema)

    return derive


def written(result: Any, but: str = "", **measured: str) -> type[Schema]:
    """The schema of a result that has nothing to write in its own way."""
    return _WRITTEN.get(result) or writes(result, but, **measured)(Answer.from_dict({}, name=result.__name__))


def _in_order(own: Json, hints: Json, numbers: Mapping[str, type[Number]]) -> Json:
    """Both orders kept: what a schema alone has stands before the next that the result has too."""
    waiting, ordered = dict(own), {}
    for name, hint in hints.items():
        if name not in own:
            ordered[name] = _field(hint, numbers.get(name))
        while name in waiting:
            first = next(iter(waiting))
            ordered[first] = waiting.pop(first)
    return {**ordered, **waiting}


def _field(hint: Any, number: type[Number] | None = None, optional: bool = False) -> fields.Field[Any]:
    """The field that writes what is of this type; a number among it as said. Raises TypeError where it is not said."""
    inside, of = get_args(hint), get_origin(hint)
    says: Any = {"required": True, "allow_none": optional}
    if NoneType in inside:
        [one] = (each for each in inside if each is not NoneType)
        return _field(one, number, optional=True)
    if of is dict:
        return fields.Dict(fields.String(), _field(inside[1], number), **says)
    if of is tuple:
        return Warnings() if inside[0] is Warned else fields.List(_field(inside[0], number), **says)
    if number:
        return number(optional=optional)
    if hint is Warned:
        return Told(optional=optional)
    if hint in _PLAIN:
        return _PLAIN[hint](**says)
    if is_dataclass(hint) and hint is not Uncertain:
        return fields.Nested(written(hint), **says)
    raise TypeError(f"say what {hint} measures")
