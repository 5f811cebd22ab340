/**
 * What would lower the doubt, and when a check pays, in words.
 *
 * The table is the server's own (`server/tarebook/core/fusion/fusion_words.py`), in `generated/fusionSentences`.
 */

import { FUSION_SENTENCES } from "../../generated/fusionSentences";
import { showDoubt, showMass } from "../numbers/shown";
import { type Said, teller } from "../words/said";
import type { Ageing } from "./believed";
import type { Lowering } from "./lowering";
import type { Next } from "./weighNext";

const said = teller(FUSION_SENTENCES);

/** What one more weigh-in would give. `scale`: its name; null for a platform nobody knows. */
export function nextSentence({ u_now, u_then }: Next, scale: string | null, unit: string): Said {
  const [then, now] = [showDoubt(2 * u_then, unit), showDoubt(2 * u_now, unit)];
  const name = scale || FUSION_SENTENCES.next_platform;
  return then === now ? said("next_same", { scale: name }) : said("next", { scale: name, then, now });
}

/** When its next check pays, the day as people say it; null for a scale whose gain stays as it is. */
export function checkSentence({ due, now }: Ageing, day: (due: string) => string): Said | null {
  if (now) return said("check_now");
  return due ? said("check_by", { day: day(due) }) : null;
}

/** What to do, and what it brings. `of`, `on`: names; of a platform nobody knows null. */
export function loweringSentence(lowering: Lowering, of: string | null, on: string | null, unit: string): Said {
  const { way, first, against, minutes, u_then, u_now } = lowering;
  const show = showDoubt(2 * u_then, unit) === showDoubt(2 * u_now, unit) ? showMass : showDoubt;
  const code = ["lower", way, ...first].join("_") as keyof typeof FUSION_SENTENCES;
  return said(code, {
    of: of || FUSION_SENTENCES.next_platform,
    on: on ?? "",
    against: against === null ? "" : showMass(against, unit),
    with_it: show(2 * u_then, unit),
    now: show(2 * u_now, unit),
    minutes: String(minutes),
  });
}
