"""Whatever is put in front of the reader, it reads what it can, names what it cannot, and never raises."""

import re
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.garage.garage import read_garage
from tarebook.core.generated.records import SHAPES
from tarebook.core.ledger.compare import compare
from tarebook.core.ledger.ledger import ledger
from tarebook.core.weighing.weighing import masses
from tarebook.errors import ERRORS
from tarebook.journal.kinds import KINDS
from tests.core.garages import RANDOMS, garage, shuffled

LISTS = [f"{kind}s" for kind in SHAPES]
NAMES = sorted({name for kind in SHAPES for name in KINDS[kind].fields})

words = ("a", "b", "1 kg", "12 lb 3 oz", "1,5 kg", "-3 kg", "", "direct", "batch", "fitted", "event", "on")
values = st.recursive(
    st.none() | st.booleans() | st.integers(-5, 2000) | st.floats() | st.sampled_from(words) | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(["value", "unit"]), inner, max_size=3),
    max_leaves=4,
)
wild_records = st.dictionaries(st.sampled_from([*NAMES, "id", "deleted", "replaces", "colour"]), values, max_size=8)
wild_lists = st.lists(wild_records, max_size=4) | values
wild_garages = st.dictionaries(st.sampled_from([*LISTS, "car", "trim"]), wild_lists, max_size=6)


@given(wild_garages)
def test_no_data_makes_the_core_raise(given_garage):
    read = read_garage(given_garage)
    found = ledger(read)
    compare(read, "a", "b")
    assert all(warning["code"] in ERRORS for warning in found.warnings)


@given(wild_garages)
def test_every_warning_reads_as_a_sentence_with_nothing_left_open(given_garage):
    for warning in ledger(read_garage(given_garage)).warnings:
        row = ERRORS[warning["code"]]
        assert set(re.findall(r"{(\w+)}", row.sentence + row.do)) <= set(warning["data"])


@given(RANDOMS)
def test_the_order_of_the_records_changes_nothing_at_all(random: Random):
    whole = garage(random)
    assert read_garage(shuffled(random, whole)) == read_garage(whole)


@given(RANDOMS)
def test_reading_well_formed_records_warns_of_nothing(random: Random):
    assert read_garage(garage(random)).warnings == []


@given(RANDOMS)
def test_a_deleted_weighing_is_as_if_it_had_never_been(random: Random):
    whole = garage(random)
    kept, gone = whole["weighings"][::2], whole["weighings"][1::2]
    with_deleted = {**whole, "weighings": [*kept, *({**one, "deleted": True} for one in gone)]}
    assert masses(read_garage(with_deleted)) == masses(read_garage({**whole, "weighings": kept}))


@given(RANDOMS)
def test_a_replaced_weighing_is_as_if_it_had_never_been(random: Random):
    whole = garage(random)
    wrong = [{**one, "id": f"wrong-{one['id']}", "shown": "31 kg"} for one in whole["weighings"]]
    right = [{**one, "replaces": f"wrong-{one['id']}"} for one in whole["weighings"]]
    assert masses(read_garage({**whole, "weighings": [*wrong, *right]})) == masses(read_garage(whole))


def _weigh_ins(*facts: tuple[str, str | None]) -> dict[str, list[dict[str, object]]]:
    return {"weigh_ins": [{"id": name, "replaces": of, "layout": "total", "trim": "event"} for name, of in facts]}


def test_of_corrections_made_apart_one_counts_and_all_are_named():
    read = read_garage(_weigh_ins(("a", None), ("b", "a"), ("c", "a"), ("d", "b"), ("e", "d")))
    assert list(read.weigh_ins) == ["e"]
    rivals = [(each["code"], each["data"]["id"], each["data"]["ref"]) for each in read.warnings]
    assert rivals == [("corrected_apart", "e", "c")]


def test_a_correction_counts_though_its_id_is_before_that_of_what_it_replaces():
    read = read_garage(_weigh_ins(("c", None), ("b", "c"), ("a", "b")))
    assert list(read.weigh_ins) == ["a"]
    assert read.warnings == []


def test_of_what_replaces_itself_in_a_circle_one_counts():
    assert len(read_garage(_weigh_ins(("a", "b"), ("b", "a"))).weigh_ins) == 1


def test_a_correction_of_a_withdrawn_correction_still_takes_the_place_of_the_first():
    given = _weigh_ins(("a", None), ("b", "a"), ("c", "b"))
    given["weigh_ins"][1]["deleted"] = True
    given["lifts"] = [{"id": "l", "weigh_in": "b", "raised": "rear", "height": "400 mm", "tilted": "450 kg"}]
    read = read_garage(given)
    assert list(read.weigh_ins) == ["c"]
    assert read.lifts["l"].weigh_in == "c"


def test_with_all_its_corrections_withdrawn_the_first_counts_again():
    given = _weigh_ins(("a", None), ("b", "a"), ("c", "a"))
    for each in given["weigh_ins"][1:]:
        each["deleted"] = True
    assert list(read_garage(given).weigh_ins) == ["a"]
