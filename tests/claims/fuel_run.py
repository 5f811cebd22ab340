"""What the vectors of core/fuel_run and core/fuel_run/fuel_words run in Python."""

from typing import Any

from tarebook.core.fuel_run.fuel_given import RunQuestion
from tarebook.core.fuel_run.fuel_run import FuelRun, fuel_run
from tarebook.core.fuel_run.fuel_words import lightest_sentence, start_sentence
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.quantity import read
from tests.plain import plain, settled

VOLUMES = ("start", "start_within", "per_lap", "per_lap_within")


def run_of(given: dict[str, Any]) -> FuelRun:
    volumes: dict[str, Any] = {name: read("volume", given[name]) for name in VOLUMES if name in given}
    more = {name: given[name] for name in ("laps", "class_sheet") if name in given}
    question = RunQuestion(**volumes, **more)
    return fuel_run(read_garage(given["garage"]), question)


def _sentences(given: dict[str, Any]) -> Any:
    run = run_of(given)
    return plain([lightest_sentence(run, given["unit"]), start_sentence(run, given["unit"], given["volume_unit"])])


CLAIMS = {
    "fuel_run.fuel_run": lambda given: settled(plain(run_of(given))),
    "fuel_words.sentences": _sentences,
}
