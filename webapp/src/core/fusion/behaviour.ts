/**
 * How a scale may behave from one weigh-in to the next, beyond what its record says: its gain wanders, its zero is off.
 *
 * A gain does not stay as it was: load cells age and a floor is never the same twice. How fast is not known, so the
 * answer is averaged over rates of wandering, none among them: a walk, whose variance grows with the time since the
 * scale's own last check (since its first weigh-in, where nobody checked it), or a slope, which grows with its square.
 * One rate for all scales. A scale of the trade, a platform and whatever weighed officially do not wander: the law has
 * them looked after. Likewise a zero nobody is known to have set: one error in every weigh-in on that scale, there or
 * not. And what displays scatter by themselves may be more than their records say.
 *
 * Rates, chances and sizes: common practice, no source. That a scale is to be watched over time and by check standards:
 * NIST/SEMATECH e-Handbook of Statistical Methods, 2.2 and 2.3; random walk and drift as states of a model of their own:
 * A. C. Harvey, Forecasting, Structural Time Series Models and the Kalman Filter (1989), 2.3.
 */

import type { Garage } from "../garage/records";
import type { ScaleModel } from "../weighing/scale";
import type { Weighed } from "../wholeCar/weighed";
import { type Column, dot, type Matrix, row } from "./precision";

/** Chances beforehand: that gains wander at all, that a zero nobody set is off, that displays scatter beyond records. */
const [WANDERS, ZERO_OFF, SCATTERS] = [0.5, 0.25, 0.15];
const RATES = [0.0002, 0.0005, 0.001, 0.002]; // relative, by a month: of a walk per root of a month, of a slope per month
const ZERO = 4; // kg of a whole car, standard deviation
const SCATTER = 3; // times what is noted
export const MONTH = 30.4375; // days
export const DAY = 864e5; // milliseconds
export const BEFORE_1970 = 719_163; // days since those of the calendar began

/**
 * `walk`, `slope`: relative rates by a month. `zero`: kg, standard deviation. `likely`: ln of the chance.
 *
 * `scatter`: how many times more than noted the displays scatter by themselves.
 */
export type Behaviour = {
  readonly walk: number;
  readonly slope: number;
  readonly zero: number;
  readonly scatter: number;
  readonly likely: number;
};

/** The looks on one scale that may be off together, by index: `wander`, each with its `months` since; `unset`. */
export type Group = {
  readonly scale: string;
  readonly wander: readonly number[];
  readonly months: readonly number[];
  readonly unset: readonly number[];
};

/** One for each scale that may wander or whose zero may be off. */
export function groups(
  garage: Garage,
  scales: ReadonlyMap<string, ScaleModel>,
  counted: readonly Weighed[],
): readonly Group[] {
  const when = monthsOf(counted);
  const isDated = counted.some(({ record }) => monthOf(record.at) !== null);
  const official = new Set(counted.map(({ record }) => (record.official ? record.scale : null)));
  const looks = new Map<string, number[]>();
  counted.forEach(({ record: { scale } }, look) => {
    if (scale && !official.has(scale)) looks.set(scale, [...(looks.get(scale) ?? []), look]);
  });
  const found = [...looks].map(([scale, among]): Group => {
    const record = garage.scales.get(scale);
    const isTended = record?.kind === "platform" || record?.accuracy_class !== null;
    const checked = isDated ? monthOf(scales.get(scale)?.checked ?? null) : null;
    const since = checked ?? (when[among[0] as number] as number);
    const wander = isTended ? [] : among;
    const unset = among.filter((look) => counted[look]?.record.ready === null);
    return { scale, wander, months: wander.map((look) => (when[look] as number) - since), unset };
  });
  return found.filter(({ wander, unset }) => wander.length + unset.length > 0);
}

