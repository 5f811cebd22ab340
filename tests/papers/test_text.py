"""The build sheet as text keeps within 80 columns and always says its units."""

import csv

import pytest

from tarebook.demo import scenario
from tarebook.papers.build_sheet import build_sheet
from tarebook.papers.table import as_csv
from tarebook.papers.text import as_text


def of(garage=None, trim="event", **records):
    everything = {**scenario.records(), **records}
    if garage is not None:
        everything["garages"] = [garage]
    return as_text(build_sheet(everything, trim=trim))


@pytest.mark.parametrize("unit", ["kg", "g", "lb", "oz", "lb oz"])
@pytest.mark.parametrize("trim", ["event", "road"])
def test_it_fits_eighty_columns_in_every_unit(unit, trim):
    lines = of({"id": "garage", "name": "x", "mass_unit": unit, "currency": "EUR"}, trim).splitlines()
    assert max(map(len, lines)) == 80


def test_a_name_without_room_stands_on_its_own_line_and_is_not_cut():
    name = "A job with a name as long as the table of kinds allows, which is more than one line of this paper is wide"
    lines = of(jobs=[{"id": "job", "name": name, "state": "fitted"}], job_parts=[], loose_ends=[]).splitlines()
    assert max(map(len, lines)) == 80
    assert name in " ".join(" ".join(lines).split())


def test_the_margin_is_one_plain_sentence_with_what_to_keep_in_hand():
    text = " ".join(of().split())
    assert "10 kg above the minimum, sure to ± 4 kg." in text


def test_what_was_foretold_of_an_official_weigh_in_is_told_with_what_came_of_it():
    official = {"id": "w", "at": "2026-10-03", "layout": "total", "total": "900 kg", "official": True, "trim": "event"}
    told = {"fuel": "10 L", "driver_in": False, "jobs": [], "foretold": "902.04 kg", "foretold_within": "3.9 kg"}
    text = " ".join(of(weigh_ins=[{**official, **told}]).split())
    assert "- 2026-10-03: Predicted 902 ± 4 kg, read 900.0 ± 0.6 kg: inside" in text
    assert "Predicted 1 of 1 inside ± at official weigh-ins" in text
    assert "Predicted" not in of()


def test_what_is_not_weighed_is_named():
    assert "Not weighed     Rear seat brackets" in of()


def test_what_guesses_ran_off_by_is_said_and_not_where_they_count_as_typed():
    guesses = [
        {"id": f"g{n}", "claim": f"{claim} kg", "claim_basis": "guessed"} for n, claim in enumerate((14, 16, 13))
    ]
    weighed = [{"id": f"v{n}", "of": f"g{n}", "method": "direct", "shown": "12 kg"} for n in range(3)]
    told = {name: [*scenario.records()[name], *more] for name, more in (("parts", guesses), ("weighings", weighed))}
    assert "Guessed         Your guesses run 14 ± 13 % high, from 3 parts: taken out.\n" in of(**told)
    assert "Your guesses" not in of({"id": "garage", "name": "x", "claims": "typed"}, **told)
    assert "Your guesses" not in of()


def test_open_loose_ends_of_fitted_jobs_are_listed_and_closed_ones_are_not():
    text = of()
    assert "- Cap the radio plug (Radio and speakers out)" in text
    assert "Tape four speaker plugs" not in text
    assert "Cap its plug" not in text  # of a job that is only chosen


def test_a_warning_names_what_it_is_about():
    text = of(scale_checks=[])
    assert "- Kitchen scale: Nobody has checked this scale; its error is assumed for its" in text


def test_jobs_come_by_stage_and_in_order_of_fitting():
    lines = of().splitlines()
    jobs = lines[next(n for n, line in enumerate(lines) if line.startswith("JOBS")) :]
    places = [next(n for n, line in enumerate(jobs) if line.strip().startswith(name)) for name in (
        "Strip-out", "Spare wheel", "Sound-deadening", "Rear wiper", "Swaps", "Small battery", "Extinguisher",
        "Last kilos", "Small washer", "no stage", "Fibre bonnet", "Smaller door",
    )]  # fmt: skip
    assert places == sorted(places)


