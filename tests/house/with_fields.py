"""What the Python of this tree makes of a field: `tests/house/with_fields.ts` is the phone's half.

`tests/house/test_adding_a_field.py` runs it in a copy of the tree: a question as JSON on stdin, the answer on stdout.
"""

from __future__ import annotations

import json
import sys
from typing import Any

from tarebook.api.calc import run
from tarebook.core.garage.garage import read_garage
from tarebook.errors import TarebookError
from tarebook.journal.fold import Fold
from tests.plain import plain


def answer(question: dict[str, Any]) -> dict[str, Any]:
    """Of `entries`: the values folded and what was set aside; of `cars`: the core's record; what `calc` refuses."""
    fold = Fold()
    for number, text in enumerate(question["entries"], start=1):
        fold.add(number, text)
    return {
        "folded": {name: record.values for name, record in fold.records.items()},
        "aside": fold.aside(),
        "car": plain(read_garage({"cars": question["cars"]}).car),
        "refused": [_refused(car) for car in (*question["cars"], *question["wrong"])],
    }


def _refused(car: dict[str, Any]) -> Any:
    try:
        run("ledger", {"cars": [car]})
    except TarebookError as refusal:
        return refusal.data["fields"]["cars"][0]
    return None


if __name__ == "__main__":
    json.dump(answer(json.load(sys.stdin)), sys.stdout)
