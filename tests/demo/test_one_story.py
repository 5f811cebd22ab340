"""The demo garage weighs the same in every answer and on every paper; what differs says by its condition why."""

import csv
import json
import re
from typing import Any

import pytest

from tarebook.api.calc import run
from tarebook.demo import scenario
from tarebook.papers.report import report

GARAGE: dict[str, Any] = {**scenario.records(), "trim": "event"}
NOW = run("standing", GARAGE)
SHEET = json.loads(report(GARAGE, "json"))
TEXT = report(GARAGE)
SINCE = run("ledger", GARAGE)["in_car"]


def said(text: str) -> float:
    """The kilograms of "897 ± 4 kg"."""
    return float(text.split(" ± ")[0].removesuffix(" kg").replace("−", "-"))


def line_of(name: str) -> str:
    """What a line of the report says behind its name, until the next name."""
    found = re.search(rf"^{name} +((?:.+\n)(?: {{16}}.+\n)*)", TEXT, re.M)
    assert found, name
    return " ".join(found[1].split())


def test_the_weight_now_is_one_figure_on_paper_and_in_every_answer():
    weight = NOW["weight"]
    assert SHEET["standing"]["weight"] == weight
    assert line_of("Weight now").startswith(f"{weight['shown']}, with Main driver, fuel as it is")
    assert weight["shown"] == NOW["fused"]["answers"][0]["weight"]["shown"]
    assert re.search(rf"^Weight now +{re.escape(weight['shown'])}$", TEXT, re.M)
    assert run("ballast", GARAGE)["now"]["value"] == pytest.approx(weight["value"])  # no ballast is on board


def test_the_balance_is_of_a_car_that_weighs_what_the_standing_says():
    """The last weigh-in was with the driver and the fuel the class counts: one and the same condition."""
    found = run("balance", GARAGE)["states"]
    assert found["now"]["mass"]["shown"] == NOW["weight"]["shown"]
    assert found["now"]["mass"]["u"] == pytest.approx(NOW["weight"]["u"], rel=1e-6)
    last = GARAGE["weigh_ins"][-1]
    ledger = {job["job"]: job["total"]["mass"]["net"]["value"] for job in run("ledger", GARAGE)["jobs"]}
    since = sum(net for job, net in ledger.items() if job in SINCE and job not in last["jobs"])
    assert found["weighed"]["mass"]["value"] + since == pytest.approx(NOW["weight"]["value"])


def test_a_run_on_fuel_starts_from_the_same_car_with_an_empty_tank():
    empty = run("fuel", GARAGE)["empty"]["weight"]["value"]
    fuel = SHEET["standing"]["from_start"]["fuel"]["value"]
    assert empty + fuel == pytest.approx(NOW["weight"]["value"])


def test_the_lines_from_the_start_come_to_the_weight_now_as_they_are_shown():
    lines = SHEET["standing"]["from_start"]
    shown = [lines[name] for name in ("start", "corrected", "fuel", "driver", "ballast")]
    shown += [each["net"] for each in lines["stages"]]
    total = sum(said(each["shown"]) for each in shown)
    assert abs(total - said(NOW["weight"]["shown"])) <= 0.5
    assert sum(each["value"] for each in shown) == pytest.approx(NOW["weight"]["value"])
    assert sum(each["net"]["value"] for each in lines["stages"]) == pytest.approx(lines["jobs"]["value"])


def test_the_table_of_parts_comes_to_what_the_jobs_are_said_to_have_changed():
    parts = csv.DictReader(report(GARAGE, "csv").splitlines())
    fitted = [row for row in parts if row["state"] == "fitted" and row["kg"]]
    sides = [(1 if row["on"] else -1) * int(row["quantity"] or 1) * float(row["kg"]) for row in fitted]
    assert sum(sides) == pytest.approx(SHEET["standing"]["from_start"]["jobs"]["value"])


def test_two_answers_are_told_with_their_odds_and_the_first_is_the_headline():
    first, other = NOW["fused"]["answers"]
    right, off = (other, first) if first["off"] else (first, other)
    told = line_of("Two answers")
    assert told.startswith(
        f"{right['weight']['shown']}, or {off['weight']['shown']} if the reading of 2026-09-12 is off"
    )
    assert "weigh the car again to know" in told
    assert sum(each["odds"]["value"] for each in NOW["fused"]["answers"]) == pytest.approx(1)
    assert "If everything since 2026-09-12 is written down." in TEXT


def test_with_one_weigh_in_it_says_that_it_proves_nothing_of_what_is_written_down():
    alone = {**GARAGE, "weigh_ins": GARAGE["weigh_ins"][:1]}
    words = " ".join(report(alone).split())
    assert "One weigh-in cannot show a slip in what is written down; a second would." in words
    assert "Two answers" not in words
