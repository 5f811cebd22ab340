"""One computation: what goes in, what the core makes of it, and how that is written."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from marshmallow import Schema

from tarebook.api.calc.numbers import Asked, Asking, Given, Json
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage


@dataclass(frozen=True)
class Calculation:
    """`given`: the schema of what goes in. `compute` takes the garage in it and all of it; `answer` writes the result.

    `trim`: of the garage, unless another is asked for.
    """

    name: str
    about: str
    given: type[Schema]
    answer: Schema
    compute: Callable[[Garage, Given], Any]
    trim: str = "road"

    def answer_to(self, given: Given) -> Json:
        """The answer to what `given` has read. Raises TarebookError where an option cannot be read."""
        garage = read_garage({**given, "trim": given.get("trim") or self.trim})
        with Asking(Asked.by(given, garage)):
            answer: Json = self.answer.dump(self.compute(garage, given))
            return answer
