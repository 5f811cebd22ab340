/** What the vectors of core/standing (with estimate, history, official and sentences) run in TypeScript. */

import { changesOf } from "../../webapp/src/core/fusion/causes";
import { causeSentence, changeSentence, nextSentence } from "../../webapp/src/core/fusion/fusionWords";
import { weighNext } from "../../webapp/src/core/fusion/weighNext";
import { readGarage } from "../../webapp/src/core/garage/garage";
import type { Garage } from "../../webapp/src/core/garage/records";
import { jobNets } from "../../webapp/src/core/ledger/net";
import type { Fused } from "../../webapp/src/core/standing/estimate";
import { fromStart } from "../../webapp/src/core/standing/fromStart";
import { officialReading, officialScale } from "../../webapp/src/core/standing/official";
import {
  foretoldSentence,
  gapLine,
  gapSentence,
  inHandSentence,
  marginSentence,
  scoreSentence,
} from "../../webapp/src/core/standing/sentences";
import { type Standing, standing } from "../../webapp/src/core/standing/standing";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { chosenSheet } from "../../webapp/src/core/wholeCar/condition";
import { inOrder } from "../../webapp/src/core/wholeCar/weighed";
import { plain } from "../plain";
import type { Claims, Given } from "../vectors";

/** A standing with what is asked for apart on the phone and, where a unit is given, how it is told. */
function standingOf({ garage: given, class_sheet, weigh_in, unit }: Given): unknown {
  const garage = readGarage(given);
  const found = standing(garage, undefined, class_sheet, weigh_in);
  const fused = found.fused && wholly(found.fused, garage);
  return plain({ ...found, fused, told: unit && told(found, fused, unit) });
}

type Whole = ReturnType<typeof wholly>;

function wholly({ fusion, ...rest }: Fused, garage: Garage) {
  const known = masses(garage);
  return {
    ...rest,
    changes: changesOf(garage, jobNets(garage, known), fusion),
    weigh_next: weighNext(garage, known, fusion),
  };
}

function told(found: Standing, fused: Whole | null, unit: string): object {
  const { official, gap, gaps, history } = found;
  return {
    margin: marginSentence(found, unit),
    in_hand: official && inHandSentence(official, unit),
    foretold: history.map(({ foretold }) => foretold && foretoldSentence(foretold, unit).text),
    score: scoreSentence(history),
    gap: gap && gapSentence(gap, unit),
    gaps: gaps.map((each) => gapLine(each, unit).text),
    changes: (fused?.changes ?? []).map((change) => changeSentence(change, unit).text),
    causes: (fused?.changes ?? []).map((change) => change.causes.map((cause) => causeSentence(cause).text)),
    next: (fused?.weigh_next ?? []).map((each) => nextSentence(each, each.scale, unit).text),
  };
}

function scaleOf(given: Given): unknown {
  const garage = readGarage(given.garage);
  return plain(officialScale(garage, masses(garage), chosenSheet(garage), inOrder(garage), given.minimum));
}

function startOf(given: Given): unknown {
  const garage = readGarage(given.garage);
  return plain(fromStart(garage, masses(garage), standing(garage)));
}

export const claims: Claims = {
  "from_start.from_start": startOf,
  "standing.standing": standingOf,
  "official.official_reading": ({ weight, minimum, scale, risk }) => {
    return plain(officialReading(weight, minimum, { scale: null, division: null, ...scale }, risk));
  },
  "official.official_scale": scaleOf,
};
