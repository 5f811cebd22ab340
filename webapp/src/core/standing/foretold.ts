/**
 * What an official weigh-in was foretold to show, held against what it showed: how the tool's own word is tested.
 *
 * With such a weigh-in is kept what was foretold of it (`foretell`): what that scale should show by all that was known
 * before, with the doubt of the weight, of the scale's gain and of how it repeats. What it showed has a doubt of its own,
 * its steps. The two share nothing, so the one comes out inside the other when
 *
 *     E_n = |foretold − read| / √(U²(foretold) + U²(read)) ≤ 1
 *
 * with expanded uncertainties (k = 2): the E_n score by which laboratories are compared [ISO 13528; ISO/IEC 17043].
 */

import type { WeighIn } from "../garage/records";
import { beyondDoubt, scale, subtract, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Loads } from "../wholeCar/weighIn";

/** What the scales of a weigh-in were `expected` to show and what was `read` on them, kg; `inside`: E_n ≤ 1. */
export type Foretold = { readonly expected: Uncertain; readonly read: Uncertain; readonly inside: boolean };

/** Null of a weigh-in that is not official, was not foretold, or lacks a reading. */
export function foretoldOf(record: WeighIn, { loads, gain }: Loads): Foretold | null {
  const { official, foretold, foretold_within: within } = record;
  if (!official || !foretold || !within || !loads.total) return null;
  const expected = uncertain(foretold.value, { foretold: 0.5 * within.value });
  const read = asShown(loads.total, gain);
  return { expected, read, inside: !beyondDoubt(subtract(expected, read)) };
}

/** What the display said of the whole car, its gain left in, with the doubt of the look alone. */
function asShown({ value, sources }: Uncertain, gain: Uncertain): Uncertain {
  const isOfLook = (name: string) => !Object.hasOwn(gain.sources, name) && !name.startsWith("rep:");
  const look = Object.entries(sources).filter(([name]) => isOfLook(name));
  return scale(uncertain(value, Object.fromEntries(look)), 1 + gain.value);
}
