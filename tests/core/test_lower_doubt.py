"""What is promised to lower the doubt does lower it so far, once it is written down as a person would."""

from typing import Any

import pytest

from tarebook.core.fusion.lowering import Lowering
from tarebook.core.garage.garage import read_garage
from tarebook.core.standing.lower_doubt import LEAST, lower_doubt
from tarebook.core.standing.standing import RISK, standing
from tarebook.core.standing.trials import Asked, asked

TODAY = "2026-07-01"
Records = dict[str, Any]


def weigh_in(n: int, total: float, scale: str, jobs: list[str], **more: Any) -> Records:
    return {
        "id": f"k{n}", "layout": "total", "total": f"{total:.1f} kg", "scale": scale, "at": f"2026-0{n + 1}-11",
        "trim": "event", "jobs": jobs, "fuel": "10 L", "fuel_within": "1 L", "driver_in": False, **more,
    }  # fmt: skip


def garage(**change: Any) -> Records:
    """960 kg with 10 L; a rear glass of about 15 kg was taken out, and nobody weighed it."""
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol", "tank_size": "45 L"}],
        "scales": [
            {"id": "pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.2 kg"},
            {"id": "hanging", "kind": "hanging", "division": "20 g", "capacity": "50 kg"},
            {"id": "bath", "kind": "bathroom", "division": "0.1 kg"},
        ],
        "scale_checks": [
            {"id": "c0", "scale": "hanging", "known": "20 kg", "known_within": "0.02 kg", "known_name": "plate",
             "shown": "20.04 kg", "at": "2026-01-02"},
        ],
        "parts": [{"id": "glass", "claim": "15 kg", "claim_basis": "guessed"}],
        "jobs": [{"id": "j0", "state": "fitted"}],
        "job_parts": [{"id": "q0", "job": "j0", "part": "glass", "way": "off"}],
        "weigh_ins": [
            weigh_in(0, 960.4, "pads", [], ready=["zeroed", "level"]),
            weigh_in(1, 960.6, "pads", [], ready=["zeroed", "level"]),
        ],
        "class_sheets": [
            {"id": "sheet", "minimum": "900 kg", "driver": "out", "fuel": "stated", "fuel_stated": "10 L"},
        ],
        **change,
    }  # fmt: skip


def now_of(given: Records) -> Asked:
    found = asked(read_garage(given), TODAY, RISK)
    assert found
    return found


def doubt(given: Records) -> float:
    found = standing(read_garage(given)).weight
    assert found
    return found.u


def done(given: Records, what: Lowering) -> Records:
    """The same garage with what was promised done: the scales show what is true, to their steps."""
    if what.way == "weigh":
        look = {"id": "w", "of": what.of, "method": "direct", "scale": what.on, "at": TODAY}
        shown = {"glass": "15.04 kg", "anna": "80.2 kg"}[what.of or ""]
        return {**given, "weighings": [*given.get("weighings", []), {**look, "shown": shown}]}
    if what.against:
        known = {"known": f"{what.against} kg", "known_within": "0.2 kg", "shown": f"{what.against} kg", "at": TODAY}
        given = {**given, "scale_checks": [*given["scale_checks"], {"id": "c", "scale": what.of, **known}]}
    if what.way == "check":
        return given
    # Who sets the zero has the list of what to see to before them, and sees to the rest as last time, or to all of it.
    more: Records = {}
    if "zeroed" in what.first:
        more = {"ready": given["weigh_ins"][-1].get("ready", ["zeroed", "level", "rolled", "pressures", "clear"])}
    more |= {"fuel_within": "0.5 L"} if "fuel" in what.first else {}
    official = {"official": True, "scale": None} if what.of is None else {}
    last = given["weigh_ins"][-1]
    as_last = {name: last[name] for name in ("ready", "driver_in", "driver") if name in last}
    total = GLASS_OUT + (80.2 if last["driver_in"] else 0.0)
    again = {**weigh_in(6, total, what.of or "", ["j0"]), **as_last, **more, **official}
    return {**given, "weigh_ins": [*given["weigh_ins"], again]}


GLASS_OUT = 945.4


WORLDS = {
    "a glass nobody weighed": garage(),
    "zeros nobody set": garage(
        weigh_ins=[weigh_in(0, 960.4, "pads", []), weigh_in(1, 960.6, "pads", []), weigh_in(2, 945.4, "pads", ["j0"])],
    ),
    "zeros nobody set on pads that may have run off": garage(
        scale_checks=[
            {"id": "c1", "scale": "pads", "known": "400 kg", "known_within": "0.2 kg", "shown": "400.0 kg",
             "at": "2025-06-02"},
        ],
        weigh_ins=[weigh_in(0, 960.4, "pads", []), weigh_in(1, 960.6, "pads", []), weigh_in(2, 945.4, "pads", ["j0"])],
    ),
    "a driver who said it": garage(
        drivers=[{"id": "anna", "claim": "80 kg", "claim_basis": "guessed"}],
        weigh_ins=[
            weigh_in(0, 960.4, "pads", [], ready=["zeroed", "level"]),
            weigh_in(1, 1025.6, "pads", ["j0"], ready=["zeroed", "level"], driver_in=True, driver="anna"),
        ],
    ),
    "pads that rest on a check of long ago": garage(
        scale_checks=[
            {"id": "c1", "scale": "pads", "known": "300 kg", "known_within": "0.2 kg", "shown": "300.0 kg",
             "at": "2025-03-02"},
        ],
        parts=[{"id": "glass", "claim": "15 kg", "claim_within": "0.1 kg", "claim_basis": "worked_out"}],
    ),
}  # fmt: skip


@pytest.mark.parametrize("world", WORLDS)
def test_what_is_promised_is_what_the_standing_has_once_it_is_done(world):
    given = WORLDS[world]
    told = lower_doubt(now_of(given))
    assert told
    for each in told:
        assert each.u_now == pytest.approx(doubt(given), rel=1e-9)
        assert each.u_then == pytest.approx(doubt(done(given, each)), rel=0.1), each


def test_the_best_per_minute_stands_first_and_nothing_that_brings_less_than_a_tenth_of_a_kilogram():
    for given in WORLDS.values():
        told = lower_doubt(now_of(given))
        rates = [each.brings / each.minutes for each in told]
        assert rates == sorted(rates, reverse=True)
        assert all(each.brings >= LEAST for each in told)
        assert len(told) <= 3


def test_each_world_is_told_what_its_doubt_is_made_of():
    ways = {world: [(each.way, each.of) for each in lower_doubt(now_of(given))] for world, given in WORLDS.items()}
    assert ways["a glass nobody weighed"][0] == ("weigh", "glass")
    assert ("weigh", "anna") in ways["a driver who said it"]
    assert ("check", "pads") in ways["pads that rest on a check of long ago"]
    zeros = [each for each in lower_doubt(now_of(WORLDS["zeros nobody set"])) if each.of == "pads"]
    assert zeros[0].first == ("zeroed",)
    both = [each for each in lower_doubt(now_of(WORLDS["zeros nobody set on pads that may have run off"])) if each.of]
    assert both[0].first == ("checked", "zeroed")


def test_without_a_weigh_in_nothing_is_asked():
    assert asked(read_garage(garage(weigh_ins=[])), TODAY, RISK) is None
