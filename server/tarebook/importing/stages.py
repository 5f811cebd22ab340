"""Stages by name: the one the garage has, or a new one after the last."""

import json
from itertools import count
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from tarebook.garage.author import Change
from tarebook.importing.records import Place, made_id, plain
from tarebook.journal.kinds import KINDS
from tarebook.store.models import RecordRow

_LAST_RANK = KINDS["stage"].fields["rank"].most


class Stages:
    """The stages of one garage, read once for a batch of lines."""

    def __init__(self, session: Session, garage: str, place: Place) -> None:
        query = select(RecordRow.id, RecordRow.standing, RecordRow.deleted)
        rows = session.execute(query.where(RecordRow.garage == garage, RecordRow.kind == "stage")).all()
        self._place = place
        self._ids = {row.id for row in rows}
        standing = [(row.id, json.loads(row.standing)) for row in rows if not row.deleted]
        self._by_name = {plain(values["name"]): stage for stage, values in standing if self._of_car(values)}
        self._rank = max((values.get("rank", 0) for _, values in standing), default=0)

    def find(self, name: str | None) -> tuple[str | None, list[Change]]:
        """The id of the stage called so, and the change that makes it when there was none."""
        if name is None:
            return None, []
        stage = self._by_name.get(plain(name))
        return (stage, []) if stage else self._make(name)

    def known(self, name: str | None) -> str | None:
        """The id of the stage called so; where there is none, a word that no stage has for an id."""
        return None if name is None else self._by_name.get(plain(name), f"new {plain(name)}")

    def _make(self, name: str) -> tuple[str, list[Change]]:
        # A stage that was imported once and deleted keeps its id; the new one takes the next.
        words = ("import", self._place.apart, "stage", plain(name))
        stage = next(made for n in count() if (made := made_id(*words, str(n))) not in self._ids)
        self._ids.add(stage)
        self._by_name[plain(name)] = stage
        self._rank = min(self._rank + 1, _LAST_RANK)
        fields = {"car": self._place.car, "name": name, "rank": self._rank}
        return stage, [Change("stage", stage, {k: v for k, v in fields.items() if v is not None}, base=())]

    def _of_car(self, values: dict[str, Any]) -> bool:
        return None in (values.get("car"), self._place.car) or values["car"] == self._place.car
