"""The search for causes against exact posteriors (scipy), and every slip against the records with it undone."""

from copy import deepcopy
from math import log
from string import Formatter
from typing import Any

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.linalg import null_space
from scipy.stats import multivariate_normal, norm

from tarebook.core.causes.cause_words import CAUSE_SENTENCES, cause_sentence, slip_sentence
from tarebook.core.causes.looks import Looks
from tarebook.core.causes.other_scale import swapped
from tarebook.core.causes.priors import FACTORS, PRIORS, UNSPECIFIC
from tarebook.core.causes.search import Asked, Cause, Likely, every_odds, every_slip, is_explained, told_of
from tarebook.core.causes.slip import Slip, Tried
from tarebook.core.fusion.evidence import Evidence, evidence
from tarebook.core.fusion.fusion import Fusion, fused
from tarebook.core.fusion.precision import precision, swept
from tarebook.core.garage.garage import read_garage
from tarebook.core.garage.records import Garage
from tarebook.core.standing.given import given_by
from tarebook.core.weighing.weighing import masses

SEEDS = range(10)


def question(seed: int, count: int = 6) -> tuple[np.ndarray, np.ndarray, Looks]:
    """Looks, their covariance, and what is asked about them."""
    random = np.random.default_rng(seed)
    shared = random.normal(0.0, 1.5, (count, 3))
    covariance = shared @ shared.T + np.diag(random.uniform(0.05, 1.0, count))
    values = 1000.0 + random.multivariate_normal(np.zeros(count), covariance) + 3.0 * (np.arange(count) == 2)
    told, _ = precision(covariance, range(count))
    return values, covariance, Looks(swept(told, np.ones(count), 0.0).tolist(), values.tolist())


def exact(values: np.ndarray, covariance: np.ndarray, effect: np.ndarray, mean: float = 0.0) -> float:
    """ln of the density of all differences between looks, with this covariance, less what was put into them."""
    beside = null_space(np.ones((1, len(values)))).T
    return float(multivariate_normal.logpdf(beside @ values, beside @ (mean * effect), beside @ covariance @ beside.T))


@pytest.mark.parametrize("seed", SEEDS)
def test_a_slip_is_as_likely_as_the_normal_density_of_all_looks_says(seed):
    values, covariance, looks = question(seed)
    shape = tuple(np.random.default_rng(seed + 99).integers(-2, 3, 6).astype(float))
    h = np.array(shape)
    without = exact(values, covariance, h)
    assert looks.about(shape, 1.7).likely == pytest.approx(exact(values, covariance, h, 1.7) - without, abs=1e-9)
    wider = covariance + 0.8**2 * np.outer(h, h)
    assert looks.about(shape, 1.7, 0.8).likely == pytest.approx(exact(values, wider, h, 1.7) - without, abs=1e-9)
    evenly, _ = quad(lambda size: np.exp(exact(values, covariance, h, size) - without) / 7.0, -2.0, 5.0, points=[0.0])
    assert looks.between(shape, -2.0, 5.0).likely == pytest.approx(np.log(evenly), abs=1e-6)


def test_a_range_far_from_what_the_looks_say_keeps_its_digits():
    looks = Looks([[50.0, -50.0], [-50.0, 50.0]], [1000.0, 1000.0])
    far = looks.between((1.0, 0.0), 2.0, 3.0).likely
    # The tail of the normal distribution by its own library, in logarithms.
    expected = norm.logsf(2.0 * 50**0.5) + np.log((2 * np.pi) ** 0.5 / 50**0.5)
    assert far == pytest.approx(expected, rel=1e-9)
    assert looks.between((1.0, 0.0), -3.0, -2.0).likely == pytest.approx(far, rel=1e-12)
    assert looks.about((1.0, 1.0), 5.0).likely == 0.0  # what every look has says nothing