def test_a_class_with_adders_shows_the_sum():
    [sheet] = scenario.records()["class_sheets"]
    assert "Minimum         889.50 kg, Club coupes" in of(class_sheets=[{**sheet, "adders": "2.5 kg"}])


def test_a_garage_without_anything_says_so_in_few_words():
    text = as_text(build_sheet({}))
    assert "The car has not been weighed yet." in text
    assert "JOBS" not in text


BARRED = [{"id": "job", "name": "Spare wheel out", "state": "fitted", "ruling": "not_allowed"}]


def test_a_fitted_job_the_class_does_not_allow_is_said_at_the_top_and_at_the_job():
    text = of(jobs=BARRED, job_parts=[], loose_ends=[])
    assert "Not allowed     Fitted, and not allowed by the class: Spare wheel out." in text
    assert "Spare wheel out, not allowed" in text


def test_the_table_carries_rulings_the_readings_as_typed_and_what_was_computed_unrounded():
    parts = [{"id": "p", "name": "Spare wheel"}]
    looks = {"shown": "97.4 kg", "shown_empty": "84 kg"}
    weighings = [{"id": "w", "of": "p", "method": "difference", **looks}]
    lines = [{"id": "l", "job": "job", "part": "p", "way": "off"}]
    records = {**scenario.records(), "jobs": BARRED, "parts": parts, "weighings": weighings, "job_parts": lines}
    (row,) = csv.DictReader(as_csv(build_sheet({**records, "loose_ends": []})).splitlines())
    assert row["ruling"] == "not_allowed"
    assert row["readings"] == "97.4 kg, 84 kg"
    assert float(row["kg"]) == pytest.approx(13.4)
    assert row["kg"] != row["off"]
    assert float(row["u_kg"]) > 0


SEAT = {
    "parts": [{"id": "p", "name": "Seat"}],
    "jobs": [{"id": "job", "name": "Seats out", "state": "fitted"}],
    "job_parts": [{"id": "l", "job": "job", "part": "p", "way": "off"}],
    "loose_ends": [{"id": "end", "job": "job", "text": "Cap the plug"}],
    "weighings": [
        {"id": "w", "of": "p", "method": "direct", "shown": "12 kg"},
        {"id": "w2", "of": "p", "method": "direct", "shown": "13 kg", "replaces": "w"},
    ],
    "weigh_ins": [
        {"id": "in", "total": "980 kg", "layout": "total", "trim": "event", "at": "2026-05-02"},
        {"id": "in2", "total": "979 kg", "layout": "total", "trim": "event", "at": "2026-05-02", "replaces": "in"},
    ],
    "photos": [
        {"id": str(number), "of": of, "sha256": name * 64, "type": "image/jpeg"}
        for number, (of, name) in enumerate([("w", "a"), ("job", "b"), ("end", "c"), ("in", "d"), ("p", "a")])
    ],
}


def test_photos_are_told_where_the_phone_shows_them_and_one_picture_is_one():
    sheet = build_sheet({**scenario.records(), **SEAT})
    [job] = sheet["jobs"]
    files = {name: f"photos/{name * 64}.jpg" for name in "abcd"}
    assert job["photos"] == [files["b"], files["c"], files["a"]]
    assert job["parts"][0]["photos"] == [files["a"]]
    assert [past["photos"] for past in sheet["weigh_ins"]] == [[files["d"]]]
    text = as_text(sheet)
    assert "Seats out, 3 photos" in text
    assert "2026-05-02  own scales, 1 photo" in text
    (row,) = csv.DictReader(as_csv(sheet).splitlines())
    assert row["photos"] == "; ".join(job["photos"])
