"""What one field of a kind is: said here once, and everything else is made from it.

`python -m tarebook.contract` writes the phone's table, the words of its forms and the typed records of the core from
these declarations; the journal, `calc`'s schemas and the readers of the core use them as they stand.
"""

from collections.abc import Mapping
from dataclasses import KW_ONLY, dataclass, field
from typing import Any, Literal

FieldType = Literal[
    "text", "mass", "length", "volume", "money", "hours", "fraction", "count", "flag", "choice", "choices", "ref",
    "refs", "moment", "hash", "integer",
]  # fmt: skip
COUNTED = ("text", "choices", "refs", "count", "integer")  # the types that `most` bounds


@dataclass(frozen=True)
class Field:
    """One field. What decides whether an entry is sound is its `rule` alone; all else is for forms and for the core.

    `mass`, `length` and `volume` are typed strings with a unit ("6 3/8 oz"), kept as typed. `money`, `hours` and
    `fraction` are plain decimal strings ("12.50"). `moment` is an ISO 8601 date or time as the person stated it.
    """

    type: FieldType
    label: str = ""  # above its control on a form
    hint: str = ""  # below it
    _: KW_ONLY
    of: Mapping[str, str] = field(default_factory=dict)  # choice → its words ("no" and "yes" of a flag); or kinds
    most: int = 200  # characters of a text, items of a list, or the largest integer
    required: bool = False  # must be set by the record's first entry
    core: bool = True  # false: kept and shown, but nothing is computed with it
    hangs: bool = False  # a ref to what this record goes with when that is deleted, though it need not be there
    # Which numbers can be meant, and between which they are likely. Others are asked about, and never refused.
    sign: Literal["", "positive", "any"] = ""  # by default zero or more
    likely: tuple[str, str] | None = None
    unit: Literal["", "percent", "day"] = ""  # how it is entered, where not as it is kept or in the garage's own unit
    sides: tuple[str, str] | None = None  # of a place along an axis: the side below nothing and the one above
    none: str = ""  # what a picker says while nothing is picked
    start: str = ""  # what a new record's form begins with
    word: str = ""  # in a sentence, where its name does not do

    @property
    def rule(self) -> tuple[Any, ...]:
        """What the journal checks a value by."""
        return self.type, sorted(self.of) if self.type in ("choice", "choices") else [], self.most, self.required


@dataclass(frozen=True)
class Kind:
    """A kind of record. A fact is set once by its first entry; `core`: the core computes with such records."""

    name: str
    fields: Mapping[str, Field]
    _: KW_ONLY
    fact: bool = False
    core: bool = True
    words: tuple[str, str] | None = None  # one and many, where not its name and an s
    about: str = ""  # what the typed record says of itself

    @property
    def rule(self) -> tuple[Any, ...]:
        """What the journal folds such records by: when it changes, every journal is folded anew."""
        return self.name, self.fact, {name: spec.rule for name, spec in self.fields.items()}


def choice(of: Mapping[str, str], label: str = "", hint: str = "", **more: Any) -> Field:
    """One of a few, each with its words."""
    return Field("choice", label, hint, of=of, **more)


def ref(*kinds: str, label: str = "", **more: Any) -> Field:
    """A record of one of these kinds."""
    return Field("ref", label, of=dict.fromkeys(kinds, ""), **more)


NAME = Field("text", "Name", most=120, required=True)
NOTE = Field("text", "Note", most=4000, core=False)
WHEN = Field("moment", "When", "Now, unless you say otherwise.")
