"""What hangs on what: a weighing on its part, a loose end on its job. What is deleted takes along what hangs on it.

Its deletion names in `hung` all that hung on it as far as its writer knew. Something else that stands and hangs on it
was made by somebody who had not seen the deletion, and a deletion never beats work it has not seen: the record counts
as standing, an open conflict, until a person decides. The phone's twin is `webapp/src/journal/hanging.ts`.
"""

from collections import defaultdict
from collections.abc import Mapping
from functools import cache

from tarebook.journal.kinds import KINDS
from tarebook.journal.record import Record


@cache
def leads_up(kind: str) -> tuple[str, ...]:
    """The fields of a kind by which its records hang on others."""
    fields = KINDS[kind].fields.items()
    return tuple(name for name, spec in fields if spec.type == "ref" and (spec.required or spec.hangs))


def brought_back(records: Mapping[str, Record]) -> dict[str, list[str]]:
    """Records of which every deletion was by somebody who had not seen all that hangs on them: by id, what that is."""
    below = defaultdict(list)
    for name, record in records.items():
        for field in leads_up(record.kind):
            below[record.values.get(field)].append(name)
    stands: dict[str, bool] = {}

    def is_there(name: str) -> bool:
        if name not in stands:
            stands[name] = not records[name].deleted
            stands[name] = stands[name] or bool(unseen(name))
        return stands[name]

    def unseen(name: str) -> list[str]:
        hung = records[name].hung
        return [] if hung is None else [each for each in below[name] if each not in hung and is_there(each)]

    found = {name: unseen(name) for name, record in records.items() if record.deleted}
    return {name: sorted(each) for name, each in found.items() if each}
