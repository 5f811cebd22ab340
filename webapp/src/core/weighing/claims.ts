/**
 * What a thing weighs while nobody has weighed it: as somebody claims.
 *
 * A claim is worked out, quoted or guessed, each a rectangle of stated half-width or of 5, 10, 20 % (the contingencies
 * of the ESA margin philosophy for off-the-shelf, modified and new items), and all guesses share a common bias. What
 * this garage's guesses and quotes have run off by, once enough of them were weighed, takes the place of both
 * assumptions (`lessons`). A claim whose half-width somebody stated says itself what its writer knows: it stands as
 * typed.
 */

import type { Driver, Part } from "../garage/records";
import { rectangular, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Lessons } from "./lessons";
import type { Basis } from "./weighing";

export const CLAIM_WITHIN: Readonly<Record<string, number>> = { worked_out: 0.05, quoted: 0.1, guessed: 0.2 };
/** Of a person, who knows: common practice, no source. */
const CLAIM_WITHIN_PERSON: Readonly<Record<string, number>> = { worked_out: 0.03, quoted: 0.03, guessed: 0.08 };
const GUESSES_SHARE = 0.05; // of each guess: people guess all too high or all too low; an assumption, no source
/** The bases that teach, each with the source that all its claims share: they run too low or too high together. */
export const SHARED = { guessed: "guesses", quoted: "quotes" } as const;

/** How its claim is known; a claim without a basis is a guess. */
export function basisOf(thing: Part | Driver): Basis {
  return (thing.claim_basis ?? "guessed") as Basis;
}

/**
 * The mass as claimed, less what `lessons` says, and its basis. Null when nothing is claimed.
 *
 * What a person is said to weigh is known better than what a part is, and a guess of it has no bias of parts.
 */
export function claimed(thing: Part | Driver, lessons: Lessons = {}): [Uncertain, Basis] | null {
  if (thing.claim === null) return null;
  const basis = basisOf(thing);
  const typed = thing.claim.value;
  const isPerson = !("count" in thing);
  const lesson = lessons[basis];
  if (lesson && !thing.claim_within && !isPerson) {
    const value = typed * lesson.factor;
    const shares = { [`claim:${thing.id}`]: lesson.spread * value, [SHARED[lesson.basis]]: lesson.bias_u * value };
    return [uncertain(value, shares), basis];
  }
  const share = (isPerson ? CLAIM_WITHIN_PERSON : CLAIM_WITHIN)[basis] as number;
  const within = thing.claim_within?.value ?? share * typed;
  const sources: Record<string, number> = { [`claim:${thing.id}`]: rectangular(within) };
  if (basis === "guessed" && !isPerson) sources.guesses = GUESSES_SHARE * typed;
  return [uncertain(typed, sources), basis];
}