@pytest.mark.parametrize("seed", SEEDS)
def test_another_scale_is_as_likely_as_with_its_own_covariance(seed):
    values, covariance, looks = question(seed)
    random = np.random.default_rng(seed + 7)
    noted, other, at = random.normal(0, 1, 6), random.normal(0, 1, 6), 3
    with_both = covariance + np.outer(noted, noted) + np.outer(other, other)
    told, _ = precision(with_both, range(6))
    looks = Looks(swept(told, np.ones(6), 0.0).tolist(), values.tolist())
    stood_noted, stood_other = noted.copy(), other.copy()
    stood_noted[at], stood_other[at] = 0.0, other[at] - 2.0
    truly = covariance + np.outer(stood_noted, stood_noted) + np.outer(stood_other, stood_other)
    swap = -noted[at] * noted - 2.0 * other
    swap[at] += 0.5 * (noted[at] ** 2 + 2.0**2)
    effect = (np.arange(6) == at).astype(float)
    expected = exact(values, truly, effect, 1.3) - exact(values, with_both, effect)
    assert swapped(looks, at, swap.tolist(), (np.array(looks.told) @ swap).tolist(), 1.3) == pytest.approx(
        expected, abs=1e-8
    )


def garage() -> dict[str, Any]:
    """Six weigh-ins, five jobs, two drivers, a tank, a place for ballast."""
    parts = {"seat": 11.0, "seat2": 11.2, "roll cage": 24.0, "glass": 6.0, "carpet": 4.0, "jack": 3.5}
    jobs = {"j1": ["seat"], "j2": ["roll cage"], "j3": ["glass"], "j4": ["seat2"], "j5": ["carpet"]}
    lists = [[], ["j1"], ["j1", "j2"], ["j1", "j2", "j3"], ["j1", "j2", "j3", "j4"], ["j1", "j2", "j3", "j4", "j5"]]
    on = {"roll cage"}
    names = {"seat": "Front seats", "seat2": "Front seats (pair)"}
    return {
        "trim": "event",
        "cars": [{"id": "car", "fuel_kind": "petrol", "tank_size": "45 L"}],
        "scales": [
            {"id": "pads", "kind": "corner_pads", "division": "0.1 kg", "repeatability": "0.3 kg"},
            {"id": "bench", "kind": "bench", "division": "1 g"},
        ],
        "drivers": [{"id": "anna"}, {"id": "ben"}],
        "parts": [{"id": part, "name": names.get(part, part)} for part in parts],
        "weighings": [
            *(_weighing(name, kg) for name, kg in parts.items() if name != "carpet"),
            _weighing("anna", 71.0),
            _weighing("ben", 84.0),
            {**_weighing("carpet", 4.0), "id": "w-carpet", "method": "container", "shown": "5.2 kg",
             "shown_empty": "1.2 kg"},
        ],
        "jobs": [{"id": job, "state": "fitted"} for job in jobs],
        "job_parts": [
            {"id": f"{job}-{part}", "job": job, "part": part, "way": "on" if part in on else "off"}
            for job, of in jobs.items()
            for part in of
        ],
        "ballast_places": [{"id": "floor", "block": "5 kg", "most": 2}],
        "weigh_ins": [
            {
                "id": f"k{at}", "layout": "total", "scale": "pads", "trim": "event", "at": f"2026-0{at + 1}-01",
                "total": f"{kg:.2f} kg", "jobs": jobs_then, "fuel": "12 L", "fuel_within": "0.5 L",
                **({"driver_in": True, "driver": "anna", "ballast": "2 kg"} if at == 4 else {"driver_in": False}),
            }
            for at, (jobs_then, kg) in enumerate(zip(lists, (980.0, 969.1, 992.9, 987.2, 1049.0, 976.1), strict=True))
        ],
    }  # fmt: skip


def _weighing(of: str, kg: float) -> dict[str, Any]:
    return {"id": f"w-{of}", "of": of, "method": "direct", "scale": "bench", "shown": f"{kg:.3f} kg"}


def _read(records: dict[str, Any]) -> tuple[Asked, Fusion, Garage]:
    book = read_garage(records)
    assert book.warnings == []
    known = masses(book)
    given = given_by(book, known)
    found = evidence(given.weighed, given.now, given.nets, given.condition)
    assert isinstance(found, Evidence)
    return Asked(book, known, given.nets, given.now.jobs), fused(found), book


