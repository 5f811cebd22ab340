"""What the vectors of core/standing (with estimate, history, official, from_start and sentences) run in Python."""

from typing import Any, cast

from tarebook.core.causes.cause_words import cause_sentence, change_sentence, likely_sentence
from tarebook.core.causes.priors import PRIORS
from tarebook.core.causes.search import Asked, every_odds, told_of
from tarebook.core.fusion.behaviour import groups
from tarebook.core.fusion.believed import believed
from tarebook.core.fusion.evidence import Evidence, evidence
from tarebook.core.fusion.fusion import fused as fused_from
from tarebook.core.fusion.fusion_words import check_sentence, lowering_sentence, next_sentence
from tarebook.core.fusion.mixture import CERTAIN, Lump
from tarebook.core.garage.garage import read_garage
from tarebook.core.numbers.uncertain import Uncertain
from tarebook.core.standing.from_start import adding_up, from_start
from tarebook.core.standing.given import given_by
from tarebook.core.standing.official import OfficialScale, official_reading, official_scale
from tarebook.core.standing.sentences import (
    either_sentence,
    foretold_sentence,
    gap_line,
    gap_sentence,
    in_hand_sentence,
    margin_sentence,
    one_only_sentence,
    scatter_sentence,
    score_sentence,
    since_sentence,
)
from tarebook.core.standing.standing import Standing, standing
from tarebook.core.weighing.weighing import masses
from tarebook.core.whole_car.condition import chosen_sheet
from tarebook.core.whole_car.weighed import in_order
from tests.plain import plain, settled


def _asked(given: dict[str, Any]) -> Standing:
    garage = read_garage(given["garage"])
    return standing(garage, class_sheet=given.get("class_sheet"), weigh_in=given.get("weigh_in"), day=given.get("day"))


def _official_reading(given: dict[str, Any]) -> Any:
    scale = {"scale": None, "division": None, **given["scale"], "gain": Uncertain(**given["scale"]["gain"])}
    weight = Uncertain(**given["weight"])
    official = OfficialScale(**scale)
    spread = tuple(Lump(**each) for each in given["spread"]) if "spread" in given else CERTAIN
    return plain(official_reading(weight, given["minimum"], official, given["risk"], spread))


def _official_scale(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return plain(
        official_scale(garage, masses(garage), chosen_sheet(garage), in_order(garage), minimum=given["minimum"])
    )


def _standing(given: dict[str, Any]) -> Any:
    """A standing and, where a unit is given, how it is told."""
    found = _asked(given)
    told = _told(found, given["unit"]) if "unit" in given else None
    return {**settled(_brief(found)), "told": plain(told)}


def _brief(found: Standing) -> dict[str, Any]:
    """Without how the official reading spreads: what follows from that is told."""
    told: dict[str, Any] = plain(found)
    told.get("official", {}).pop("spread", None)
    return told


def _told(found: Standing, unit: str) -> dict[str, Any]:
    fused = found.fused
    changes = fused.changes if fused else []
    coming = fused.weigh_next if fused else []
    last = fused.counted[-1].weigh_in if fused else ""
    return {
        "either": fused and either_sentence(fused, unit, last),
        "one_only": fused and one_only_sentence(fused),
        "since": fused and since_sentence(last),
        "scatter": fused and fused.scatter and scatter_sentence(fused.scatter, str(fused.scatter.scale), unit),
        "margin": margin_sentence(found, unit),
        "in_hand": found.official and in_hand_sentence(found.official, unit),
        "foretold": [past.foretold and foretold_sentence(past.foretold, unit).text for past in found.history],
        "score": score_sentence(found.history),
        "gap": found.gap and gap_sentence(found.gap, unit),
        "gaps": [gap_line(gap, unit).text for gap in found.gaps],
        "changes": [change_sentence(change, unit).text for change in changes],
        "causes": [[cause_sentence(cause, _id).text for cause in change.causes] for change in changes],
        "lower": [lowering_sentence(each, each.of, each.on, unit).text for each in found.lower_doubt],
        "next": [next_sentence(each, each.scale, unit).text for each in coming],
    }


def _id(_kind: str, identity: str) -> str:
    return identity


def _from_start(given: dict[str, Any]) -> Any:
    garage = read_garage(given["garage"])
    return settled(plain(from_start(garage, masses(garage), standing(garage))))


def _every_odds(given: dict[str, Any]) -> Any:
    """The odds of every kind of slip, by looks that tell so much of what they do, and what is told of them."""
    garage = read_garage(given["garage"])
    known = masses(garage)
    found = given_by(garage, known)
    fusion = fused_from(cast(Evidence, evidence(found.weighed, found.now, found.nets, found.condition)))
    told = [[each * given["telling"] for each in row] for row in fusion.told.beside]
    odds = every_odds(Asked(garage, known, found.nets, found.now.jobs), fusion, told)
    kinds = {code: sum(each for slip, each in odds.items() if slip.code == code) for code in PRIORS}
    causes = told_of(odds)
    texts = [cause_sentence(cause, _id).text for cause in causes]
    likely = [[likely_sentence(each, _id).text for each in cause.likely] for cause in causes]
    return plain({"kinds": kinds, "slips": len(odds), "causes": texts, "likely": likely})


def _believed(given: dict[str, Any]) -> Any:
    """A scale over time, and when it says its next check pays."""
    garage = read_garage(given["garage"])
    known = masses(garage)
    found = given_by(garage, known)
    looks = evidence(found.weighed, found.now, found.nets, found.condition)
    among = groups(garage, known.scales, looks.counted) if isinstance(looks, Evidence) else ()
    fusion = fused_from(looks, among) if isinstance(looks, Evidence) else None
    ageing = believed(garage, known, fusion, among, given["scale"], given["day"])
    said = check_sentence(ageing, ageing.due)
    return plain({"ageing": ageing, "told": said and said.text})


def _adding_up(given: dict[str, Any]) -> Any:
    others = [Uncertain(**each) for each in given["others"]]
    return plain(adding_up(Uncertain(**given["corrected"]), others, Uncertain(**given["weight"]), given["unit"]))


CLAIMS = {
    "believed.believed": _believed,
    "search.every_odds": _every_odds,
    "from_start.from_start": _from_start,
    "from_start.adding_up": _adding_up,
    "standing.standing": _standing,
    "official.official_reading": _official_reading,
    "official.official_scale": _official_scale,
}
