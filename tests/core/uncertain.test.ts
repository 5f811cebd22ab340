/** Uncertain values obey the law of propagation, add up in any order, and round once. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";

import { doubtsBy } from "../../webapp/src/core/numbers/doubts";
import { add as addExact, fromNumber, toNumber, ZERO } from "../../webapp/src/core/numbers/ratio";
import * as uncertain from "../../webapp/src/core/numbers/uncertain";

const numbers = fc.integer({ min: -1e9, max: 1e9 }).map((thousandths) => thousandths / 1000);
const names = fc.constantFrom("cal:s1", "cal:s2", "known:a", "round:w1");
const items = fc.record({ value: numbers, sources: fc.dictionary(names, numbers) });
const wild = fc.double({ noNaN: true, min: -1e300, max: 1e300 });
// Powers of two and their neighbours, where ties and cancellation happen.
const ties = fc
  .tuple(fc.constantFrom(-1, 1), fc.integer({ min: -110, max: 60 }))
  .map(([sign, power]) => sign * 2 ** power);

function exactSum(terms: readonly number[]): number {
  return toNumber(terms.map(fromNumber).reduce(addExact, ZERO));
}

describe("sums", () => {
  test.each([
    ["of any size", fc.array(wild, { maxLength: 30 })],
    ["with ties", fc.array(ties, { maxLength: 12 })],
    ["that nearly cancel", fc.array(fc.oneof(ties, numbers), { maxLength: 12 })],
  ])("%s are the exact sum rounded once", (_, lists) => {
    fc.assert(
      fc.property(lists, (terms) => uncertain.fsum(terms) === exactSum(terms)),
      { numRuns: 1000 },
    );
  });

  test("a sum that is not finite is refused", () => {
    expect(() => uncertain.fsum([Number.MAX_VALUE, Number.MAX_VALUE])).toThrow("not a finite number");
    expect(() => uncertain.fsum([Number.NaN])).toThrow("not a finite number");
  });
});

describe("uncertain values", () => {
  test("the order of the records never changes a digit", () => {
    const shuffles = fc.array(items, { maxLength: 12 }).chain((list) => {
      const shuffled = fc.shuffledSubarray(list, { minLength: list.length });
      return fc.tuple(fc.constant(list), shuffled);
    });
    fc.assert(
      fc.property(shuffles, ([list, shuffled]) => {
        expect(uncertain.total(shuffled)).toEqual(uncertain.total(list));
        expect(uncertain.u(uncertain.total(shuffled))).toBe(uncertain.u(uncertain.total(list)));
      }),
    );
  });

  test("a thing less itself is nothing for certain", () => {
    fc.assert(
      fc.property(items, (item) => {
        expect(uncertain.subtract(item, item)).toEqual({ value: 0, sources: {} });
      }),
    );
  });

  test("the variance of a sum counts what is shared twice", () => {
    fc.assert(
      fc.property(items, items, (a, b) => {
        const own = uncertain.u(a) ** 2 + uncertain.u(b) ** 2;
        const shared = Object.entries(a.sources).reduce((sum, [name, part]) => sum + part * (b.sources[name] ?? 0), 0);
        const wanted = own + 2 * shared;
        return Math.abs(uncertain.u(uncertain.add(a, b)) ** 2 - wanted) <= 1e-9 * own;
      }),
    );
  });

  test("each item needs its weight", () => {
    expect(() => uncertain.weightedSum([uncertain.uncertain(1)], [1, 2])).toThrow("as many weights as items");
  });

  test("doubts are told the widest first, without those that change no digit", () => {
    const item = uncertain.uncertain(1, { "a:1": 3, "a:2": 4, b: 20, c: 0.003, d: 0.0019 });
    const found = doubtsBy(item, (source) => source.split(":")[0] as string);
    expect(found).toEqual([
      { name: "b", u: 20, first: "b" },
      { name: "a", u: 5, first: "a:1" },
      { name: "c", u: 0.003, first: "c" },
    ]);
    expect(doubtsBy(uncertain.uncertain(1), String)).toEqual([]);
  });

  test("dividing by nothing is refused", () => {
    expect(() => uncertain.divide(uncertain.uncertain(1), uncertain.uncertain(0))).toThrow("a value of zero");
  });
});
