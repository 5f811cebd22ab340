/**
 * What does not fit among the weigh-ins, its likely causes and what one more would give, in words.
 *
 * The table is the server's own (`server/tarebook/core/fusion/fusion_words.py`), in `generated/fusionSentences`.
 */

import { FUSION_SENTENCES } from "../../generated/fusionSentences";
import { showDoubt } from "../numbers/shown";
import { type Said, sizeOf, teller } from "../words/said";
import type { Cause, Change } from "./causes";
import type { Next } from "./weighNext";

const said = teller(FUSION_SENTENCES);

/** What does not fit, without where: that is between the weigh-ins `change` names. */
export function changeSentence(change: Change, unit: string): Said {
  const isMore = change.size.value > 0;
  const size = sizeOf(change.size, unit);
  if (change.kind === "outlier") return said(isMore ? "change_high" : "change_low", size);
  if (change.kind === "either") return said(isMore ? "change_in_or_off" : "change_out_or_off", size);
  return said(isMore ? "change_in" : "change_out", size);
}

/** A likely cause, by its code. */
export function causeSentence(cause: Cause): Said {
  return said(`cause_${cause}`);
}

/** What one more weigh-in would give. `scale`: its name; null for a platform nobody knows. */
export function nextSentence({ u_now, u_then }: Next, scale: string | null, unit: string): Said {
  const [then, now] = [showDoubt(2 * u_then, unit), showDoubt(2 * u_now, unit)];
  const name = scale || FUSION_SENTENCES.next_platform;
  return then === now ? said("next_same", { scale: name }) : said("next", { scale: name, then, now });
}
