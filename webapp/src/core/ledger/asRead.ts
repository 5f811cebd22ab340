/** What jobs took off and put on, as the plain sum of what the displays showed. */

import type { Garage, Weighing } from "../garage/records";
import { sumAsRead, type Term } from "../numbers/sumAsRead";
import type { Ledger } from "./ledger";
import type { Line } from "./net";

/** Of several jobs together, as `asRead`. */
export function jobsAsRead(garage: Garage, book: Ledger, jobs: readonly string[]): string | null {
  return asRead(
    garage,
    jobs.flatMap((job) => book.jobs.get(job)?.lines ?? []),
  );
}

/**
 * On less off. Null where the lines are not one reading each: a part weighed or read twice is a mean, one that is
 * guessed was read by nobody, and of four weighed as one batch two have no display of their own.
 */
export function asRead(garage: Garage, lines: readonly Line[]): string | null {
  const terms: Term[] = [];
  for (const { part, way, count } of lines) {
    const [weighing, more] = garage.weighings_of.get(part) ?? [];
    const pieces = weighing?.pieces ?? 1;
    if (!weighing || more || count % pieces !== 0 || garage.repeats_of.has(weighing.id)) return null;
    for (let at = 0; at < count / pieces; at++) terms.push(...termsOf(weighing, way === "on" ? 1 : -1));
  }
  return sumAsRead(terms);
}

function termsOf({ method, shown, shown_empty, shown_far }: Weighing, sign: 1 | -1): Term[] {
  const isDifference = method === "difference" || method === "container";
  const looks: (readonly [typeof shown_far, 1 | -1])[] = [
    [shown, sign],
    [isDifference ? shown_empty : null, sign === 1 ? -1 : 1],
    [method === "ends" ? shown_far : null, sign],
  ];
  return looks.flatMap(([look, way]) => (look ? [[look, way] as const] : []));
}
