"""`calc standing` says what the weight is made of, what does not fit, and what to weigh next."""

import json
from typing import Any

import pytest

from tarebook.api import calc
from tarebook.api.calc.standing import STANDING
from tests.vectors import FILES, load

GARAGES = {
    case["name"]: case["in"]["garage"]
    for path in FILES
    if path.name == "standing.fusion.json"
    for case in load(path)["cases"]
}


def run(name: str, **asked: Any) -> dict[str, Any]:
    answer = calc.run("standing", {**GARAGES[name], **asked})
    assert STANDING.answer.validate(json.loads(json.dumps(answer))) == {}
    return answer


@pytest.mark.parametrize("name", sorted(GARAGES))
def test_the_shares_of_the_weigh_ins_add_up_to_the_weight(name):
    answer = run(name)
    shares = [each["share"]["value"] for each in answer["fused"]["counted"]]
    alone = [each["alone"]["value"] for each in answer["fused"]["counted"]]
    assert sum(shares) == pytest.approx(1.0)
    assert sum(a * b for a, b in zip(shares, alone, strict=True)) == pytest.approx(answer["weight"]["value"])


def test_a_change_comes_with_its_size_its_place_and_its_causes_in_words():
    [change] = run("4 kg went in between the third and the fourth")["fused"]["changes"]
    assert (change["kind"], change["first"], change["second"]) == ("step", "k2", "k3")
    assert abs(change["size"]["value"] - 4.0) < 2 * change["size"]["u"]
    assert change["sentence"]["text"] == "4.1 kg went in without a note, ± 0.5 kg"
    [first, second] = change["causes"]
    assert (first["code"], second["code"], change["explained"]) == ("put_back", "unwritten", True)
    assert first["sentence"]["text"] == "p0 in the car since the weigh-in of 2026-03-11, against the notes? about 65 %"
    assert first["likely"][0]["slip"]["part"] == "p0"


def test_a_single_weigh_in_that_is_off_is_named_as_that():
    [change] = run("one weigh-in off by 5 kg")["fused"]["changes"]
    assert (change["kind"], change["first"], change["second"]) == ("outlier", "k2", "k2")


@pytest.mark.parametrize(
    "name", ["the last shows 4 kg more: a step or an error, the lower counts", "the last shows 4 kg less"]
)
def test_of_a_step_before_the_last_and_an_error_of_it_the_lower_weight_counts(name):
    answer = run(name)
    assert answer["fused"]["changes"][0]["kind"] == "either"
    assert "last_differs" in [warning["code"] for warning in answer["warnings"]]
    alone = [each["alone"]["value"] for each in answer["fused"]["counted"]]
    lower = min(alone[-1], sum(alone[:-1]) / (len(alone) - 1))
    assert answer["weight"]["value"] == pytest.approx(lower, abs=1.0)


def test_only_the_weigh_in_asked_for_counts():
    answer = run("six weigh-ins that fit", weigh_in="k2")
    assert [each["weigh_in"] for each in answer["fused"]["counted"]] == ["k2"]


def test_one_more_weigh_in_is_as_sure_as_when_it_has_been_made():
    """What a second look on the pads is said to give is what the standing has once it is there."""
    seen_to = {"ready": ["zeroed", "level", "rolled", "pressures", "clear"], "at": "2026-10-01"}
    bare = GARAGES["one weigh-in"]
    given = {**bare, "weigh_ins": [{**bare["weigh_ins"][0], **seen_to}]}
    [said] = [each for each in calc.run("standing", given)["fused"]["weigh_next"] if each["scale"] == "pads"]
    jobs = [job["id"] for job in given["jobs"]]
    then, part = (float(text.split()[0]) for text in (given["weigh_ins"][0]["total"], given["weighings"][0]["shown"]))
    total = f"{then - part:.1f} kg"
    again = {**given["weigh_ins"][0], "id": "next", "jobs": jobs, "at": "2026-10-02", "total": total}
    now = calc.run("standing", {**given, "weigh_ins": [*given["weigh_ins"], again]})
    errors = 2 * now["weight"]["u"]
    assert said["within"]["value"] <= errors
    assert said["within"]["value"] == pytest.approx(errors, rel=0.05)
