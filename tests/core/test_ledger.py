"""However the ledger is cut, it is one ledger; what is put back is gone from it; and money is exact."""

from fractions import Fraction
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tarebook.core.garage.garage import read_garage
from tarebook.core.ledger.compare import compare
from tarebook.core.ledger.ledger import Ledger, ledger
from tarebook.core.numbers.uncertain import Uncertain, subtract, total
from tests.core.garages import RANDOMS, garage, shuffled

garages = RANDOMS.map(garage)


def same(one: Uncertain, other: Uncertain) -> bool:
    """Equal but for the last digits, in value and in every source: what they do not share is nothing."""
    rest = subtract(one, other)
    size = max(1.0, abs(one.value), one.u)
    return abs(rest.value) < 1e-12 * size and rest.u < 1e-12 * size


def nets(totals) -> Uncertain:
    return total([each.net for each in totals])


def read(given_garage) -> Ledger:
    return ledger(read_garage(given_garage))


@given(garages)
def test_the_stages_add_up_to_the_car(whole):
    found = read(whole)
    assert same(nets(stage.states["fitted"].mass for stage in found.by_stage), found.now.mass.net)
    assert sum(stage.states["fitted"].effort.money for stage in found.by_stage) == found.now.effort.money
    assert sum(stage.states["fitted"].effort.hours for stage in found.by_stage) == found.now.effort.hours


@given(garages)
def test_the_zones_add_up_to_the_car(whole):
    found = read(whole)
    assert same(nets(zone.mass for zone in found.by_zone), found.now.mass.net)


@given(garages)
def test_the_jobs_add_up_to_the_car(whole):
    found = read(whole)
    assert same(nets(found.jobs[job].total.mass for job in found.in_car), found.now.mass.net)
    assert {key for key, net in found.jobs.items() if net.in_car} == set(found.in_car)


@given(garages)
def test_what_stays_and_what_is_put_in_for_the_event_add_up_to_the_event_trim(whole):
    found = read({**whole, "trim": "event"})
    assert same(nets(each.mass for each in found.by_trim.values()), found.now.mass.net)
    road = read({**whole, "trim": "road"})
    assert same(road.now.mass.net, found.by_trim["both"].mass.net)


@given(garages)
def test_every_job_is_in_exactly_one_state(whole):
    found = read({**whole, "trim": "event"})
    jobs = [job for each in found.by_state.values() for job in each.effort.jobs]
    assert sorted(jobs) == sorted(found.jobs)


@given(garages)
def test_the_last_step_is_where_the_car_stands(whole):
    found = read(whole)
    assert [step.job for step in found.cumulative] == list(found.in_car)
    if found.cumulative:
        assert found.cumulative[-1].value == pytest.approx(found.now.mass.net.value, abs=1e-12)
        assert found.cumulative[-1].u == pytest.approx(found.now.mass.net.u, rel=1e-9, abs=1e-12)


@given(garages)
def test_putting_everything_back_leaves_nothing_and_no_doubt(whole):
    back = {"off": "on", "on": "off"}
    again = [{**job, "id": f"undo-{job['id']}"} for job in whole["jobs"]]
    lines = [
        {**line, "id": f"undo-{line['id']}", "job": f"undo-{line['job']}", "way": back[line["way"]]}
        for line in whole["job_parts"]
    ]
    found = read({**whole, "jobs": whole["jobs"] + again, "job_parts": whole["job_parts"] + lines})
    assert found.now.mass.net == Uncertain(0.0, {})
    assert found.cumulative == () or found.cumulative[-1].u == 0.0


@given(garages, RANDOMS)
def test_the_order_of_the_records_changes_no_digit(whole, random: Random):
    assert read(shuffled(random, whole)) == read(whole)


@given(garages)
def test_a_replaced_weighing_never_counts(whole):
    wrong = [{**one, "id": f"wrong-{one['id']}", "shown": "31 kg"} for one in whole["weighings"]]
    right = [{**one, "replaces": f"wrong-{one['id']}"} for one in whole["weighings"]]
    assert read({**whole, "weighings": [*wrong, *right]}) == read(whole)


@given(garages)
def test_a_job_that_is_not_fitted_moves_nothing(whole):
    planned = [{**job, "state": "chosen"} for job in whole["jobs"]]
    found = read({**whole, "jobs": planned})
    assert found.now.mass.net == Uncertain(0.0, {})
    assert found.spent.money == 0


@given(garages)
def test_the_shares_of_what_was_moved_are_a_whole(whole):
    found = read(whole)
    moved = found.now.mass.off.value + found.now.mass.on.value
    assert sum(found.shares.values()) == pytest.approx(1.0 if moved else 0.0)


@given(garages)
def test_every_total_can_be_followed_down_to_its_weighings(whole):
    found = read(whole)
    lines = {line.id: line for net in found.jobs.values() for line in net.lines}
    weighings = {one["id"] for one in whole["weighings"]}
    for name in found.now.mass.lines:
        line = lines[name]
        assert line.mass is not None
        assert line.basis != "weighed" or set(line.weighings) <= weighings
        assert (line.mass.value > 0) == (line.way == "on")
    assert {lines[name].part for name in found.now.mass.lines}.isdisjoint(found.unweighed)


@given(st.lists(st.decimals(0, 10**9, places=2), max_size=30))
def test_money_adds_up_to_the_cent(amounts):
    jobs = [{"id": f"j{n}", "state": "fitted", "money": str(amount)} for n, amount in enumerate(amounts)]
    assert read({"jobs": jobs}).now.effort.money == sum(map(Fraction, amounts), Fraction(0))


@given(garages)
def test_a_comparison_turned_round_is_the_same_difference_the_other_way(whole):
    book = read_garage(whole)
    parts = sorted(book.parts)
    one, other = compare(book, parts[0], parts[-1]), compare(book, parts[-1], parts[0])
    assert (one.difference is None) == (other.difference is None)
    if one.difference and other.difference:
        assert total([one.difference, other.difference]) == Uncertain(0.0, {})
