"""The kinds of record a garage is made of, and the fields each may carry.

This is the one declaration: the journal validates by it, the core's typed records, `calc`'s schemas, the phone's table
and the words of its forms are made from it. To add a field, add a line to its kind and run
`python -m tarebook.contract`.

A *fact* (a weighing, a weigh-in, a scale check) is set once by its first entry. It is corrected by a new
record that `replaces` it, or withdrawn by `deleted`; it is never edited.
"""

from tarebook.journal.kinds.car import BALLAST_PLACE, CAR, CLASS_SHEET, CLAUSE, DRIVER
from tarebook.journal.kinds.field import COUNTED, Field, FieldType, Kind
from tarebook.journal.kinds.garage import GARAGE, MASS_UNITS, PHOTO, VERDICT
from tarebook.journal.kinds.job import HAZARDS, JOB, JOB_PART, LOOSE_END, STAGE
from tarebook.journal.kinds.part import PART, SHEET, SHEET_HOLE, ZONES
from tarebook.journal.kinds.scale import (
    LIFT,
    OMISSION,
    REPEAT,
    SCALE,
    SCALE_CHECK,
    SECOND_LOOK,
    WEIGH_IN,
    WEIGHING,
)

__all__ = ["COUNTED", "HAZARDS", "KINDS", "MASS_UNITS", "SCHEMA", "ZONES", "Field", "FieldType", "Kind"]

# Bumped when an older program could misread a newer journal; newer entries are then set aside, whole.
SCHEMA = 1

_KINDS = (
    GARAGE, CAR, DRIVER, SCALE, SCALE_CHECK, STAGE, PART, WEIGHING, JOB, JOB_PART, LOOSE_END, WEIGH_IN, REPEAT,
    OMISSION, SECOND_LOOK, LIFT, BALLAST_PLACE, SHEET, SHEET_HOLE, CLASS_SHEET, CLAUSE, PHOTO, VERDICT,
)  # fmt: skip
KINDS: dict[str, Kind] = {kind.name: kind for kind in _KINDS}
"""Every kind by name; a reference that is required leads to a kind further up. Each also accepts `deleted`, a flag:
the tombstone."""
