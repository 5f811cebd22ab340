"""Reads a garage: lists of plain records by plural kind in, typed and cross-referenced records out.

This is where data stops being text. What it takes is what `calc` and the export speak: `{"parts": [{"id", ...}], ...}`
with the fields of `journal/kinds`, and `car` and `trim` beside the lists. Nothing in such data can raise: a value
that cannot be read, a reference that leads nowhere or a record without its essentials becomes a warning, and as
little as possible is left out. Records are taken in order of id, so the order of the lists never matters.
"""

from collections.abc import Iterable, Mapping
from typing import Any

from tarebook.core.garage.corrections import corrected
from tarebook.core.garage.field_values import read_field
from tarebook.core.garage.records import Garage, Warned, warned
from tarebook.core.generated.records import SHAPES
from tarebook.core.numbers.typed import QuantityError
from tarebook.journal.kinds import KINDS, Field

Row = dict[str, Any]

# By kind: the fields of its typed record, in their order; and with them what tells which records count.
_WANTED = {kind: [name for name, spec in KINDS[kind].fields.items() if spec.core] for kind in SHAPES}
_READ = {kind: [*wanted, *(["replaces"] if KINDS[kind].fact else [])] for kind, wanted in _WANTED.items()}
OUTLIVES_DELETION = ("driver", "scale")  # taken off the lists people choose from, yet what was weighed stays weighed
_NOT_FIELDS = frozenset(("id", "deleted", "conflicts"))


def read_garage(records: Mapping[str, Any]) -> Garage:
    """The typed garage. `records`: lists by plural kind, optionally `car` (an id) and `trim` ("road", "event")."""
    reader = _Reader(records if isinstance(records, Mapping) else {})
    for kind in SHAPES:
        reader.read_kind(kind)
    for kind in SHAPES:
        reader.resolve(kind)
    return reader.garage()


