/**
 * What was done between two lists of jobs, and what it weighs.
 *
 * "Since a weigh-in" is the difference of two lists, the jobs in the car now and the jobs stored with the weigh-in; no
 * clock decides it. The net of what was done is one sum over its lines, so that a part put on and one taken off share
 * what their weighings share, and a part taken off and put back nets to nothing.
 */

import { order } from "../garage/order";
import { scale, type Uncertain, weightedSum } from "../numbers/uncertain";
import type { JobNet } from "./net";

export type Nets = ReadonlyMap<string, JobNet>;

/**
 * What was done since the last weigh-in that counts: jobs `put_in` (fitted) and `taken_out` (undone), by id.
 *
 * `changes`: kg by job, as it changed the car; `net`: their sum. `unweighed`: parts among them that count zero;
 * `unweighed_out`: those of which the car has fewer than at the weigh-in, `unweighed_in`: more.
 */
export type Since = {
  readonly weigh_in: string;
  readonly put_in: readonly string[];
  readonly taken_out: readonly string[];
  readonly changes: Readonly<Record<string, Uncertain>>;
  readonly net: Uncertain;
  readonly unweighed: readonly string[];
  readonly unweighed_out: readonly string[];
  readonly unweighed_in: readonly string[];
};

/** The difference of two lists of jobs, and what it weighs. */
export function sinceWeighIn(id: string, then: readonly string[], now: readonly string[], nets: Nets): Since {
  const signs = signsOf(now, then);
  const changes = signs.map(([job, sign]) => [job, scale((nets.get(job) as JobNet).total.mass.net, sign)] as const);
  const moved = [...piecesBetween(now, then, nets)];
  return {
    weigh_in: id,
    put_in: signs.flatMap(([job, sign]) => (sign > 0 ? [job] : [])),
    taken_out: signs.flatMap(([job, sign]) => (sign < 0 ? [job] : [])),
    changes: Object.fromEntries(changes),
    net: netBetween(now, then, nets),
    unweighed: moved.map(([part]) => part),
    unweighed_out: moved.flatMap(([part, pieces]) => (pieces < 0 ? [part] : [])),
    unweighed_in: moved.flatMap(([part, pieces]) => (pieces > 0 ? [part] : [])),
  };
}

/** Net of the jobs of one list less that of the other, kg, as one sum: what the two have in common cancels. */
export function netBetween(now: readonly string[], then: readonly string[], nets: Nets): Uncertain {
  const masses: Uncertain[] = [];
  const signs: number[] = [];
  for (const [job, sign] of signsOf(now, then)) {
    for (const { mass } of nets.get(job)?.lines ?? []) {
      if (!mass) continue;
      signs.push(sign);
      masses.push(mass);
    }
  }
  return weightedSum(masses, signs);
}

/** Parts without a mass → how many pieces more of it the one list has, in order of id; put off and back on, 0. */
export function piecesBetween(now: readonly string[], then: readonly string[], nets: Nets): Map<string, number> {
  const pieces = new Map<string, number>();
  for (const [job, sign] of signsOf(now, then)) {
    for (const { part, way, count, mass } of nets.get(job)?.lines ?? []) {
      if (mass !== null) continue;
      pieces.set(part, (pieces.get(part) ?? 0) + ((way === "on") === sign > 0 ? count : -count));
    }
  }
  return new Map([...pieces].sort(([a], [b]) => order(a, b)));
}

/** Jobs of one list only: +1 those put in, in the order of now, then −1 those taken out. */
function signsOf(now: readonly string[], then: readonly string[]): [string, number][] {
  const has = new Set(now);
  const had = new Set(then);
  const putIn = now.filter((job) => !had.has(job)).map((job): [string, number] => [job, 1]);
  const takenOut = then.filter((job) => !has.has(job)).map((job): [string, number] => [job, -1]);
  return [...putIn, ...takenOut];
}
