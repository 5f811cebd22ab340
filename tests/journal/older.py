"""This program as it was before it knew some fields: its entries, its folds and its tables."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from unittest.mock import patch

from tarebook.journal.kinds import KINDS


@contextmanager
def without(unknown: Mapping[str, Sequence[str]]) -> Iterator[None]:
    """`unknown`: kind → the names of fields."""
    older = {}
    for kind, names in unknown.items():
        fields = {name: field for name, field in KINDS[kind].fields.items() if name not in names}
        older[kind] = replace(KINDS[kind], fields=fields)
    with patch.dict(KINDS, older):
        yield
