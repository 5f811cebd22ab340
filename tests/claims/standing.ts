/** What the vectors of core/standing (with estimate, history, official and sentences) run in TypeScript. */

import { causeSentence, changeSentence, likelySentence } from "../../webapp/src/core/causes/causeWords";
import { changesOf } from "../../webapp/src/core/causes/changes";
import { causesOf, everyOdds } from "../../webapp/src/core/causes/search";
import { groups } from "../../webapp/src/core/fusion/behaviour";
import { believed } from "../../webapp/src/core/fusion/believed";
import { checkSentence, loweringSentence, nextSentence } from "../../webapp/src/core/fusion/fusionWords";
import { weighNext } from "../../webapp/src/core/fusion/weighNext";
import { readGarage } from "../../webapp/src/core/garage/garage";
import type { Garage } from "../../webapp/src/core/garage/records";
import { jobNets } from "../../webapp/src/core/ledger/net";
import { countedOf } from "../../webapp/src/core/standing/counted";
import {
  eitherSentence,
  oneOnlySentence,
  scatterSentence,
  sinceSentence,
} from "../../webapp/src/core/standing/doubtSentences";
import type { Fused } from "../../webapp/src/core/standing/estimate";
import { addingUp, fromStart } from "../../webapp/src/core/standing/fromStart";
import { lowerDoubt } from "../../webapp/src/core/standing/lowerDoubt";
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
import { asked } from "../../webapp/src/core/standing/trials";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { chosenSheet } from "../../webapp/src/core/wholeCar/condition";
import { inOrder, nowOf } from "../../webapp/src/core/wholeCar/weighed";
import { PRIORS } from "../../webapp/src/generated/slipPriors";
import { plain, settled } from "../plain";
import type { Claims, Given } from "../vectors";

/** A standing with what is asked for apart on the phone and, where a unit is given, how it is told. */
function standingOf({ garage: given, class_sheet, weigh_in, unit, day }: Given): unknown {
  const garage = readGarage(given);
  const found = standing(garage, undefined, class_sheet, weigh_in);
  const fused = found.fused && wholly(found.fused, garage);
  // Without how the official reading spreads: what follows from that is told.
  const official = found.official && { ...found.official, spread: undefined };
  const trying = day && asked(garage, day, found.risk, class_sheet);
  const lower_doubt = trying ? lowerDoubt(trying) : [];
  const lower = lower_doubt.map((each) => loweringSentence(each, each.of, each.on, unit).text);
  const words = unit && { ...told(found, fused, unit), lower };
  return settled(plain({ ...found, official, fused, lower_doubt, told: words }));
}

type Whole = ReturnType<typeof wholly>;

function wholly({ fusion, ...rest }: Fused, garage: Garage) {
  const known = masses(garage);
  return {
    ...rest,
    counted: countedOf(fusion),
    changes: changesOf({ garage, known, nets: jobNets(garage, known), now: nowOf(garage).jobs }, fusion),
    weigh_next: weighNext(garage, known, fusion),
  };
}

function told(found: Standing, fused: Whole | null, unit: string): object {
  const { official, gap, gaps, history } = found;
  const last = fused?.counted.at(-1)?.weigh_in ?? "";
  return {
    either: fused && eitherSentence(fused.answers, unit, last),
    one_only: fused?.counted.length === 1 ? oneOnlySentence() : null,
    since: fused && sinceSentence(last),
    scatter: fused?.scatter && scatterSentence(fused.scatter, fused.scatter.scale ?? "None", unit),
    margin: marginSentence(found, unit),
    in_hand: official && inHandSentence(official, unit),
    foretold: history.map(({ foretold }) => foretold && foretoldSentence(foretold, unit).text),
    score: scoreSentence(history),
    gap: gap && gapSentence(gap, unit),
    gaps: gaps.map((each) => gapLine(each, unit).text),
    changes: (fused?.changes ?? []).map((change) => changeSentence(change, unit).text),
    causes: (fused?.changes ?? []).map((change) => change.causes.map((cause) => causeSentence(cause, idOf).text)),
    next: (fused?.weigh_next ?? []).map((each) => nextSentence(each, each.scale, unit).text),
  };
}

/** The odds of every kind of slip, by looks that tell so much of what they do, and what is told of them. */
function everyOddsOf({ garage: given, telling }: Given): unknown {
  const garage = readGarage(given);
  const known = masses(garage);
  const { fusion } = standing(garage).fused as Fused;
  const told = fusion.leading.told.beside.map((row) => row.map((each) => each * telling));
  const asked = { garage, known, nets: jobNets(garage, known), now: nowOf(garage).jobs };
  const odds = everyOdds(asked, fusion, told);
  const kinds = Object.keys(PRIORS).map((code) => {
    return [code, odds.reduce((sum, [slip, each]) => (slip.code === code ? sum + each : sum), 0)];
  });
  const causes = causesOf(asked, fusion, told);
  return plain({
    kinds: Object.fromEntries(kinds),
    slips: odds.length,
    causes: causes.map((cause) => causeSentence(cause, idOf).text),
    likely: causes.map(({ likely }) => likely.map((each) => likelySentence(each, idOf).text)),
  });
}

const idOf = (_kind: string, id: string): string => id;

function scaleOf(given: Given): unknown {
  const garage = readGarage(given.garage);
  return plain(officialScale(garage, masses(garage), chosenSheet(garage), inOrder(garage), given.minimum));
}

function startOf(given: Given): unknown {
  const garage = readGarage(given.garage);
  return settled(plain(fromStart(garage, masses(garage), standing(garage))));
}

/** A scale over time, and when it says its next check pays. */
function believedOf({ garage: given, scale, day }: Given): unknown {
  const garage = readGarage(given);
  const known = masses(garage);
  const fusion = standing(garage).fused?.fusion ?? null;
  const among = fusion ? groups(garage, known.scales, fusion.evidence.counted) : [];
  const ageing = believed(garage, known, fusion, among, scale, day);
  return plain({ ageing, told: checkSentence(ageing, (due) => due)?.text });
}

export const claims: Claims = {
  "believed.believed": believedOf,
  "from_start.from_start": startOf,
  "from_start.adding_up": ({ corrected, others, weight, unit }) => plain(addingUp(corrected, others, weight, unit)),
  "search.every_odds": everyOddsOf,
  "standing.standing": standingOf,
  "official.official_reading": ({ weight, minimum, scale, risk, spread }) => {
    return plain(officialReading(weight, minimum, { scale: null, division: null, ...scale }, risk, spread));
  },
  "official.official_scale": scaleOf,
};