def _undone(slip: Slip) -> dict[str, Any]:
    """The records as they would be without the slip."""
    records = deepcopy(garage())
    by_id = {each["id"]: each for kind in records.values() if isinstance(kind, list) for each in kind}
    weigh_in, reading = by_id.get(slip.weigh_in or ""), by_id.get(slip.weighing or "")
    if slip.code == "twice":
        records["job_parts"] = [each for each in records["job_parts"] if each["job"] != slip.job]
    elif slip.code == "wrong_side":
        weigh_in["jobs"] = sorted({*weigh_in["jobs"]} ^ {slip.job})
    elif slip.code == "unit":
        of, name = (reading, "shown") if reading else (weigh_in, slip.field)
        _times(of, name, FACTORS[slip.unit])
        if reading and "shown_empty" in reading:
            _times(reading, "shown_empty", FACTORS[slip.unit])
    elif slip.code == "tare" and slip.kg > 0:
        reading["shown"] = f"{float(reading['shown'].split()[0]) - slip.kg} kg"
    elif slip.code == "tare":
        reading.update(method="direct", shown_empty=None)
    elif slip.code == "other_driver" or (slip.code == "person" and slip.way == "on" and not weigh_in["driver_in"]):
        weigh_in.update(driver_in=True, driver=slip.driver)
    elif slip.code == "person" and slip.way == "off":
        weigh_in.update(driver_in=False, driver=None)
    elif slip.code in ("person", "ballast"):
        weigh_in["ballast"] = f"{float(weigh_in.get('ballast', '0 kg').split()[0]) + slip.kg} kg"
    elif slip.code == "put_back":
        records["jobs"].append({"id": "unnoted", "state": "undone" if slip.until is None else "fitted"})
        records["job_parts"].append({"id": "u", "job": "unnoted", "part": slip.part, "way": slip.way})
        since = int((slip.until or slip.weigh_in)[1:])
        for each in records["weigh_ins"][since : since + (1 if slip.until is None else 9)]:
            each["jobs"].append("unnoted")
    return records


def _times(record: dict[str, Any], name: str, factor: float) -> None:
    record[name] = f"{float(record[name].split()[0]) * factor:.12f} kg"


SIZED = ("twice", "wrong_side", "unit", "tare", "other_driver", "person", "ballast", "put_back")


@pytest.fixture(scope="module")
def tried() -> tuple[Tried, Fusion]:
    asked, fusion, _ = _read(garage())
    # Looks that tell little, so that no slip is too unlikely to be tried.
    told = [[each * 1e-3 for each in row] for row in fusion.told.beside]
    return every_slip(asked, fusion, told), fusion


@pytest.mark.parametrize("code", SIZED)
def test_a_slip_of_known_size_moves_the_looks_as_undoing_it_in_the_records_does(tried, code):
    slips = [(likely, slip) for likely, slip, _ in tried[0].likely if slip.code == code and slip.kg is not None]
    fusion = tried[1]
    told, values = np.array(fusion.told.beside) * 1e-3, np.array(fusion.values)
    checked = 0
    for likely, slip in slips:
        if code == "person" and slip.driver is None:
            continue  # somebody of no known weight
        moved = values - np.array(_read(_undone(slip))[1].values)
        without = _ln(told, values, moved)
        assert any(abs(without + log(weight) - likely) < 5e-3 for weight in (0.1, 0.3, 0.4, 0.6, 0.9, 1.0, 2.0, 3.0)), (
            slip
        )
        checked += 1
    assert checked


def _ln(told: np.ndarray, values: np.ndarray, moved: np.ndarray) -> float:
    return float(moved @ told @ values - 0.5 * moved @ told @ moved)


def test_every_kind_of_slip_has_its_sentences_and_every_sentence_its_slip(tried):
    told = {slip_sentence(slip, lambda _kind, name: name).code for _, slip, _ in tried[0].likely}
    whole = {f"any_{code}" for code in PRIORS}
    claimed = deepcopy(garage())
    claimed["parts"].append({"id": "bonnet", "name": "Bonnet", "claim": "12 kg", "claim_basis": "guessed"})
    claimed["scales"].append({"id": "platform", "kind": "platform", "division": "0.5 kg"})
    claimed["job_parts"].append({"id": "b", "job": "j2", "part": "bonnet", "way": "off"})
    claimed["parts"].append({"id": "door", "name": "Left door"})
    claimed["weighings"].append(_weighing("door", 15.0))
    claimed["job_parts"] += [{"id": f"d{job}", "job": job, "part": "door", "way": "off"} for job in ("j1", "j3")]
    claimed["job_parts"] += [{"id": f"x{job}", "job": job, "part": "seat", "way": "off"} for job in ("j3",)]
    asked, fusion, _ = _read(claimed)
    flat = [[each * 1e-6 for each in row] for row in fusion.told.beside]
    told |= {
        slip_sentence(slip, lambda _kind, name: name).code for _, slip, _ in every_slip(asked, fusion, flat).likely
    }
    others = {"unexplained", "moved_unweighed", "odds", "of_weigh_in"}
    assert told | whole | others == {code for code in CAUSE_SENTENCES if not code.startswith("change_")}


