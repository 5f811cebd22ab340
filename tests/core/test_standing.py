"""The standing: by two lists and no clock, the same in any order, and what was not weighed is not claimed."""

from random import Random
from typing import Any

import pytest
from hypothesis import given

from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.sentences import gap_sentence, margin_sentence
from tarebook.core.standing.standing import Standing, standing
from tests.core import garages, whole_cars
from tests.core.garages import RANDOMS
from tests.plain import plain

PADS = {"id": "pads", "kind": "corner_pads", "division": "0.2 kg", "repeatability": "0.2 kg"}
BENCH = {"id": "bench", "kind": "bench", "division": "10 g"}
SHEET = {"id": "sheet", "minimum": "900 kg", "driver": "out", "fuel": "as_it_is"}


def part(name: str, kilograms: float) -> dict[str, Any]:
    """A part, weighed on the bench, taken off by the job of its name."""
    return {
        "parts": [{"id": name}],
        "weighings": [
            {"id": f"w-{name}", "of": name, "method": "direct", "shown": f"{kilograms} kg", "scale": "bench"}
        ],
        "job_parts": [{"id": f"jp-{name}", "job": f"job-{name}", "part": name, "way": "off"}],
        "jobs": [{"id": f"job-{name}", "state": "fitted"}],
    }


def weigh_in(name: str, total: float, jobs: list[str] | None, **more: Any) -> dict[str, Any]:
    record = {"id": name, "layout": "total", "total": f"{total} kg", "scale": "pads", "trim": "event", "fuel": "10 L"}
    return {**record, **({} if jobs is None else {"jobs": jobs}), **more}


def garage(*weigh_ins: dict[str, Any], parts: tuple[dict[str, Any], ...] = (), **more: Any) -> dict[str, Any]:
    lists = {
        kind: [row for each in parts for row in each[kind]] for kind in ("parts", "weighings", "job_parts", "jobs")
    }
    given = {"trim": "event", "scales": [PADS, BENCH], "class_sheets": [SHEET], "weigh_ins": list(weigh_ins)}
    return {**given, **lists, **more}


def stand(given: dict[str, Any], **asked: Any) -> Standing:
    return standing(read_garage(given), **asked)


def value(item: Uncertain | None) -> float:
    assert item is not None
    return item.value


SPARE, HOOK = part("spare", 13.4), part("hook", 1.9)


def test_with_one_weigh_in_the_weight_is_that_and_the_jobs_since():
    found = stand(garage(weigh_in("k", 930, ["job-spare"]), parts=(SPARE, HOOK)))
    assert value(found.weight) == pytest.approx(930 - 1.9)
    assert found.since is not None
    assert (found.since.put_in, found.since.taken_out) == (("job-hook",), ())
    assert value(found.removed) == pytest.approx(13.4 + 1.9)


def test_a_job_that_was_in_the_car_then_and_is_undone_now_comes_back():
    undone = {**SPARE, "jobs": [{"id": "job-spare", "state": "undone"}]}
    found = stand(garage(weigh_in("k", 930, ["job-spare"]), parts=(undone, HOOK)))
    assert value(found.weight) == pytest.approx(930 + 13.4 - 1.9)
    assert found.since is not None
    assert found.since.taken_out == ("job-spare",)


def test_no_clock_decides_what_was_in_the_car():
    late = {**SPARE, "jobs": [{"id": "job-spare", "state": "fitted", "fitted_on": "2031-01-01"}]}
    found = stand(garage(weigh_in("k", 930, ["job-spare"], at="2026-01-01"), parts=(late,)))
    assert value(found.weight) == 930.0


def test_a_job_for_the_event_only_is_not_in_the_car_on_the_road():
    for_event = {**HOOK, "jobs": [{"id": "job-hook", "state": "fitted", "trim": "event"}]}
    given = garage(weigh_in("k", 930, []), parts=(for_event,))
    assert value(stand(given).weight) == pytest.approx(930 - 1.9)
    assert value(stand({**given, "trim": "road"}).weight) == 930.0


def test_without_a_weigh_in_there_are_only_the_kilograms_removed():
    found = stand(garage(parts=(SPARE, HOOK), cars=[{"id": "c", "book_weight": "950 kg"}]))
    assert found.weight is None
    assert found.margin is None
    assert found.official is None
    assert found.reasons["weight"]["code"] == "no_weigh_in"
    assert found.removed.value == pytest.approx(15.3)
    assert found.removed.u > 0
    assert found.start is not None
    assert (found.start.basis, found.start.weight.value, found.start.weight.u) == ("quoted", 950.0, 0.0)


def test_two_weigh_ins_that_fit_the_jobs_leave_no_gap():
    found = stand(garage(weigh_in("k1", 943.4, []), weigh_in("k2", 930, ["job-spare"]), parts=(SPARE,)))
    assert found.gap is not None
    assert found.gap.difference.value == pytest.approx(0, abs=1e-9)
    assert not found.gap.significant


