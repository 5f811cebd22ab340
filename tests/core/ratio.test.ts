/** Exact ratios against the doubles themselves: every double survives, every ratio becomes its nearest. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";

import {
  add,
  compare,
  divide,
  fromNumber,
  multiply,
  negate,
  powerOfTen,
  ratio,
  toNumber,
} from "../../webapp/src/core/numbers/ratio";

const doubles = fc.double({ noNaN: true, noDefaultInfinity: true });
const ratios = fc
  .tuple(fc.bigInt({ min: -(10n ** 40n), max: 10n ** 40n }), fc.bigInt({ min: 1n, max: 10n ** 40n }))
  .map(([n, d]) => ratio(n, d));

/** The doubles next to x. */
function neighbours(x: number): [number, number] {
  const bits = new DataView(new ArrayBuffer(8));
  const beside = (step: bigint) => {
    bits.setFloat64(0, x);
    bits.setBigInt64(0, bits.getBigInt64(0) + step);
    return bits.getFloat64(0);
  };
  return [beside(-1n), beside(1n)];
}

function size(a: ReturnType<typeof ratio>): ReturnType<typeof ratio> {
  return a.n < 0n ? negate(a) : a;
}

describe("ratios", () => {
  test("every double becomes a ratio and itself again", () => {
    fc.assert(fc.property(doubles, (x) => toNumber(fromNumber(x)) === x));
  });

  test("the smallest and the largest doubles too", () => {
    for (const x of [5e-324, 2.2250738585072014e-308, 2.225073858507201e-308, Number.MAX_VALUE, -5e-324]) {
      expect(toNumber(fromNumber(x))).toBe(x);
    }
  });

  test("no double is nearer to a ratio than the one it becomes", () => {
    fc.assert(
      fc.property(ratios, (a) => {
        fc.pre(a.n !== 0n);
        const x = toNumber(a);
        const distance = size(add(a, negate(fromNumber(x))));
        return neighbours(x).every((y) => compare(distance, size(add(a, negate(fromNumber(y))))) <= 0);
      }),
    );
  });

  test("a tie goes to the even digit, and one digit more decides otherwise", () => {
    const half = 1n << 53n;
    expect(toNumber(ratio(half + 1n))).toBe(2 ** 53);
    expect(toNumber(ratio(half + 3n))).toBe(2 ** 53 + 4);
    expect(toNumber(ratio((half + 1n) * 10n ** 30n + 1n, 10n ** 30n))).toBe(2 ** 53 + 2);
    expect(toNumber(ratio(3n, 1n << 1075n))).toBe(1e-323);
    expect(toNumber(ratio(1n, 1n << 1075n))).toBe(0);
  });

  test("decimals become what the language itself reads", () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 25n }), fc.integer({ min: 0, max: 25 }), (digits, places) => {
        return toNumber(multiply(ratio(digits), powerOfTen(-places))) === Number(`${digits}e-${places}`);
      }),
    );
  });

  test("division undoes multiplication, and equal values have equal parts", () => {
    fc.assert(
      fc.property(ratios, ratios, (a, b) => {
        fc.pre(b.n !== 0n);
        expect(divide(multiply(a, b), b)).toEqual(a);
      }),
    );
  });

  test("what is not a number, too large or over zero is refused", () => {
    expect(() => fromNumber(Number.NaN)).toThrow("NaN is not a number of anything");
    expect(() => toNumber(ratio(10n ** 400n))).toThrow("too large");
    expect(() => ratio(1n, 0n)).toThrow("no zero below its line");
  });
});
