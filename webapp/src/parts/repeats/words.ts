/** Several readings in words: one beside the other, the odd one, and two that are too far apart. */
import { showMass } from "../../core/numbers/shown";
import type { Read } from "../../core/weighing/repeats";
import { sentenceCase } from "../words/naming";
import type { LookRead, OddRead } from "./set";

const ORDINALS = ["1st", "2nd", "3rd"];
export const ordinal = (nth: number): string => ORDINALS[nth - 1] ?? `${nth}th`;

/** "251.3 · 251.4 kg": the unit once, where all have the same. */
export function listed(read: readonly Read[]): string {
  const texts = read.map(({ shown }) => shown.reads);
  const split = texts.map((text) => /^([\d.]+)( \S+)$/.exec(text));
  const unit = split[0]?.[2];
  const isOne = unit !== undefined && split.every((parts) => parts?.[2] === unit);
  return isOne ? split.map((parts) => parts![1]).join(" · ") + unit : texts.join(" · ");
}

/** Which reading it is: "Right front, 3rd reading". */
export function whichWords({ label }: LookRead, nth: number): string {
  return label ? `${label}, ${ordinal(nth)} reading` : `${ordinal(nth)} reading`;
}

export function oddWords({ look, nth, shown, off }: OddRead): string {
  const size = showMass(Math.abs(off), shown.unit);
  return `${whichWords(look, nth)}: ${shown.reads} is ${size} ${off > 0 ? "more" : "less"} than the others.`;
}

export function apartWords({ label, read }: LookRead, apart: number): string {
  const size = showMass(apart, read[0]!.shown.unit);
  return sentenceCase(`${label ? `${label}: ` : ""}the two differ by ${size}, more than this scale should.`);
}
