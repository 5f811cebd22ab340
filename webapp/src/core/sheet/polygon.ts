/**
 * Outlines of straight sides, decided exactly: what crosses, what lies inside, how large it is.
 *
 * Corners are exact ratios of a metre as typed or drawn. They are first put on one grid fine enough for all of them, so
 * that every question is one of whole numbers and none is decided by a rounding. Sides are counted from 0; side i runs
 * from corner i to the next.
 */

import type { Ratio } from "../numbers/ratio";

export type Point = readonly [Ratio, Ratio];
export type Spot = readonly [bigint, bigint];
type Side = readonly [Spot, Spot];

/** The outlines in whole steps of a grid, and how many steps a metre has. */
export function onGrid(outlines: readonly (readonly Point[])[]): { spots: Spot[][]; steps: bigint } {
  const steps = outlines.flat(2).reduce((common, { d }) => (common / gcd(common, d)) * d, 1n);
  const whole = ({ n, d }: Ratio): bigint => n * (steps / d);
  return { spots: outlines.map((outline) => outline.map(([x, y]) => [whole(x), whole(y)] as const)), steps };
}

/** Twice the signed area in square steps (the shoelace formula); positive when the corners run from x to y. */
export function twiceArea(outline: readonly Spot[]): bigint {
  return sidesOf(outline).reduce((sum, [a, b]) => sum + a[0] * b[1] - b[0] * a[1], 0n);
}

/** The first two sides that cross, touch or fold back on each other; null for an outline that can be cut. */
export function crossing(outline: readonly Spot[]): readonly [number, number] | null {
  const sides = sidesOf(outline);
  for (let one = 0; one < sides.length; one++) {
    for (let other = one + 1; other < sides.length; other++) if (meetWrongly(sides, one, other)) return [one, other];
  }
  return null;
}

function meetWrongly(sides: readonly Side[], one: number, other: number): boolean {
  const [a, b] = [sides[one] as Side, sides[other] as Side];
  if (other === one + 1) return folds(a, b);
  return one === 0 && other === sides.length - 1 ? folds(b, a) : touch(a, b);
}

/** True when no side of one touches a side of the other; one may still lie wholly inside the other. */
export function apart(a: readonly Spot[], b: readonly Spot[]): boolean {
  const others = sidesOf(b);
  return !sidesOf(a).some((one) => others.some((other) => touch(one, other)));
}

/** True when the spot, which is on no side, is within the outline: a ray to the right leaves it an odd number of times. */
export function inside([x, y]: Spot, outline: readonly Spot[]): boolean {
  const crossed = sidesOf(outline).filter(([[ax, ay], [bx, by]]) => {
    if (ay > y === by > y) return false;
    return (bx - ax) * (y - ay) - (x - ax) * (by - ay) > 0n === by > ay;
  });
  return crossed.length % 2 === 1;
}

function sidesOf(outline: readonly Spot[]): Side[] {
  return outline.map((spot, at) => [spot, outline[(at + 1) % outline.length] as Spot]);
}

/** Which way the way from a to b turns towards c: the sign of twice the triangle's area. */
function turn(a: Spot, b: Spot, c: Spot): number {
  const twice = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  return twice > 0n ? 1 : twice < 0n ? -1 : 0;
}

/** True when the following side runs back over this one, or either has no length. */
function folds([a, b]: Side, [, c]: Side): boolean {
  const ahead = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
  return same(a, b) || same(b, c) || (turn(a, b, c) === 0 && ahead < 0n);
}

function same(a: Spot, b: Spot): boolean {
  return a[0] === b[0] && a[1] === b[1];
}

function touch([a, b]: Side, [c, d]: Side): boolean {
  if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
  return on(c, a, b) || on(d, a, b) || on(a, c, d) || on(b, c, d);
}

function on(spot: Spot, a: Spot, b: Spot): boolean {
  return between(spot[0], a[0], b[0]) && between(spot[1], a[1], b[1]) && turn(a, b, spot) === 0;
}

function between(value: bigint, a: bigint, b: bigint): boolean {
  return a < b ? a <= value && value <= b : b <= value && value <= a;
}

function gcd(a: bigint, b: bigint): bigint {
  let [large, small] = [a, b];
  while (small > 0n) [large, small] = [small, large % small];
  return large;
}
