"""What is asked beside a garage, read: typed quantities become those of the core."""

from collections.abc import Mapping
from typing import Any, Literal

from tarebook.api.calc.numbers import Given
from tarebook.core.garage.field_values import read_field
from tarebook.core.numbers.quantity import Quantity
from tarebook.journal.kinds import Field


def typed(given: Given, name: str, kind: Literal["mass", "length", "volume"]) -> Quantity | None:
    """An option as a quantity. Raises QuantityError."""
    spec = Field(kind, sign="positive" if name in ("length", "width", "height") else "")
    found: Quantity | None = read_field(spec, given[name], None) if given.get(name) is not None else None
    return found


def all_typed(given: Given, **kinds: str) -> dict[str, Any]:
    """Options by the kinds they are: `mass="front rear"` reads these two. Raises QuantityError."""
    return {name: typed(given, name, kind) for kind, names in kinds.items() for name in names.split()}  # type: ignore[arg-type]


def typed_text(value: Any) -> Any:
    """A quantity as the text a person would have typed: `{value, unit}` in one piece, a text as it is."""
    return f"{value['value']} {value['unit']}" if isinstance(value, Mapping) else value