/** What is thought of, the steady one first; the chances add up to one. */
export function behaviours(among: readonly Group[]): Behaviour[] {
  const wanders = among.some(({ months }) => months.some((month) => month)) ? WANDERS : 0;
  const off = among.some(({ unset }) => unset.length > 0) ? ZERO_OFF : 0;
  const each = wanders / (2 * RATES.length);
  const moves = [
    [0, 0, 1 - wanders],
    ...RATES.map((rate) => [rate, 0, each] as const),
    ...RATES.map((rate) => [0, rate, each] as const),
  ] as const;
  const zeros = [[0, 1 - off] as const, [ZERO, off] as const];
  const scatters = [[1, 1 - SCATTERS] as const, [SCATTER, SCATTERS] as const];
  return scatters
    .flatMap(([scatter, c]) =>
      zeros.flatMap(([zero, b]) =>
        moves.map(([walk, slope, a]) => ({ walk, slope, zero, scatter, likely: Math.log(a * b * c) })),
      ),
    )
    .filter(({ likely }) => likely > -Infinity);
}

/**
 * The covariance of the looks with what its walk and its displays add, kg²; gains act on these loads (kg).
 *
 * `own`: the variance of each look by its display alone.
 */
export function scattered(
  covariance: Matrix,
  { walk, scatter }: Pick<Behaviour, "walk" | "scatter">,
  among: readonly Group[],
  loads: Column,
  own: Column,
): Matrix {
  const found = covariance.map((each, look) => {
    const added = each.slice();
    added[look] = (each[look] as number) + (own[look] as number) * (scatter * scatter - 1);
    return added;
  });
  for (const { wander, months } of among) {
    if (!walk) continue;
    wander.forEach((i, n) => {
      const [added, month, moved] = [row(found, i), months[n] as number, (loads[i] as number) * walk * walk];
      wander.forEach((j, m) => {
        added[j] = (added[j] as number) + moved * (loads[j] as number) * walkedAlike(month, months[m] as number);
      });
    });
  }
  return found;
}

/** How far its slope and its zeros move the looks, kg: columns of errors that several looks share. */
export function moved({ slope, zero }: Behaviour, among: readonly Group[], loads: Column): Column[] {
  return among.flatMap((group) => [
    ...(slope ? [drifted(group, loads, slope)] : []),
    ...(zero ? [offZero(group, loads, zero)] : []),
  ]);
}

function drifted({ wander, months }: Group, loads: Column, slope: number): Column {
  const column = new Float64Array(loads.length);
  wander.forEach((look, n) => {
    column[look] = slope * (loads[look] as number) * (months[n] as number);
  });
  return column;
}

function offZero({ unset }: Group, { length }: Column, zero: number): Column {
  const column = new Float64Array(length);
  for (const look of unset) column[look] = zero;
  return column;
}

/** The variances that a walk of one, a slope of one and a zero of one put into a weighting of the looks. */
export function puts(group: Group, loads: Column, weights: Column): [walk: number, slope: number, zero: number] {
  const { wander, months } = group;
  let walk = 0;
  wander.forEach((i, n) => {
    wander.forEach((j, m) => {
      const both = (weights[i] as number) * (loads[i] as number) * (weights[j] as number) * (loads[j] as number);
      walk += both * walkedAlike(months[n] as number, months[m] as number);
    });
  });
  return [walk, dot(weights, drifted(group, loads, 1)) ** 2, dot(weights, offZero(group, loads, 1)) ** 2];
}

/** Months that a walk has gone alike at two times; before the check and after it, it goes its own ways. */
export function walkedAlike(a: number, b: number): number {
  return a * b > 0 ? Math.min(Math.abs(a), Math.abs(b)) : 0;
}

/** When each was made; one that nobody dated a month after the one before. */
function monthsOf(counted: readonly Weighed[]): number[] {
  const known = counted.map(({ record }) => monthOf(record.at));
  const first = Math.max(
    0,
    known.findIndex((month) => month !== null),
  );
  let before = (known[first] ?? 0) - first - 1;
  return known.map((month) => (before = month ?? before + 1));
}

/** Months since the calendar began; null for what is no date. */
export function monthOf(when: string | null): number | null {
  const day = when?.slice(0, 10) ?? "";
  const time = /^(?!0000)\d{4}-\d\d-\d\d$/.test(day) ? Date.parse(day) : Number.NaN;
  // A day that its month does not have reads as one of the next.
  return new Date(time).getUTCDate() === Number(day.slice(8)) ? (time / DAY + BEFORE_1970) / MONTH : null;
}