class _Reader:
    """Collects rows and warnings; `rows[kind][id]` holds the values read, `gone[kind]` the ids of deleted records.

    `newer[kind]`: any record of a corrected fact → the one of them that counts.
    """

    def __init__(self, records: Mapping[str, Any]) -> None:
        self.records = records
        self.warnings: list[Warned] = []
        self.rows: dict[str, dict[str, Row]] = {}
        self.gone: dict[str, set[str]] = {}
        self.newer: dict[str, dict[str, str]] = {}
        self.retired: set[str] = set()
        self.unread: set[tuple[str, str, str]] = set()  # (kind, id, field) of what a warning was given of

    def warn(self, code: str, **data: Any) -> None:
        self.warnings.append(warned(code, **data))

    # Step 1: every value of every record.

    def read_kind(self, kind: str) -> None:
        rows: dict[str, Row] = {}
        gone: set[str] = set()
        older: dict[str, str] = {}
        for record in self._listed(kind):
            identity = record["id"]
            if identity in rows or identity in gone:
                self.warn("duplicate_record", list=kind + "s", id=identity)
            elif record.get("deleted") is True and kind not in OUTLIVES_DELETION:
                gone.add(identity)
                if KINDS[kind].fact and _is_id(record.get("replaces")):
                    older[identity] = record["replaces"]
            else:
                rows[identity] = self._row(kind, record)
                if record.get("deleted") is True:
                    self.retired.add(identity)
                if "replaces" in rows[identity]:
                    older[identity] = rows[identity]["replaces"]
        newer = self._newer(kind, older, rows)
        kept = {identity: row for identity, row in rows.items() if newer.get(identity, identity) == identity}
        self.rows[kind] = {identity: row for identity, row in kept.items() if self._complete(kind, identity, row)}
        self.gone[kind] = gone
        self.newer[kind] = newer

    def _newer(self, kind: str, older: dict[str, str], rows: Mapping[str, Row]) -> dict[str, str]:
        facts = corrected(older, rows)
        for fact in facts:
            if others := fact.rivals[:-1]:
                self.warn("corrected_apart", list=kind + "s", id=fact.counts, ref=", ".join(others))
        return {each: fact.counts for fact in facts for each in fact.all}

    def _listed(self, kind: str) -> list[Mapping[str, Any]]:
        """The records of a kind that have an id, in its order."""
        given = self.records.get(kind + "s")
        if given is None:
            return []
        if not isinstance(given, list):
            self.warn("unreadable_list", list=kind + "s")
            return []
        good = []
        for position, record in enumerate(given):
            if isinstance(record, Mapping) and _is_id(record.get("id")):
                good.append(record)
            else:
                self.warn("unreadable_record", list=kind + "s", position=position)
        return sorted(good, key=lambda record: str(record["id"]))

    def _row(self, kind: str, record: Mapping[str, Any]) -> Row:
        known = KINDS[kind].fields
        unit = self._own_unit(kind, record)
        row: Row = {}
        for name in _READ[kind]:
            if record.get(name) is not None:
                self._read_into(row, (kind, record["id"], name), known[name], record[name], unit)
        for name in sorted(str(name) for name in record if name not in known and name not in _NOT_FIELDS):
            self.warn("unknown_field", list=kind + "s", id=record["id"], field=name)
        return row

    def _read_into(self, row: Row, at: tuple[str, str, str], spec: Field, value: Any, unit: str | None) -> None:
        kind, identity, name = at
        where = {"list": kind + "s", "id": identity, "field": name}
        try:
            row[name] = read_field(spec, value, unit)
            return
        except QuantityError as error:
            self.warn(error.code, **{**error.data, **where})
        except ValueError:
            self.warn("unreadable_field", **where)
        self.unread.add(at)

    def _own_unit(self, kind: str, record: Mapping[str, Any]) -> str | None:
        """The unit a bare number was typed in: the scale's own, where the record is or names a scale."""
        scale = record.get("scale")
        scales = self.rows.get("scale", {})
        own = record if kind == "scale" else scales.get(scale, {}) if isinstance(scale, str) else {}
        return own["unit"] if isinstance(own.get("unit"), str) else None

    def _complete(self, kind: str, identity: str, row: Row) -> bool:
        """False without a field the record means nothing without (a name is not one); with a warning if it has none."""
        specs = KINDS[kind].fields
        missing = [n for n in _WANTED[kind] if specs[n].required and specs[n].type != "text" and n not in row]
        for name in (name for name in missing if (kind, identity, name) not in self.unread):
            self.warn("missing_field", list=kind + "s", id=identity, field=name)
        return not missing

    # Step 2: references.

    def resolve(self, kind: str) -> None:
        specs = {name: KINDS[kind].fields[name] for name in _WANTED[kind]}
        references = {name: spec for name, spec in specs.items() if spec.type in ("ref", "refs")}
        rows = self.rows[kind]
        for identity in list(rows):
            if not self._resolved(kind, identity, rows[identity], references):
                del rows[identity]

    def _resolved(self, kind: str, identity: str, row: Row, references: Mapping[str, Field]) -> bool:
        """Takes out what leads nowhere; False when the record cannot do without it."""
        whole = True
        for name, spec in references.items():
            where = {"list": kind + "s", "id": identity, "field": name}
            if name not in row:
                continue
            if spec.type == "refs":
                row[name] = tuple(to for to in row[name] if self._leads(where, spec, to))
                continue
            row[name] = self._newest(spec, row[name])
            if not self._leads(where, spec, row[name]):
                del row[name]
                whole = whole and not spec.required
        return whole

    def _newest(self, spec: Field, to: str) -> str:
        """Where a reference leads today: to that record of a corrected fact which counts."""
        return next((self.newer[target][to] for target in spec.of if to in self.newer[target]), to)

    def _leads(self, where: dict[str, str], spec: Field, to: str) -> bool:
        if any(to in self.rows[target] for target in spec.of):
            return True
        deleted = any(to in self.gone[target] for target in spec.of)
        self.warn("dangling_deleted" if deleted else "dangling", **where, ref=to)
        return False

    # Step 3: the typed garage.

    def garage(self) -> Garage:
        car = self._car()
        for kind in ("stage", "job", "weigh_in", "ballast_place", "class_sheet"):
            self.rows[kind] = {i: row for i, row in self.rows[kind].items() if row.get("car") in (None, car)}
        for kind, of in (("job_part", "job"), ("loose_end", "job"), ("lift", "weigh_in")):
            self.rows[kind] = {i: row for i, row in self.rows[kind].items() if row[of] in self.rows[of]}
        records: dict[str, Any] = {kind + "s": self._typed(kind) for kind in SHAPES}
        return Garage(
            car=records["cars"].get(car),
            trim=self._trim(),
            retired=frozenset(self.retired),
            **records,
            weighings_of=_grouped(records["weighings"].values(), "of"),
            checks_of=_grouped(records["scale_checks"].values(), "scale"),
            parts_of=_grouped(records["job_parts"].values(), "job"),
            holes_of=_grouped(records["sheet_holes"].values(), "sheet"),
            repeats_of=_grouped(records["repeats"].values(), "of"),
            omissions_of=_grouped(records["omissions"].values(), "of"),
            warnings=self.warnings,
        )

    def _car(self) -> str | None:
        """The car asked for, else the first by id."""
        asked = self.records.get("car")
        cars = self.rows["car"]
        if isinstance(asked, str) and asked in cars:
            return asked
        if asked is not None:
            self.warn("unknown_car", car=asked)
        return next(iter(cars), None)

    def _trim(self) -> str:
        asked = self.records.get("trim")
        if asked not in (None, "road", "event"):
            self.warn("unknown_trim", trim=asked)
        return "event" if asked == "event" else "road"

    def _typed(self, kind: str) -> dict[str, Any]:
        shape, wanted = SHAPES[kind], _WANTED[kind]
        return {i: shape(i, *[row.get(name) for name in wanted]) for i, row in self.rows[kind].items()}


def _grouped(records: Iterable[Any], name: str) -> dict[str, list[Any]]:
    groups: dict[str, list[Any]] = {}
    for record in records:
        key = getattr(record, name)
        if key is not None:
            groups.setdefault(key, []).append(record)
    return groups


def _is_id(value: Any) -> bool:
    return isinstance(value, str) and 0 < len(value) <= 80 and value.isascii()
