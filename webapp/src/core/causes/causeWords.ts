/**
 * What does not fit among the weigh-ins, and what it may have been, in words.
 *
 * A kind of slip is told by its likeliest instance where that is nearly all of it ("Front seats counted twice? about
 * 70 %"), else in general ("Something counted twice? about 60 %"). The table is the server's own
 * (`server/tarebook/core/causes/cause_words.py`), in `generated/causeSentences`.
 */

import { fill } from "../../errors";
import { CAUSE_SENTENCES } from "../../generated/causeSentences";
import { showOdds } from "../numbers/shown";
import { type Said, sizeOf, teller } from "../words/said";
import type { Change } from "./changes";
import type { Cause, Likely } from "./search";
import type { Slip } from "./slip";

/** What a record of a kind is called, by its id: a weigh-in by its day. */
export type Names = (kind: "weigh_in" | "job" | "part" | "driver" | "scale" | "ballast_place", id: string) => string;
type Sentence = keyof typeof CAUSE_SENTENCES;

const said = teller<Sentence>(CAUSE_SENTENCES);
const MOSTLY = 0.9;

/** What does not fit, without where: that is between the weigh-ins `change` names. */
export function changeSentence(change: Change, unit: string): Said {
  const isMore = change.size.value > 0;
  const size = sizeOf(change.size, unit);
  if (change.kind === "outlier") return said(isMore ? "change_high" : "change_low", size);
  if (change.kind === "either") return said(isMore ? "change_in_or_off" : "change_out_or_off", size);
  return said(isMore ? "change_in" : "change_out", size);
}

/** A kind of slip with its odds. */
export function causeSentence(cause: Cause, names: Names): Said {
  return withOdds(isOne(cause) ? slipSentence((cause.likely[0] as Likely).slip, names) : general(cause), cause.odds);
}

/** Whether one instance is nearly all of a kind. */
export function isOne({ likely, odds }: Cause): boolean {
  return (likely[0]?.odds ?? 0) >= MOSTLY * odds;
}

function general({ code }: Cause): Said {
  return said(`any_${code}`);
}

/** One slip with its odds. */
export function likelySentence({ slip, odds }: Likely, names: Names): Said {
  return withOdds(slipSentence(slip, names), odds);
}

function withOdds({ code, data, text }: Said, chance: number): Said {
  const odds = showOdds(chance);
  return { code, data: { ...data, odds }, text: fill(CAUSE_SENTENCES.odds, { cause: text, odds }) };
}

/** What may have happened, asked. */
export function slipSentence(slip: Slip, names: Names): Said {
  const { weigh_in, until, job, other, part, driver, scale, place } = slip;
  const named = {
    ...(job && { job: names("job", job) }),
    ...(other && { other: names("job", other) }),
    ...(part && { part: names("part", part) }),
    ...(driver && { driver: names("driver", driver) }),
    ...(scale && { scale: names("scale", scale) }),
    ...(place && { place: names("ballast_place", place) }),
    ...(weigh_in && { day: names("weigh_in", weigh_in) }),
    ...(until && { until: names("weigh_in", until) }),
  };
  const of = named.part ?? named.driver ?? fill(CAUSE_SENTENCES.of_weigh_in, { day: named.day ?? "" });
  return said(codeOf(slip), { ...named, of });
}

function codeOf({ code, until, part, driver, place, unit, way, kg }: Slip): Sentence {
  if (code === "twice") return part ? "twice_part" : "twice_job";
  if (code === "unit") return `unit_${unit ?? "pounds"}`;
  if (code === "tare") return kg !== null && kg < 0 ? "tare_out" : "tare_in";
  if (code === "wet") return part ? "wet_part" : "wet";
  if (code === "put_back" && until === null) return `put_once_${way}` as Sentence;
  if (code === "ballast" && place) return "ballast_place";
  if (code === "person" && way === "on" && driver) return "person_driver";
  if (code === "wrong_side" || code === "person" || code === "ballast" || code === "put_back") {
    return `${code}_${way}` as Sentence;
  }
  return code;
}
