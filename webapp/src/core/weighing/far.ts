/** Whether a new reading is so far from what a part weighed before that a second look at the display is worth it. */
import { subtract, type Uncertain, u } from "../numbers/uncertain";

const SHARE = 0.05; // of what it weighed before: closer than this is never odd; common practice, no source
const SIGMAS = 3;

/** The difference new − before when it is beyond doubt and beyond a twentieth of the mass; null otherwise. */
export function farFrom(before: Uncertain, now: Uncertain): Uncertain | null {
  const difference = subtract(now, before);
  const limit = Math.max(SIGMAS * u(difference), SHARE * before.value);
  return Math.abs(difference.value) > limit ? difference : null;
}
