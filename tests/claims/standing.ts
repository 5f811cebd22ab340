/** What the vectors of core/standing (with estimate, history, official and sentences) run in TypeScript. */

import { changesOf } from "../../webapp/src/core/fusion/causes";
import { causeSentence, changeSentence, nextSentence } from "../../webapp/src/core/fusion/fusionWords";
import { weighNext } from "../../webapp/src/core/fusion/weighNext";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { jobNets } from "../../webapp/src/core/ledger/net";
import { type Uncertain, u } from "../../webapp/src/core/numbers/uncertain";
import type { Fused } from "../../webapp/src/core/standing/estimate";
import { officialReading, officialScale } from "../../webapp/src/core/standing/official";
import { gapLine, gapSentence, inHandSentence, marginSentence } from "../../webapp/src/core/standing/sentences";
import { type Standing, standing } from "../../webapp/src/core/standing/standing";
import { inOrder } from "../../webapp/src/core/standing/weighed";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { chosenSheet } from "../../webapp/src/core/wholeCar/condition";
import { plain } from "../plain";
import type { Claims, Given } from "../vectors";

function asked({ garage, class_sheet, weigh_in }: Given): Standing {
  return standing(readGarage(garage), undefined, class_sheet, weigh_in);
}

/** Value and u instead of every source. */
function brief(result: unknown): unknown {
  if (result === null || typeof result !== "object") return result;
  if (Array.isArray(result)) return result.map(brief);
  if ("sources" in result) return { value: (result as Uncertain).value, u: u(result as Uncertain) };
  return Object.fromEntries(Object.entries(result).map(([key, value]) => [key, brief(value)]));
}

/** Every source of the weight, the margin and the official reading; of the rest value and u. */
function whole(given: Given): unknown {
  const { weight, margin, official, fused, ...rest } = asked(given);
  const together = fused && wholly(fused, given);
  return plain({ ...(brief({ ...rest, fused: together }) as object), weight, margin, official });
}

/** With what is asked for apart on the phone. */
function wholly({ fusion, ...rest }: Fused, given: Given) {
  const garage = readGarage(given.garage);
  const known = masses(garage);
  const changes = changesOf(garage, jobNets(garage, known), fusion);
  return { ...rest, changes, weigh_next: weighNext(garage, known, fusion) };
}

function scaleOf(given: Given): unknown {
  const garage = readGarage(given.garage);
  return plain(officialScale(garage, masses(garage), chosenSheet(garage), inOrder(garage), given.minimum));
}

function sentences(given: Given): unknown {
  const found = asked(given);
  const { official, gap, gaps, fused } = found;
  return {
    margin: plain(marginSentence(found, given.unit)),
    in_hand: official && plain(inHandSentence(official, given.unit)),
    gap: gap && plain(gapSentence(gap, given.unit)),
    gaps: gaps.map((each) => gapLine(each, given.unit).text),
    ...(fused && ofFused(wholly(fused, given), given.unit)),
  };
}

function ofFused({ changes, weigh_next }: ReturnType<typeof wholly>, unit: string): object {
  return {
    changes: changes.map((change) => {
      return [changeSentence(change, unit).text, ...change.causes.map((cause) => causeSentence(cause).text)];
    }),
    next: weigh_next.map((each) => nextSentence(each, each.scale, unit).text),
  };
}

export const claims: Claims = {
  "standing.standing": whole,
  "official.official_reading": ({ weight, minimum, scale, risk }) => {
    return plain(officialReading(weight, minimum, scale, risk));
  },
  "official.official_scale": scaleOf,
  "sentences.sentences": sentences,
};
