"""`calc fuel`: its own options are read, used and refused in words."""

import json
from pathlib import Path
from typing import Any

import pytest

from tarebook.api.calc import run
from tarebook.demo import scenario
from tarebook.errors import TarebookError

EXAMPLE = Path(__file__).resolve().parents[2] / "fixtures" / "demo" / "calc" / "fuel.json"


def example(**changes: Any) -> dict[str, Any]:
    loaded: dict[str, Any] = json.loads(EXAMPLE.read_text(encoding="utf-8"))
    return {**loaded, "run": {**loaded["run"], **changes.pop("run", {})}, **changes}


def test_every_lap_has_its_weight_margin_chance_and_balance():
    found = run("fuel", example())
    assert [moment["lap"] for moment in found["laps"]] == list(range(13))
    flag = found["laps"][found["worst"]]
    assert flag["fuel"]["shown"] == "8.4 ± 1.4 L"
    assert flag["margin"]["value"] == pytest.approx(flag["weight"]["value"] - 960)
    assert found["full"]["front"]["value"] < flag["front"]["value"] < found["empty"]["front"]["value"]
    assert found["lightest"]["text"].startswith("Lightest at the flag: 971")


def test_volumes_are_shown_in_the_unit_asked_for_or_the_garages_own():
    garage = {"id": "g", "name": "g", "volume_unit": "gal_us"}
    for given in (example(volume_unit="gal_us"), {**example(garages=[garage]), "volume_unit": "gal_us"}):
        assert (
            run("fuel", given)["start"]["text"] == "Start with at least 6.18 US gal to keep enough in hand at the flag"
        )


def test_without_a_run_the_demo_is_told_with_a_full_tank_for_the_event():
    found = run("fuel", scenario.records())
    assert found["trim"] == "event"
    assert [moment["fuel"]["shown"] for moment in found["laps"]] == ["42.0 ± 0.6 L"]
    assert found["full"]["fuel"]["shown"] == "42.0 L"


def test_a_volume_that_cannot_be_read_is_refused_in_words():
    with pytest.raises(TarebookError) as refused:
        run("fuel", example(run={"start": "20 pints"}))
    assert refused.value.code.startswith("quantity_")


@pytest.mark.parametrize("laps", [-1, 501, 2.5, "three"])
def test_laps_are_a_whole_number_that_can_be_told(laps):
    with pytest.raises(TarebookError) as refused:
        run("fuel", example(run={"laps": laps}))
    assert refused.value.data["fields"]["run"].keys() == {"laps"}
