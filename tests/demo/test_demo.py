"""The demo is a sound garage of its own, drawn and filled by the package alone."""

import io
import json
from importlib.resources import files

import pytest
from PIL import Image

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import read_mass
from tarebook.core.standing.standing import standing
from tarebook.demo import scenario
from tarebook.demo.drawings import SCALES, THINGS, draw
from tarebook.garage.records import all_records, set_aside
from tarebook.journal.kinds import KINDS
from tests.home import Home

PHOTOS = json.loads(files("tarebook.demo").joinpath("photos.json").read_text(encoding="utf-8"))


@pytest.fixture
def home(tmp_path):
    home = Home(tmp_path)
    scenario.fill(home.database, home.garage, home.app.extensions["tarebook"].photos)
    yield home
    home.close()


def ids():
    return {record["id"]: kind for kind, records in scenario.records().items() for record in records}


def test_it_has_enough_of_everything_to_look_around_in():
    sizes = {kind: len(records) for kind, records in scenario.records().items()}
    assert 40 <= sizes["parts"] <= 60
    assert 18 <= sizes["jobs"] <= 26
    assert (sizes["stages"], sizes["weigh_ins"], sizes["drivers"]) == (3, 3, 2)
    assert {scale["unit"] for scale in scenario.records()["scales"]} == {"kg", "lb", "oz"}
    assert {part.get("whereabouts") for part in scenario.records()["parts"]} >= {"car", "shelf", "yard", "left", "sold"}


def test_every_reference_leads_somewhere():
    known = ids()
    broken = [
        (record["id"], name, value)
        for kind in KINDS.values()
        for record in scenario.records()[f"{kind.name}s"]
        for name, spec in kind.fields.items()
        if spec.type in ("ref", "refs") and name in record
        for value in (record[name] if spec.type == "refs" else [record[name]])
        if known.get(value) not in [f"{to}s" for to in spec.of]
    ]
    assert broken == []


def test_the_core_reads_all_of_it_without_a_warning():
    assert read_garage(scenario.records()).warnings == []


def test_two_weigh_ins_are_on_own_scales_and_one_is_official():
    assert sorted(record["official"] for record in scenario.records()["weigh_ins"]) == [False, False, True]


def test_more_is_in_the_car_than_written_down():
    gap = standing(read_garage(scenario.records())).gap
    assert gap is not None
    assert gap.difference.value == pytest.approx(3.1, abs=0.05)
    assert 2 * gap.difference.u == pytest.approx(0.8, abs=0.05)


def test_what_is_planned_would_bring_it_close_to_the_minimum_and_not_under_it():
    records = scenario.records()
    planned = [{**job, "state": "fitted"} if job["state"] == "chosen" else job for job in records["jobs"]]
    margin = standing(read_garage({**records, "jobs": planned, "trim": "event"})).margin
    assert margin is not None
    assert 1.0 < margin.value < 5.0


def test_a_filled_garage_has_every_record_and_nothing_is_set_aside(home):
    with home.database.read() as session:
        got = all_records(session, home.garage)
        assert set_aside(session, home.garage) == []
    assert {kind: len(records) for kind, records in got.items()} == {
        **{kind: len(records) for kind, records in scenario.records().items()},
        "photos": len(PHOTOS),
    }
    assert got["garages"][0]["id"] == home.garage


def test_every_photo_can_be_fetched_by_a_device(home):
    device = home.pair()
    with home.database.read() as session:
        photos = all_records(session, home.garage)["photos"]
    for photo in photos:
        answer = device.get(f"/photos/{photo['sha256']}?size=full")
        assert answer.status_code == 200
        assert Image.open(io.BytesIO(answer.data)).size == (photo["width"], photo["height"])


def test_every_photo_is_of_a_record_that_is_there():
    known = ids()
    assert {known[photo["of"]] for photo in PHOTOS} <= {"weighings", "weigh_ins", "parts", "loose_ends"}


def test_a_readout_says_what_was_written_down():
    typed = {record["id"]: read_mass(record["shown"]).value for record in scenario.records()["weighings"]}
    drawn = {photo["of"]: read_mass(photo["readout"]).value for photo in PHOTOS if photo["of"] in typed}
    half_a_division = 0.0015  # kg: the kitchen scale's 0.1 oz; what was typed as a fraction is shown as a decimal
    assert drawn == pytest.approx({name: typed[name] for name in drawn}, abs=half_a_division)


@pytest.mark.parametrize("thing", THINGS)
@pytest.mark.parametrize("scale", SCALES)
def test_every_drawing_is_small_and_always_the_same(thing, scale):
    first = draw(thing, scale, "12.5 kg")
    assert first == draw(thing, scale, "12.5 kg")
    assert Image.open(io.BytesIO(first)).size == (768, 576)
    assert len(first) < 60_000
