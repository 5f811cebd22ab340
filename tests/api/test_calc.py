"""The computations on JSON: by function and by web the same, strict about shapes, patient with what people type."""

import json
from pathlib import Path
from typing import Any

import pytest

from tarebook.api.calc import CALCULATIONS, run
from tarebook.demo import scenario
from tarebook.errors import TarebookError
from tarebook.journal.kinds import KINDS, Field

EXAMPLES = Path(__file__).resolve().parents[2] / "fixtures" / "demo" / "calc"
# A value each type of field takes.
FITTING: dict[str, Any] = {
    "text": "said", "mass": "6 3/8 oz", "length": {"value": 2420, "unit": "mm"}, "volume": "12 L", "money": 12.5,
    "hours": "1.5", "fraction": "0.02", "count": 4, "integer": 0, "flag": True, "ref": "other", "refs": ["other"],
    "moment": "2026-03-14", "hash": "0" * 64,
}  # fmt: skip


def fitting(field: Field) -> Any:
    if field.type == "choice":
        return next(iter(field.of))
    return list(field.of)[:1] if field.type == "choices" else FITTING[field.type]


def example(name: str) -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads((EXAMPLES / f"{name}.json").read_text(encoding="utf-8"))
    return loaded


def refusal(name: str, payload: Any) -> dict[str, Any]:
    with pytest.raises(TarebookError) as refused:
        run(name, payload)
    assert refused.value.code == "bad_input"
    fields: dict[str, Any] = refused.value.data["fields"]
    return fields


def numbers(answer: Any) -> list[dict[str, Any]]:
    """Every number of an answer, wherever it is."""
    if isinstance(answer, dict):
        own = [answer] if "shown" in answer else []
        return own + [each for value in answer.values() for each in numbers(value)]
    return [each for item in answer for each in numbers(item)] if isinstance(answer, list) else []


def test_every_computation_has_an_example_and_every_example_one():
    assert {path.stem for path in EXAMPLES.glob("*.json")} == set(CALCULATIONS)


@pytest.mark.parametrize("name", CALCULATIONS)
def test_the_web_answers_as_the_command_line_does(phone, name):
    answer = phone.post(f"/calc/{name}", example(name))
    assert answer.status_code == 200
    assert answer.get_json() == json.loads(json.dumps(run(name, example(name))))


@pytest.mark.parametrize("name", CALCULATIONS)
def test_an_answer_is_what_its_schema_says_and_nothing_else(name):
    for given in (example(name), {}, scenario.records()):
        answer = run(name, given)
        assert CALCULATIONS[name].answer.validate(json.loads(json.dumps(answer))) == {}


@pytest.mark.parametrize("name", CALCULATIONS)
def test_every_number_has_its_value_unit_doubt_and_text(name):
    found = numbers(run(name, scenario.records()))
    assert found
    for number in found:
        assert number.keys() == {"value", "unit", "u", "shown"}
        assert number["u"] >= 0


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_of_every_kind_is_taken_and_none_other(kind):
    record = {"id": "one", **{name: fitting(field) for name, field in KINDS[kind].fields.items()}}
    run("ledger", {f"{kind}s": [record, {name: None for name in record if name != "id"}]})
    assert refusal("ledger", {f"{kind}s": [{**record, "wieght": "3 kg"}]}) == {
        f"{kind}s": {0: {"wieght": ["There is no such field here."]}}
    }


@pytest.mark.parametrize(
    ("payload", "place"),
    [
        ([], "_schema"), ("parts", "_schema"), (None, "_schema"), ({"prats": []}, "prats"), ({"parts": {}}, "parts"),
        ({"trim": "both"}, "trim"), ({"mass_unit": "stone"}, "mass_unit"), ({"parts": [{"count": "4"}]}, "parts"),
        ({"parts": [{"id": 7}]}, "parts"), ({"weighings": [{"shown": 6.4}]}, "weighings"),
        ({"weighings": [{"shown": {"value": 6.4}}]}, "weighings"), ({"parts": [{"unsprung": "yes"}]}, "parts"),
        ({"weighings": [{"shown": "6" * 65}]}, "weighings"), ({"weighings": [{"method": "by hand"}]}, "weighings"),
        ({"parts": [{"name": "\ud800"}]}, "_schema"),
        ({"parts": [{"x": {"value": float("nan"), "unit": "mm"}}]}, "_schema"),
    ],
)  # fmt: skip
def test_a_wrong_shape_is_refused_where_it_is(payload, place):
    assert place in refusal("weighing", payload)


