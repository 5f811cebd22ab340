"""The bench measures what it says: its table, its invented garage, and that it stays outside of the app people get."""

import json

import build_app
import pytest

from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.standing import standing
from tarebook.journal.fold import Fold
from tests.bench.drawing import script_in_frames
from tests.bench.figure import Figure, table
from tests.bench.garage import entry_texts, garage, records, weighed_often


@pytest.mark.parametrize(
    ("wanted", "values", "said"),
    [
        ("less", [90, 130, 110], "1.10 MISSES by 10 ms"),
        ("less", [40, 50, 60], "0.50"),
        ("more", [90, 95, 99], "0.95 MISSES by 5 ms"),
        ("more", [100], "1.00"),
    ],
)
def test_a_missed_aim_is_said_with_by_how_much(wanted, values, said):
    line = table([Figure("a thing", values, "ms", 100, wanted, load=0.5)]).splitlines()[1]
    assert line.startswith("a thing")
    assert line.removesuffix("0.5").rstrip().endswith(f"  {said}")


def test_the_invented_garage_folds_whole_and_has_a_weight():
    changes = garage(parts=45, weighings=100)
    fold = Fold()
    for number, text in enumerate(entry_texts(changes), 1):
        fold.add(number, text)
    assert fold.aside() == {}
    assert len(fold.records) == len(changes)
    book = read_garage(records(changes))
    assert list(book.warnings) == []
    assert standing(book).weight is not None


def test_the_garage_weighed_often_counts_every_weigh_in():
    book = read_garage({**weighed_often(records(garage(parts=100, weighings=200)), 12), "trim": "event"})
    found = standing(book).fused
    assert found is not None
    assert len(found.counted) == 12
    assert all(each.share for each in found.counted)


def test_the_same_size_gives_the_same_garage():
    assert json.dumps(garage(7, 9)) == json.dumps(garage(7, 9))


def test_the_app_people_get_has_no_hand_of_the_bench_in_it():
    scripts = list((build_app.BUILT / "assets").glob("*.js"))
    assert scripts
    assert not any("syncNothing" in script.read_text(encoding="utf-8") for script in scripts)


def test_script_in_a_frame_is_counted_once_and_only_on_the_page_s_own_thread():
    def ran(name, start, long, thread=1):
        return {"name": name, "ph": "X", "pid": 1, "tid": thread, "tts": start, "tdur": long}

    first = [ran("FireAnimationFrame", 0, 1000), ran("FunctionCall", 100, 800)]
    second = [ran("EventDispatch", 2000, 500), ran("Layout", 2600, 9000), ran("FireAnimationFrame", 12000, 2000)]
    elsewhere = [ran("FireAnimationFrame", 0, 9000, thread=2), {"name": "FunctionCall", "ph": "I", "pid": 1, "tid": 1}]
    last = [ran("FireAnimationFrame", 15000, 300), ran("FunctionCall", 15100, 100)]
    assert script_in_frames([*last, *elsewhere, *second, *first]) == [2.5, 0.3, 0.0]
