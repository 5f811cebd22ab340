"""The records of a garage as the core sees them: typed, read, references resolved.

One class a kind, with the fields the core computes with, made from `journal/kinds`. A field nobody filled is None.
Masses, lengths and volumes are `Quantity` (exact, SI), money and hours are exact fractions. A warning is `{code, data}`
with a code of the error table; nothing here ever raises over data.
"""

from dataclasses import dataclass, field
from typing import Any, TypedDict

from tarebook.core.generated.records import (
    BallastPlace,
    Car,
    ClassSheet,
    Driver,
    Job,
    JobPart,
    Lift,
    LooseEnd,
    Omission,
    Part,
    Records,
    Repeat,
    Scale,
    ScaleCheck,
    Sheet,
    SheetHole,
    Stage,
    WeighIn,
    Weighing,
)

__all__ = [
    "BallastPlace", "Car", "ClassSheet", "Driver", "Garage", "Job", "JobPart", "Lift", "LooseEnd", "Omission",
    "Part", "Repeat", "Scale", "ScaleCheck", "Sheet", "SheetHole", "Stage", "Warned", "WeighIn", "Weighing", "warned",
]  # fmt: skip


class Warned(TypedDict):
    """Something a person should know about a result; `code` is of the error table, `data` fills its sentence."""

    code: str
    data: dict[str, Any]


def warned(code: str, **data: Any) -> Warned:
    return {"code": code, "data": data}


@dataclass(frozen=True, slots=True, kw_only=True)
class Garage(Records):
    """Everything the core needs of one garage, for one car and one trim.

    `jobs`, `stages`, `weigh_ins`, `ballast_places`, `class_sheets` and what hangs on them are those of `car` (or of no
    named car). Replaced and deleted facts are gone, and what pointed to a replaced one points to its successor.
    `retired`: ids of the drivers and scales that were deleted; what was weighed on or of them stays weighed.
    """

    car: Car | None
    trim: str
    retired: frozenset[str]
    weighings_of: dict[str, list[Weighing]] = field(default_factory=dict)
    checks_of: dict[str, list[ScaleCheck]] = field(default_factory=dict)
    parts_of: dict[str, list[JobPart]] = field(default_factory=dict)
    holes_of: dict[str, list[SheetHole]] = field(default_factory=dict)
    repeats_of: dict[str, list[Repeat]] = field(default_factory=dict)
    omissions_of: dict[str, list[Omission]] = field(default_factory=dict)
    warnings: list[Warned] = field(default_factory=list)