def test_what_cannot_be_read_is_a_warning_and_the_rest_is_computed():
    given = example("ledger")
    given["weighings"][0]["shown"] = "13,42 kg"
    answer = run("ledger", given)
    told = {warning["code"]: warning for warning in answer["warnings"]}
    assert told["quantity_comma"]["do"] == "Write decimals with a point, like 1.25, and thousands without any mark."
    assert told["unweighed"]["data"]["parts"] == ["spare wheel"]
    assert answer["now"]["mass"]["net"]["value"] == pytest.approx(1.28 - 2.31 + 0.6)


def test_a_mass_that_is_null_says_why_and_one_bad_reading_is_told_once():
    parts = [{"id": "comma"}, {"id": "word", "claim": "heavy"}, {"id": "nothing"}, {"id": "known", "claim": "3 kg"}]
    reading = {"id": "w", "of": "comma", "method": "direct", "shown": "13,42 kg"}
    answer = run("weighing", {"parts": parts, "weighings": [reading]})
    reasons = {mass["of"]: mass["reason"] and mass["reason"]["code"] for mass in answer["masses"]}
    wanted = {"comma": "quantity_comma", "word": "quantity_unreadable", "nothing": "no_mass", "known": None}
    assert reasons == wanted
    assert sorted(warning["code"] for warning in answer["warnings"]) == ["quantity_comma", "quantity_unreadable"]


def test_a_quantity_may_be_a_value_and_a_unit():
    typed, given = example("weighing"), example("weighing")
    given["weighings"][1]["shown"] = {"value": 23, "unit": "lb"}
    assert run("weighing", given) == run("weighing", typed)


def test_an_export_goes_in_as_it_came_out():
    records = scenario.records()
    exported = {"export": {"tarebook": "0.1", "schema": 1}, "entries": ["{}"], **records}
    assert run("standing", exported) == run("standing", records)


def test_the_standing_is_the_event_s_unless_the_road_is_asked_for():
    given = example("standing")
    event, road = run("standing", given), run("standing", {**given, "trim": "road"})
    assert (event["trim"], road["trim"]) == ("event", "road")
    hook = 1.88
    assert road["weight"]["value"] - event["weight"]["value"] == pytest.approx(hook)


def test_numbers_are_shown_in_the_unit_asked_for_and_given_in_si():
    given = example("standing")
    kilograms, pounds = run("standing", given), run("standing", {**given, "mass_unit": "lb"})
    assert pounds["weight"]["value"] == kilograms["weight"]["value"]
    assert pounds["weight"]["unit"] == "kg"
    assert pounds["weight"]["shown"].endswith(" lb")
    assert pounds["sentence"]["text"] != kilograms["sentence"]["text"]


def test_a_minimum_without_a_unit_gives_a_weight_and_says_why_there_is_no_margin():
    given = example("standing")
    given["class_sheets"][0]["minimum"] = "900"
    answer = run("standing", given)
    assert answer["weight"] is not None
    assert answer["margin"] is None
    assert answer["reasons"]["margin"]["code"] == "quantity_unit_missing"
    assert answer["sentence"]["text"].startswith("The class minimum cannot be read")


def test_an_unknown_computation_is_refused():
    with pytest.raises(TarebookError) as refused:
        run("tides", {})
    assert refused.value.code == "calc_unknown"


def test_the_web_wants_a_token(home):
    assert home.client.post("/api/v1/calc/standing", json={}).status_code == 401
