/** Where everything of the run's drawing lies: weight upwards against laps to the right. It places, and rounds nothing. */
import type { FuelRun, Moment } from "../../core/fuelRun/fuelRun";
import { expanded, type Uncertain } from "../../core/numbers/uncertain";

export const WIDTH = 360;
export const HEIGHT = 208;
const LEFT = 12;
const RIGHT = 348;
const TOP = 30;
const BOTTOM = 164;
const FAR = 2; // heights of the run itself: a minimum further below is said and not drawn

export type Dot = { readonly x: number; readonly y: number };
/** `band`: of the 95 % interval. `minimum`, `inHand`: heights of lines, null when not asked for or too far away. */
export type Drawn = {
  readonly line: readonly Dot[];
  readonly band: readonly Dot[];
  readonly minimum: number | null;
  readonly inHand: number | null;
  readonly worst: Dot | null;
  readonly isFar: boolean;
};

type Weighed = { readonly moment: Moment; readonly weight: Uncertain };

/** What to draw; null when no weight is known or there is nothing but the start. */
export function drawnOf(run: FuelRun): Drawn | null {
  const weighed: Weighed[] = run.laps.flatMap((moment) => (moment.weight ? [{ moment, weight: moment.weight }] : []));
  if (weighed.length < 2) return null;
  const low = Math.min(...weighed.map(({ weight }) => weight.value - expanded(weight)));
  const high = Math.max(...weighed.map(({ weight }) => weight.value + expanded(weight)));
  const worst = run.worst === null ? null : run.laps[run.worst];
  const minimum = worst?.judged ? run.minimum : null;
  const keep = minimum === null || !worst?.judged ? null : minimum + worst.judged.in_hand;
  const isFar = minimum !== null && low - minimum > FAR * (high - low);
  const shown = isFar ? [] : [minimum, keep].filter((mass) => mass !== null);
  const at = heights(Math.min(low, ...shown), Math.max(high, ...shown));
  const last = weighed.length - 1;
  const x = (place: number) => LEFT + (place / last) * (RIGHT - LEFT);
  const dots = (mass: (weight: Uncertain) => number) =>
    weighed.map(({ weight }, i) => ({ x: x(i), y: at(mass(weight)) }));
  const line = dots((weight) => weight.value);
  const under = dots((weight) => weight.value - expanded(weight)).reverse();
  return {
    line,
    band: [...dots((weight) => weight.value + expanded(weight)), ...under],
    minimum: minimum === null || isFar ? null : at(minimum),
    inHand: keep === null || isFar ? null : at(keep),
    worst: worst ? (line[worst.lap ?? 0] ?? null) : null,
    isFar,
  };
}

function heights(low: number, high: number): (mass: number) => number {
  const span = high - low || 1;
  return (mass) => BOTTOM - ((mass - low) / span) * (BOTTOM - TOP);
}

/** An SVG path through the dots. */
export function through(dots: readonly Dot[]): string {
  return dots.map(({ x, y }, i) => `${i ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join(" ");
}

/** A share's place on a line between two whole per cent around all of them, 0 to 1. */
export function shareLine(shares: readonly number[]): { low: number; high: number; at: (share: number) => number } {
  const low = Math.floor(Math.min(...shares) * 100 - 0.25);
  const high = Math.max(low + 2, Math.ceil(Math.max(...shares) * 100 + 0.25));
  return { low, high, at: (share) => (share * 100 - low) / (high - low) };
}
