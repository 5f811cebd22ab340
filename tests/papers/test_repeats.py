"""What was read again stands in the papers reading by reading, those left out among them."""

from tarebook.papers.build_sheet import build_sheet
from tarebook.papers.table import as_csv
from tarebook.papers.text import as_text

WHEELS = {"lf": "251.3 kg", "rf": "243.8 kg", "lr": "210.2 kg", "rr": "198.6 kg"}
RECORDS = {
    "cars": [{"id": "car", "name": "Coupe"}],
    "parts": [{"id": "hook", "name": "Tow hook"}],
    "jobs": [{"id": "job", "name": "Hook off", "state": "fitted"}],
    "job_parts": [{"id": "line", "job": "job", "part": "hook", "way": "off"}],
    "weighings": [{"id": "w", "of": "hook", "method": "container", "shown": "1.25 kg", "shown_empty": "50 g"}],
    "weigh_ins": [{"id": "k", "layout": "corners", "trim": "event", "at": "2026-05-01", "jobs": [], **WHEELS}],
    "repeats": [
        {"id": "r1", "of": "w", "shown": "1.26 kg"},
        {"id": "r2", "of": "w", "shown": "1.51 kg"},
        {"id": "r3", "of": "k", "rf": "244.1 kg"},
    ],
    "omissions": [{"id": "o", "of": "r2", "reading": "shown"}],
}


def test_every_reading_of_a_part_is_on_paper():
    sheet = build_sheet(RECORDS)
    assert sheet["jobs"][0]["parts"][0]["readings"] == ["1.25 kg (again 1.26 kg, 1.51 kg left out), 50 g"]
    assert '"1.25 kg (again 1.26 kg, 1.51 kg left out), 50 g"' in as_csv(sheet)
    assert sheet["jobs"][0]["as_read"] is None


def test_every_reading_of_a_weigh_in_is_on_paper():
    sheet = build_sheet(RECORDS)
    assert sheet["weigh_ins"][0]["readings"][:2] == ["Left front 251.3 kg", "Right front 243.8 kg (again 244.1 kg)"]
    assert "2026-05-01: Left front 251.3 kg; Right front 243.8 kg (again 244.1 kg)" in " ".join(as_text(sheet).split())
    assert "again" not in as_text(build_sheet({**RECORDS, "repeats": [], "omissions": []}))
