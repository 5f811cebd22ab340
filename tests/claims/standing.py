"""What the vectors of core/standing (with estimate, history, official and sentences) run in Python."""

from dataclasses import fields, is_dataclass
from typing import Any

from tarebook.core.fusion.fusion_words import cause_sentence, change_sentence, next_sentence
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.estimate import Fused
from tarebook.core.standing.official import OfficialScale, official_reading, official_scale
from tarebook.core.standing.sentences import gap_line, gap_sentence, in_hand_sentence, margin_sentence
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.standing.weighed import in_order
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.condition import chosen_sheet
from tests.plain import plain


def _brief(result: Any) -> Any:
    """Value and u instead of every source."""
    if isinstance(result, Uncertain):
        return {"value": result.value, "u": result.u}
    if is_dataclass(result):
        return {field.name: _brief(getattr(result, field.name)) for field in fields(result)}
    if isinstance(result, dict):
        return {key: _brief(value) for key, value in result.items()}
    return [_brief(item) for item in result] if isinstance(result, tuple) else result


def _standing(given: dict[str, Any]) -> Any:
    """Every source of the weight, the margin and the official reading; of the rest value and u."""
    found = _asked(given)
    whole = {name: getattr(found, name) for name in ("weight", "margin", "official")}
    return plain({**_brief(found), **whole})


def _asked(given: dict[str, Any]) -> Standing:
    garage = read_garage(given["garage"])
    return standing(garage, class_sheet=given.get("class_sheet"), weigh_in=given.get("weigh_in"))


def _official_reading(given: dict[str, Any]) -> Any:
    scale = {**given["scale"], "gain": Uncertain(**given["scale"]["gain"])}
    weight = Uncertain(**given["weight"])
    return plain(official_reading(weight, given["minimum"], OfficialScale(**scale), given["risk"]))


def _official_scale(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return plain(
        official_scale(garage, masses(garage), chosen_sheet(garage), in_order(garage), minimum=given["minimum"])
    )


def _sentences(given: dict[str, Any]) -> Any:
    asked, unit = _asked(given), given["unit"]
    return {
        "margin": plain(margin_sentence(asked, unit)),
        "in_hand": plain(in_hand_sentence(asked.official, unit)) if asked.official else None,
        "gap": plain(gap_sentence(asked.gap, unit)) if asked.gap else None,
        "gaps": [gap_line(gap, unit).text for gap in asked.gaps],
        **(_of_fused(asked.fused, unit) if asked.fused else {}),
    }


def _of_fused(fused: Fused, unit: str) -> dict[str, Any]:
    return {
        "changes": [
            [change_sentence(change, unit).text, *(cause_sentence(cause).text for cause in change.causes)]
            for change in fused.changes
        ],
        "next": [next_sentence(each, each.scale, unit).text for each in fused.weigh_next],
    }


CLAIMS = {
    "standing.standing": _standing,
    "official.official_reading": _official_reading,
    "official.official_scale": _official_scale,
    "sentences.sentences": _sentences,
}
