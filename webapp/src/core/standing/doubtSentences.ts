/** What is said beside the ± of the weight now, by the screens that come after the first glance. */

import { SENTENCES } from "../../generated/sentences";
import type { Possible } from "../fusion/fusion";
import type { Scatter } from "../fusion/scatter";
import { showDoubt, showMass, showOdds } from "../numbers/shown";
import { expanded } from "../numbers/uncertain";
import { type Said, teller } from "../words/said";

const said = teller(SENTENCES);

/** The two answers, where the weigh-ins leave two; `day`: of the last of them, in words. */
export function eitherSentence(answers: readonly Possible[], unit: string, day: string): Said | null {
  const [off, right] = [...answers].sort((a, b) => Number(b.off) - Number(a.off));
  if (!off || !right) return null;
  const show = ({ weight }: Possible) => showMass(weight.value, unit, expanded(weight));
  return said("either", { right: show(right), off: show(off), odds: showOdds(off.odds), day });
}

/** That a single weigh-in proves nothing of the ledger; what a second would bring, `lowerDoubt` tells. */
export const oneOnlySentence = (): Said => said("one_only");

/** On what the interval rests: what nobody wrote down since the last weigh-in cannot be seen. */
export function sinceSentence(day: string): Said {
  return said("since_written", { day });
}

/** Readings that scatter more than the scale's record says. `scale`: its name. */
export function scatterSentence({ repeats }: Scatter, scale: string, unit: string): Said {
  return said("scatter", { scale, mass: showDoubt(repeats, unit) });
}
