"""Which photos are seen at which record, by their files' names in the export; as the phone's `parts/photos/shown`."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from typing import Any

_SUFFIX = {"image/jpeg": "jpg", "image/png": "png", "image/webp": "webp"}
Record = Mapping[str, Any]


def file_of(photo: Record) -> str:
    """Where a photo lies in the export."""
    return f"photos/{photo['sha256']}.{_SUFFIX.get(photo.get('type', ''), 'bin')}"


class PhotosAt:
    """The photos of a garage's records (lists by plural kind)."""

    def __init__(self, records: Mapping[str, Sequence[Record]]) -> None:
        self._of: dict[str, list[str]] = defaultdict(list)
        for photo in records.get("photos", ()):
            self._of[photo["of"]].append(file_of(photo))
        self._older: dict[str, str] = {}
        self._on: dict[str, list[str]] = defaultdict(list)
        for kind, name in (("weighings", "of"), ("loose_ends", "job"), ("weigh_ins", ""), ("lifts", "weigh_in")):
            for record in records.get(kind, ()):
                self._on[record.get(name, "")].append(record["id"])
                if "replaces" in record:
                    self._older[record["id"]] = record["replaces"]

    def __call__(self, record: str) -> list[str]:
        """Those of the record, of what it took the place of, and of what hangs on it; a picture of several once."""
        line = [record]
        while (older := self._older.get(line[-1])) and older not in line:
            line.append(older)
        seen = [*line, *(each for one in line for each in self._on.get(one, ()))]
        return list(dict.fromkeys(file for each in seen for file in self._of.get(each, ())))
