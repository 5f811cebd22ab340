"""Every vector, run in Python. `tests/vectors.test.ts` runs the same files in TypeScript."""

from typing import Any

import pytest

from tests.vectors import FILES, claims, differences, load

CLAIMS = claims()
CASES = [
    pytest.param(vector["function"], case, id=f"{path.stem}: {case['name']}")
    for path in FILES
    for vector in [load(path)]
    for case in vector["cases"]
]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_vector_file_is_claimed_and_named_after_its_room(path):
    vector = load(path)
    names = [case["name"] for case in vector["cases"]]
    assert vector["function"] in CLAIMS
    assert path.stem.split(".")[0] == vector["function"].split(".")[0]
    assert names
    assert len(names) == len(set(names))


def test_every_claim_has_a_file():
    assert set(CLAIMS) - {load(path)["function"] for path in FILES} == set()


@pytest.mark.parametrize(("function", "case"), CASES)
def test_a_vector_holds(function: str, case: dict[str, Any]):
    if "error" in case:
        _expect_refusal(function, case)
    else:
        assert differences(CLAIMS[function](case["in"]), case["out"], case.get("close", 0.0)) == []


def _expect_refusal(function: str, case: dict[str, Any]) -> None:
    with pytest.raises(Exception) as refusal:
        CLAIMS[function](case["in"])
    assert getattr(refusal.value, "code", repr(refusal.value)) == case["error"]
    wanted = case.get("data", {})
    given = getattr(refusal.value, "data", {})
    assert {key: given.get(key) for key in wanted} == wanted
