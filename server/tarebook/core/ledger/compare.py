"""A part against the one it would replace: at the yard, before anything is bought.

"Yours 23 lb, this 15 lb 6 oz, saves 7 lb 10 oz." Both may have been hung on one scale; its error then acts on the
difference only, so the saving is known better than either part.
"""

from dataclasses import dataclass
from typing import cast

from tarebook.core.garage.records import Garage, Part, Warned, warned
from tarebook.core.numbers.uncertain import Uncertain, scale, subtract
from tarebook.core.weighing.weighing import Mass, Masses, masses


@dataclass(frozen=True, slots=True)
class Comparison:
    """`difference` = this − that, kg, of one piece (negative: this one is lighter); `whole` = × `count`.

    `count`: the pieces of the part to be replaced. None where a part is missing or has no mass, with a warning.
    """

    part: str
    instead_of: str | None
    count: int
    this: Mass | None
    that: Mass | None
    difference: Uncertain | None
    whole: Uncertain | None
    warnings: tuple[Warned, ...]


def compare(garage: Garage, part: str, instead_of: str | None = None, known: Masses | None = None) -> Comparison:
    """Compares two parts by id; `instead_of` is the part's own, unless another is given."""
    known = known or masses(garage)
    new = garage.parts.get(part)
    old = garage.parts.get(instead_of or (new.instead_of if new else None) or "")
    this, that = known.of.get(new.id if new else ""), known.of.get(old.id if old else "")
    count = old.count if old and old.count else 1
    difference = subtract(this.mass, that.mass) if this and that and this.mass and that.mass else None
    return Comparison(
        part=part,
        instead_of=old.id if old else instead_of,
        count=count,
        this=this,
        that=that,
        difference=difference,
        whole=scale(difference, float(count)) if difference else None,
        warnings=tuple(_warnings(new, old, this, that)),
    )


def _warnings(new: Part | None, old: Part | None, this: Mass | None, that: Mass | None) -> list[Warned]:
    if this is None or that is None:
        return [warned("nothing_to_compare")]
    ours, theirs = cast(Part, new), cast(Part, old)  # whoever has a mass is there
    found = [*this.warnings, *that.warnings]
    missing = [mass.of for mass in (this, that) if mass.mass is None]
    if missing:
        found.append(warned("unweighed", parts=missing))
    if _with_bolts(ours, this) != _with_bolts(theirs, that):
        found.append(warned("bolts_differ", of=this.of))
    return found


def _with_bolts(part: Part, mass: Mass) -> bool:
    """Whether the mass counts the bolts: as weighed, else as the part says."""
    if mass.readings:
        return any(reading.with_bolts for reading in mass.readings)
    return bool(part.with_bolts)