def test_what_is_in_the_car_and_not_written_down_is_named_with_its_doubt():
    lists = {"fuel_within": "0.1 L"}
    found = stand(
        garage(weigh_in("k1", 943.4, [], **lists), weigh_in("k2", 933.1, ["job-spare"], **lists), parts=(SPARE,))
    )
    assert found.gap is not None
    assert found.gap.difference.value == pytest.approx(3.1)
    # The pads' gain acts on the 10.3 kg between the weigh-ins only: 0.2 % of a car would be 1.9 kg.
    assert found.gap.difference.u < 0.5
    assert gap_sentence(found.gap, "kg").text == "3.1 ± 0.6 kg more is in the car than written down"


def test_the_same_scale_twice_knows_a_change_better_than_the_car():
    found = stand(garage(weigh_in("k1", 943.4, []), weigh_in("k2", 930, ["job-spare"]), parts=(SPARE,)))
    assert found.weight is not None
    assert found.gap is not None
    assert found.gap.difference.u < 0.6 * found.weight.u


def test_the_minimum_has_its_adders_in_it_exactly():
    found = stand(garage(weigh_in("k", 930, []), class_sheets=[{**SHEET, "adders": "10 lb"}]))
    assert found.minimum == 900 + 10 * 0.45359237
    assert value(found.margin) == pytest.approx(930 - found.minimum)


@pytest.mark.parametrize("field", ["minimum", "adders"])
def test_a_minimum_half_of_which_cannot_be_read_is_no_minimum(field):
    found = stand(garage(weigh_in("k", 930, []), class_sheets=[{**SHEET, field: "20"}]))
    assert found.weight is not None
    assert found.minimum is None
    assert found.margin is None
    assert found.reasons["margin"]["code"] == "quantity_unit_missing"
    assert margin_sentence(found, "kg").code == f"{field}_unread"


def test_unconfirmed_jobs_give_no_weight_rather_than_a_wrong_one():
    found = stand(garage(weigh_in("k", 930, None), parts=(SPARE,)))
    assert found.weight is None
    assert found.reasons["weight"]["code"] == "jobs_not_confirmed"
    assert stand(garage(weigh_in("k", 930, None))).weight is not None


@pytest.mark.parametrize(("minimum", "verdict"), [("900 kg", "above"), ("929 kg", "close"), ("950 kg", "under")])
def test_the_verdict_says_above_only_when_it_is_sure(minimum, verdict):
    found = stand(garage(weigh_in("k", 930, []), class_sheets=[{**SHEET, "minimum": minimum}]))
    assert found.verdict == verdict
    assert margin_sentence(found, "kg").code == verdict


def weighed_officially(total: float, **scale: Any) -> dict[str, Any]:
    """A car of about 910 kg on the pads, and on the official platform some time before, at another load."""
    platform = {"id": "platform", "kind": "platform", "repeatability": "0.3 kg", **scale}
    before = weigh_in("k1", total, [], scale="platform", official=True, at="2026-01-01")
    return garage(before, weigh_in("k2", 910, [], at="2026-02-01"), scales=[PADS, BENCH, platform])


def kept_in_hand(given: dict[str, Any]) -> float:
    official = stand(given).official
    assert official is not None
    return official.in_hand


def test_an_official_scale_that_showed_less_than_the_pads_asks_for_more_in_hand():
    kept = [kept_in_hand(weighed_officially(total, division="1 kg")) for total in (909, 910, 911)]
    assert kept == sorted(kept, reverse=True)
    assert kept[0] - kept[2] > 0.3


@pytest.mark.parametrize("division", ["0.2 kg", "1 kg", "5 kg"])
def test_knowing_less_of_the_official_scale_never_asks_for_less_in_hand(division):
    whole = kept_in_hand(weighed_officially(910, division=division, accuracy_class="III"))
    assert kept_in_hand(weighed_officially(910, division=division)) >= whole
    assert kept_in_hand(weighed_officially(910)) >= kept_in_hand(weighed_officially(910, division="1 kg"))


def moved_unweighed(way: str, minimum: str = "900 kg") -> Standing:
    """A car of 930 kg, and a part nobody weighed moved since: off, on, or off and back on."""
    ways = {"off": ("off",), "on": ("on",), "off and on": ("off", "on")}[way]
    jobs = [{"id": f"j-{each}", "state": "fitted"} for each in ways]
    job_parts = [{"id": f"jp-{each}", "job": f"j-{each}", "part": "seat", "way": each} for each in ways]
    sheet = {**SHEET, "minimum": minimum}
    given = garage(weigh_in("k", 930, []), parts=(), class_sheets=[sheet])
    return stand({**given, "parts": [{"id": "seat"}], "jobs": jobs, "job_parts": job_parts})


@pytest.mark.parametrize(
    ("way", "minimum", "verdict", "code"),
    [
        ("off", "900 kg", "unweighed", "above_as_weighed"),
        ("off", "950 kg", "under", "under_as_weighed"),
        ("on", "900 kg", "above", "above_as_weighed"),
        ("on", "950 kg", "unweighed", "under_as_weighed"),
        ("off and on", "900 kg", "above", "above"),
    ],
)
def test_what_moved_without_a_weight_makes_nothing_sure_that_it_could_undo(way, minimum, verdict, code):
    found = moved_unweighed(way, minimum)
    assert (found.verdict, margin_sentence(found, "kg").code) == (verdict, code)
    assert ("sure" in margin_sentence(found, "kg").text) == (code == "above")


