"""What a gain was believed to be day by day, against an independent smoother; and the day from which a check pays."""

from datetime import date
from typing import Any

import numpy as np
import pytest
from statsmodels.tsa.statespace.kalman_smoother import KalmanSmoother

from tarebook.core.fusion import average, looked
from tarebook.core.fusion.behaviour import MONTH, Behaviour, groups
from tarebook.core.fusion.believed import Ageing, believed
from tarebook.core.fusion.evidence import Evidence, evidence
from tarebook.core.fusion.fusion import Fusion, fused
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.given import given_by
from tarebook.core.weighing.weighing import masses

WALK = 0.0007
DAYS = ("2026-03-10", "2026-04-02", "2026-05-20", "2026-06-01", "2026-08-15", "2026-09-30")


def garage(totals: list[float], on: list[str], checked: str = "2026-03-01") -> dict[str, Any]:
    """A car of one weight on pads that were checked, and on a platform."""
    weigh_ins = [
        {"id": f"k{n}", "layout": "total", "total": f"{total:.1f} kg", "scale": scale, "at": day, "trim": "event",
         "jobs": [], "fuel": "10 L", "fuel_within": "0.001 L", "driver_in": False, "ready": ["zeroed", "level"]}
        for n, (total, scale, day) in enumerate(zip(totals, on, DAYS, strict=True))
    ]  # fmt: skip
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol"}],
        "scales": [
            {"id": "pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.2 kg"},
            {"id": "platform", "kind": "platform", "division": "0.2 kg", "repeatability": "0.2 kg"},
        ],
        "scale_checks": [
            {"id": "c0", "scale": "pads", "known": "200 kg", "known_within": "0.02 kg", "shown": "200.1 kg",
             "at": checked},
        ],
        "weigh_ins": weigh_ins,
    }  # fmt: skip


def asked(given: dict[str, Any], day: str) -> tuple[Fusion, Ageing]:
    read = read_garage(given)
    known = masses(read)
    found = given_by(read, known)
    looks = evidence(found.weighed, found.now, found.nets, found.condition)
    assert isinstance(looks, Evidence)
    among = groups(read, known.scales, looks.counted)
    fusion = fused(looks, among)
    return fusion, believed(read, known, fusion, among, "pads", day)


@pytest.mark.parametrize("seed", range(6))
def test_a_walking_gain_is_that_of_a_general_smoother_day_by_day(seed, monkeypatch):
    """statsmodels, states: the car's weight and two gains, that of the pads walking from its check on."""
    random = np.random.default_rng(seed)
    monkeypatch.setattr(looked, "behaviours", lambda _: (Behaviour(WALK, 0.0, 0.0, 1.0, 0.0),))
    monkeypatch.setattr(average, "_A_GAP", 1e-12)
    on = ["pads", *random.choice(["pads", "platform"], 4), "pads"]
    totals = (960.0 + random.normal(0.0, 1.0, 6)).round(1).tolist()
    fusion, ageing = asked(garage(totals, on), "2026-11-01")
    counted = fusion.evidence.counted

    month = [date.fromisoformat(day).toordinal() / MONTH for day in ("2026-03-01", *DAYS, "2026-11-01")]
    pads = counted[0].loads.gain
    platform = [each.loads.gain.u for each in counted if each.record.scale == "platform"]
    wholes = [each.loads.total or Uncertain(0.0) for each in counted]
    values = np.array(fusion.values)
    loads = np.array([each.value for each in wholes]) - (values - fusion.weight.value)
    apart = ("round:", "rep:", "unready:")
    own = [sum(part**2 for name, part in each.sources.items() if name.startswith(apart)) for each in wholes]
    count = len(DAYS) + 2  # the check and the day asked for tell nothing of the car themselves
    smoother = KalmanSmoother(k_endog=1, k_states=3, k_posdef=1)
    seen = np.full((1, count), np.nan)
    seen[0, 1:-1] = values - values[-1]
    smoother.bind(seen)
    design, noise = np.zeros((1, 3, count)), np.ones((1, 1, count))
    for at, scale in enumerate(on):
        # What a gain is higher than its record says shows as more weight, by the record's own gain to first order.
        design[0, :, at + 1] = [1.0, loads[at] * (scale == "pads"), loads[at] * (scale == "platform")]
        noise[0, 0, at + 1] = own[at]
    smoother["design"], smoother["obs_cov"], smoother["transition"] = design, noise, np.eye(3)
    smoother["selection"] = np.array([[0.0], [1.0], [0.0]])
    smoother["state_cov"] = (np.diff(month, append=month[-1]) * WALK**2)[None, None, :]
    start = np.diag([1e8, pads.u**2, max(platform, default=0.0) ** 2])
    smoother.initialize_known(np.zeros(3), start)
    found = smoother.smooth()
    days = [0, *(n + 1 for n, scale in enumerate(on) if scale == "pads"), count - 1]
    assert [each.sort for each in ageing.beliefs] == ["check", *["weigh_in"] * on.count("pads"), "day"]
    told = [each.gain - pads.value for each in ageing.beliefs]
    assert told == pytest.approx(found.smoothed_state[1, days], rel=2e-3, abs=2e-7)
    assert [each.u for each in ageing.beliefs] == pytest.approx(np.sqrt(found.smoothed_state_cov[1, 1, days]), rel=2e-3)


def test_a_check_pays_from_the_day_wandering_has_added_as_much_as_it_left():
    """By hand: of the doubt squared on that day half is the check's and half is age."""
    given = {**garage([960.0] * 6, ["platform"] * 6), "weigh_ins": []}
    read = read_garage(given)
    known = masses(read)
    due = believed(read, known, None, (), "pads", "2026-03-02").due
    assert due
    on_that_day = believed(read, known, None, (), "pads", due)
    at_the_check, then = on_that_day.beliefs
    assert then.u**2 == pytest.approx(2.0 * at_the_check.u**2, rel=0.05)
    assert on_that_day.now
    assert not believed(read, known, None, (), "pads", "2026-03-02").now


def test_weigh_ins_that_wander_make_the_next_check_pay_sooner():
    """What looks say of wandering counts: against a platform next to them the pads ran off by a kilogram a month."""
    on = ["platform", "pads"] * 3
    steady = asked(garage([960.0] * 6, on), "2026-10-01")[1].due
    off = asked(garage([960.0, 960.0, 960.0, 962.0, 960.0, 966.0], on), "2026-10-01")[1].due
    assert steady
    assert off
    assert off < steady