def test_a_sentence_lacks_nothing_it_names(tried):
    for _, slip, _ in tried[0].likely:
        said = slip_sentence(slip, lambda kind, name: f"<{kind} {name}>")
        assert {name for _, name, _, _ in Formatter().parse(CAUSE_SENTENCES[said.code]) if name} <= set(said.data)
        assert "None" not in said.text


@pytest.mark.parametrize(
    ("slip", "text"),
    [
        (Slip("twice", job="j", other="i", part="Front seats"), "Front seats counted twice? about 70 %"),
        (Slip("wrong_side", job="Roll cage", weigh_in="3 May", way="done"),
         "Roll cage already done at the weigh-in of 3 May? about 70 %"),
        (Slip("unit", part="Bonnet", weighing="w", unit="pounds"),
         "Bonnet: pounds taken for kilograms? about 70 %"),
        (Slip("unit", weigh_in="3 May", field="lf", unit="ten"),
         "Weigh-in of 3 May: ten times as much, the point misplaced? about 70 %"),
        (Slip("tare", part="Bonnet", kg=1.2), "Bonnet weighed with its container, or with the person? about 70 %"),
        (Slip("other_driver", driver="Ben", weigh_in="3 May"), "Ben in the car at the weigh-in of 3 May? about 70 %"),
        (Slip("put_back", part="Jack", weigh_in="3 May", until="9 May", way="off"),
         "Jack out of the car since the weigh-in of 3 May, against the notes? about 70 %"),
        (Slip("chance"), "Nothing wrong, only scatter? about 70 %"),
    ],
)  # fmt: skip
def test_a_cause_is_told_in_words_with_its_odds(slip, text):
    cause = Cause(slip.code, 0.7, (Likely(slip, 0.7),))
    assert cause_sentence(cause, lambda _kind, name: name).text == text


def test_a_kind_of_which_no_instance_is_most_is_told_in_general():
    likely = tuple(Likely(Slip("twice", job=job), 0.3) for job in ("a", "b"))
    told = cause_sentence(Cause("twice", 0.6, likely), lambda _kind, name: name)
    assert (told.code, told.text) == ("any_twice", "Something counted twice? about 60 %")


def test_three_kinds_are_told_and_chance_beside_them():
    odds = {"fuel": 0.3, "wet": 0.2, "zero": 0.18, "person": 0.12, "chance": 0.17, "unit": 0.03}
    found = told_of({Slip(code): each for code, each in odds.items()})
    assert [cause.code for cause in found] == ["fuel", "wet", "zero", "chance"]
    assert is_explained(found)
    assert not is_explained(told_of({Slip("misread"): 0.6, Slip("fuel"): 0.4}))
    assert set(UNSPECIFIC) < set(PRIORS)


def test_the_odds_of_everything_together_are_one_and_a_kinds_odds_are_shared_among_its_instances():
    asked, fusion, _ = _read(garage())
    nothing = [[0.0] * 6 for _ in range(6)]
    odds = every_odds(asked, fusion, nothing)
    assert sum(odds.values()) == pytest.approx(1.0)
    by_kind = {code: sum(each for slip, each in odds.items() if slip.code == code) for code in PRIORS}
    there = {code: prior for code, prior in PRIORS.items() if by_kind[code]}
    # Where the looks tell nothing, everything is as likely as beforehand.
    assert by_kind == pytest.approx({code: there.get(code, 0.0) / sum(there.values()) for code in PRIORS})
    assert set(PRIORS) - set(there) == {"guess", "other_scale", "put_back"}  # of the last a step must tell something