def test_bad_news_is_not_called_too_close_to_call():
    likely = stand(garage(weigh_in("k", 930, []), class_sheets=[{**SHEET, "minimum": "931.5 kg"}]))
    assert likely.verdict == "close"
    assert likely.official is not None
    assert likely.official.chance_under > 0.5
    assert margin_sentence(likely, "kg").text.startswith("Probably under the minimum: ")


def test_a_check_that_was_left_out_is_told_beside_the_weight():
    absurd = {"id": "c", "scale": "pads", "known": "10 kg", "shown": "100 kg"}
    found = stand(garage(weigh_in("k", 930, []), scale_checks=[absurd]))
    assert [each["data"] for each in found.warnings if each["code"] == "check_far_off"] == [
        {"scale": "pads", "check": "c"}
    ]


def test_what_is_missing_ends_without_a_full_stop_of_its_own():
    found = stand(garage(weigh_in("k", 930, []), class_sheets=[{**SHEET, "minimum": "12 psi"}]))
    assert margin_sentence(found, "kg").text == "The class minimum cannot be read: “psi” is not a unit of mass"


@given(RANDOMS)
def test_the_order_of_the_records_never_changes_a_digit(random: Random):
    made = whole_cars.garage(random)
    assert plain(stand(garages.shuffled(random, made))) == plain(stand(made))


@given(RANDOMS)
def test_every_answer_is_a_number_or_has_a_reason(random: Random):
    found = stand(whole_cars.garage(random))
    for name in ("weight", "margin", "start", "gap"):
        assert (getattr(found, name) is None) == (name in found.reasons)
    assert (found.official is None) == (found.margin is None) == (found.verdict is None)
    assert margin_sentence(found, "lb oz").text


@given(RANDOMS)
def test_a_part_taken_off_and_put_back_since_changes_nothing(random: Random):
    made = whole_cars.garage(random)
    before = stand(made)
    name = random.choice(made["parts"])["id"]
    jobs = [{"id": "there", "state": "fitted"}, {"id": "back", "state": "fitted"}]
    ways = [
        {"id": "q1", "job": "there", "part": name, "way": "off"},
        {"id": "q2", "job": "back", "part": name, "way": "on"},
    ]
    weigh_ins = [{"jobs": [], **record} for record in made["weigh_ins"]]
    confirmed = {**made, "weigh_ins": weigh_ins}
    with_jobs = {**confirmed, "jobs": [*made["jobs"], *jobs], "job_parts": [*made["job_parts"], *ways]}
    assert stand(with_jobs).weight == stand(confirmed).weight
    assert stand(with_jobs).removed.value == pytest.approx(before.removed.value, abs=1e-9)


@given(RANDOMS)
def test_since_a_weigh_in_right_now_nothing_was_done(random: Random):
    made = {**whole_cars.garage(random), "trim": "event"}
    inside = [job["id"] for job in made["jobs"] if job["state"] == "fitted"]
    now = weigh_in("now", 941, inside, scale=made["scales"][-1]["id"], fuel_within="1 L")
    found = stand({**made, "weigh_ins": [*made["weigh_ins"], now]})
    if found.fused is None or found.since is None or "now" in found.fused.left_out:
        assert found.condition.driver == "in" or found.condition.fuel in ("full", "stated")
    elif not found.fused.answers[0].off:  # else it rests on the one before
        assert (found.since.weigh_in, found.since.net) == ("now", Uncertain(0.0))


def test_only_the_weigh_in_asked_for_counts():
    given = garage(weigh_in("k1", 943.4, []), weigh_in("k2", 931, ["job-spare"]), parts=(SPARE,))
    assert value(stand(given, weigh_in="k1").weight) == pytest.approx(930)
    assert value(stand(given, weigh_in="k2").weight) == pytest.approx(931)
    assert 930 < value(stand(given).weight) < 931


def test_what_is_fitted_at_the_ballast_places_is_in_the_car_in_place_of_what_was_on_board_then():
    places: list[dict[str, Any]] = [{"id": "a", "block": "2.5 kg", "fitted": 2}, {"id": "b", "block": "1 kg"}]
    given = garage(weigh_in("k", 930, [], ballast="7 kg"))
    noted = stand({**given, "ballast_places": places})
    assert (value(stand(given).weight), stand(given).ballast) == (930, 7)
    assert (value(noted.weight), noted.ballast) == (928, 5)
    emptied = stand({**given, "ballast_places": [{**places[0], "fitted": 0}]})
    assert (value(emptied.weight), emptied.ballast) == (923, 0)


def test_a_weigh_in_corrected_five_times_says_no_more_than_one_corrected_once():
    first = weigh_in("w1", 1000, [])
    corrected = [weigh_in(f"w{n}", 1000 + n / 10, [], replaces="w1") for n in range(2, 7)]
    once, often = stand(garage(first, corrected[-1])), stand(garage(first, *corrected))
    assert once.weight is not None
    assert often.weight == once.weight
