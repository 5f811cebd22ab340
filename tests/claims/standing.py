"""What the vectors of core/standing (with estimate, history, official, from_start and sentences) run in Python."""

from typing import Any

from tarebook.core.fusion.fusion_words import cause_sentence, change_sentence, next_sentence
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.from_start import from_start
from tarebook.core.standing.official import OfficialScale, official_reading, official_scale
from tarebook.core.standing.sentences import (
    foretold_sentence,
    gap_line,
    gap_sentence,
    in_hand_sentence,
    margin_sentence,
    score_sentence,
)
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.condition import chosen_sheet
from tarebook.core.whole_car.weighed import in_order
from tests.plain import plain


def _asked(given: dict[str, Any]) -> Standing:
    garage = read_garage(given["garage"])
    return standing(garage, class_sheet=given.get("class_sheet"), weigh_in=given.get("weigh_in"))


def _official_reading(given: dict[str, Any]) -> Any:
    scale = {"scale": None, "division": None, **given["scale"], "gain": Uncertain(**given["scale"]["gain"])}
    weight = Uncertain(**given["weight"])
    return plain(official_reading(weight, given["minimum"], OfficialScale(**scale), given["risk"]))


def _official_scale(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return plain(
        official_scale(garage, masses(garage), chosen_sheet(garage), in_order(garage), minimum=given["minimum"])
    )


def _standing(given: dict[str, Any]) -> Any:
    """A standing and, where a unit is given, how it is told."""
    found = _asked(given)
    told = _told(found, given["unit"]) if "unit" in given else None
    return {**plain(found), "told": plain(told)}


def _told(found: Standing, unit: str) -> dict[str, Any]:
    changes = found.fused.changes if found.fused else []
    coming = found.fused.weigh_next if found.fused else []
    return {
        "margin": margin_sentence(found, unit),
        "in_hand": found.official and in_hand_sentence(found.official, unit),
        "foretold": [past.foretold and foretold_sentence(past.foretold, unit).text for past in found.history],
        "score": score_sentence(found.history),
        "gap": found.gap and gap_sentence(found.gap, unit),
        "gaps": [gap_line(gap, unit).text for gap in found.gaps],
        "changes": [change_sentence(change, unit).text for change in changes],
        "causes": [[cause_sentence(cause).text for cause in change.causes] for change in changes],
        "next": [next_sentence(each, each.scale, unit).text for each in coming],
    }


def _from_start(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return plain(from_start(garage, masses(garage), standing(garage)))


CLAIMS = {
    "from_start.from_start": _from_start,
    "standing.standing": _standing,
    "official.official_reading": _official_reading,
    "official.official_scale": _official_scale,
}
