/** Ballast on the phone: no choice of all there are is better, whatever the places are. */

import fc from "fast-check";
import { expect, test } from "vitest";

import { type Ballast, ballast, type Carried, type Place, type Wanted } from "../../webapp/src/core/ballast/ballast";
import { massIn, overMinimum, sharesOf } from "../../webapp/src/core/ballast/ballastAnswer";
import { Effort } from "../../webapp/src/core/ballast/programme";
import { readMass } from "../../webapp/src/core/numbers/quantity";
import { uncertain } from "../../webapp/src/core/numbers/uncertain";

const CAR: Carried = {
  total: uncertain(900),
  front: uncertain(480),
  left: uncertain(460),
  height: 0.48,
  wheelbase: 2.42,
  track_front: 1.43,
  track_rear: 1.395,
  roll_front: 0.55,
};
const mm = (min: number, max: number) => fc.integer({ min, max }).map((whole) => whole / 1000);
const spots = fc.record({
  x: mm(-600, 3200),
  y: mm(-600, 600),
  z: mm(100, 600),
  block: fc.constantFrom(0.467, 1, 1.134, 2.5),
  most: fc.integer({ min: 0, max: 4 }),
});
const manyPlaces = fc
  .array(spots, { minLength: 2, maxLength: 4 })
  .map((all) => all.map((spot, at) => ({ id: `p${at}`, ...spot })));
const shares = (middle: number) =>
  fc.option(fc.tuple(mm(-20, 15), mm(2, 20)).map(([off, width]) => [middle + off, middle + off + width] as const));
const aims = fc
  .record({
    least: mm(895_000, 912_000),
    room: fc.option(mm(0, 20_000)),
    front: shares(0.533),
    left: shares(0.511),
    prefer: fc.constantFrom("mass" as const, "centre" as const, "cross" as const),
  })
  .map(({ room, ...aim }): Wanted => ({ ...aim, most: room === null ? null : aim.least + room, more: null }));

/** Every way to fill the places. */
function everyChoice(places: readonly Place[]): number[][] {
  return places.reduce<number[][]>(
    (known, { most }) => {
      return known.flatMap((counts) => Array.from({ length: most + 1 }, (_, count) => [...counts, count]));
    },
    [[]],
  );
}

/** What a choice comes to, what is made least first in front; null when it is not allowed. */
function reached(counts: readonly number[], places: readonly Place[], aim: Wanted): number[] | null {
  const sum = (of: (place: Place) => number) =>
    places.reduce((known, place, at) => known + place.block * (counts[at] as number) * of(place), 0);
  const mass = sum(() => 1);
  const isWithin = (share: number, range: Wanted["front"]) =>
    range === null || (share > range[0] - 1e-7 && share < range[1] + 1e-7);
  const front = (480 + sum(({ x }) => 1 - x / 2.42)) / (900 + mass);
  const left = (460 + sum(({ y }) => 0.5 - y / 1.4125)) / (900 + mass);
  const isRight = 900 + mass > aim.least - 1e-6 && (aim.most === null || 900 + mass < aim.most + 1e-6);
  if (!isRight || !isWithin(front, aim.front) || !isWithin(left, aim.left)) return null;
  const [grams, height] = [Math.ceil(mass * 1000 - 1e-6), Math.ceil(sum(({ z }) => z) * 10 - 1e-6)];
  const cross = Math.max(1, Math.ceil(Math.abs(sum(({ y }) => y)) * 2 - 1e-6));
  const centre = Math.ceil(((432 + sum(({ z }) => z)) / (900 + mass)) * 10_000 - 1e-6);
  return [...inOrder(aim, { grams, height, cross, centre }), ...counts.map((count) => -count)];
}

function inOrder(
  { prefer, most }: Wanted,
  { grams, height, cross, centre }: Record<"grams" | "height" | "cross" | "centre", number>,
): number[] {
  if (prefer === "cross") return most === null ? [grams, cross, height] : [cross, grams, height];
  return prefer === "mass" || most === null ? [grams, height, cross] : [centre, grams, cross];
}

function isLess(one: readonly number[], other: readonly number[]): boolean {
  const at = one.findIndex((value, index) => value !== other[index]);
  return at >= 0 && (one[at] as number) < (other[at] as number);
}

test("no choice of all there are is better, and what is missing is missing from all of them", () => {
  let [solved, refused] = [0, 0];
  fc.assert(
    fc.property(manyPlaces, aims, (places, aim) => {
      const found = ballast(CAR, places, aim) as Ballast;
      const ours = places.map(({ id }) => found.put[id] ?? 0);
      expect(found.proven).toBe(true);
      const all = everyChoice(places)
        .map((counts) => reached(counts, places, aim))
        .filter((each) => each !== null);
      if (all.length === 0) {
        expect(found.missing.length).toBeGreaterThan(0);
        refused++;
      } else {
        expect(found.missing).toEqual([]);
        expect(reached(ours, places, aim)).toEqual(all.reduce((least, each) => (isLess(each, least) ? each : least)));
        solved++;
      }
    }),
    { numRuns: 300, seed: 20_261_125 },
  );
  expect(Math.min(solved, refused)).toBeGreaterThan(20);
});

test("an answer is told in kilograms of blocks, in what is left over the minimum, and in the shares without it", () => {
  expect(massIn(readMass("2.5 kg"), 4)).toBe(10);
  const found = ballast(CAR, [], { least: 895, most: null, more: null, front: null, left: null, prefer: "mass" });
  expect(overMinimum(found as Ballast, 895)).toEqual(uncertain(5));
  expect(sharesOf(CAR).front?.value).toBeCloseTo(480 / 900, 14);
  expect(sharesOf(CAR).left?.value).toBeCloseTo(460 / 900, 14);
  expect(sharesOf({ ...CAR, front: null, left: null })).toEqual({ front: null, left: null });
});

test("searches share what they may look at, and one cut short proves nothing", () => {
  const effort = new Effort();
  expect(effort.share()).toBe(10_000);
  effort.spend(29_500, true);
  expect([effort.share(), effort.isProven]).toEqual([500, true]);
  effort.spend(500, false);
  effort.spend(1, true);
  expect([effort.share(), effort.isProven]).toEqual([200, false]);
});
