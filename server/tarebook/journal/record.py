"""What a fold holds: a record with the values of its fields, and an entry as the journal keeps it."""

from dataclasses import dataclass, field
from typing import Any

from tarebook.journal.entries import TOMBSTONE, Entry

WAITING = "waiting"
STRANGER = "stranger"
INVALID = "invalid"


@dataclass(frozen=True)
class Head:
    """One value of a field that no later entry known to its writer has replaced."""

    entry: str
    value: Any
    writer: str
    device: str


@dataclass
class Record:
    """`heads`: entries that no other of the record has seen. `fields`: per field its heads, the standing one first.

    `saw`: of several heads, which heads of fields each has seen; one that stands alone has seen all there is.
    `foreseen`: entries that others of the record have seen and that are not folded (yet).
    """

    kind: str
    heads: list[str] = field(default_factory=list)
    fields: dict[str, list[Head]] = field(default_factory=dict)
    saw: dict[str, set[str]] = field(default_factory=dict)
    foreseen: set[str] = field(default_factory=set)

    @property
    def deleted(self) -> bool:
        """False as long as work stands that its deletion had not seen: a person decides then."""
        claims = self.fields.get("deleted")
        return bool(claims) and all(claim.value is True for claim in claims or ())

    @property
    def hung(self) -> set[str] | None:
        """What hung on it as far as those knew who deleted it; None where they did not say."""
        said = [claim.value for claim in self.fields.get("hung", ()) if claim.value is not None]
        return {name for names in said for name in names} if said else None

    @property
    def values(self) -> dict[str, Any]:
        """The standing value of each field that has one; the tombstone apart."""
        standing = {name: heads[0].value for name, heads in self.fields.items() if name not in TOMBSTONE}
        return {name: value for name, value in standing.items() if value is not None}

    @property
    def claims(self) -> set[str]:
        """The entries that hold a field."""
        return {head.entry for heads in self.fields.values() for head in heads}

    @property
    def conflicts(self) -> dict[str, list[Head]]:
        return {name: heads for name, heads in self.fields.items() if name != "hung" and _differ(heads)}


def _differ(heads: list[Head]) -> bool:
    return len(heads) > 1 and any(head.value != heads[0].value for head in heads[1:])


@dataclass
class Kept:
    """An entry as the journal keeps it. `intake`: a reason only the server could know. `reason`: None once folded."""

    id: str
    number: int
    entry: Entry | None
    intake: str | None = None
    reason: str | None = WAITING
    reused: bool = False

    @property
    def read_entry(self) -> Entry:
        if self.entry is None:
            raise LookupError(f"{self.id} holds no readable entry")
        return self.entry
