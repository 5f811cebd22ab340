/** Readings hold for any text: read the same when spelled out, refused in words, never guessed, never a crash. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";

import { factor, type Quantity, QuantityError, read, readMass } from "../../webapp/src/core/numbers/quantity";
import { add, fromNumber, multiply, ratio, toNumber } from "../../webapp/src/core/numbers/ratio";
import { describe as told } from "../../webapp/src/errors";
import { DIMENSIONS, type Kind } from "../../webapp/src/generated/units";

const kinds = fc.constantFrom<Kind>("mass", "length", "volume");
const numbers = fc.oneof(
  fc.nat(900).map(String),
  fc.tuple(fc.nat(900), fc.nat(999)).map(([whole, places]) => `${whole}.${places}`),
  fc.tuple(fc.nat(30), fc.constantFrom("1/2", "3/8", "15/16", "⅜")).map(([whole, part]) => `${whole} ${part}`),
);
const readings = kinds.chain((kind) => {
  const words = Object.values(DIMENSIONS[kind].units).flatMap((unit) => unit.words);
  const parts = fc.tuple(numbers, fc.constantFrom("", " ", "\u00a0"), fc.constantFrom(...words));
  return parts.map((all) => ({ kind, text: all.join("") }));
});

function outcome(kind: Kind, text: string, unit: string | null = null): Quantity | QuantityError {
  try {
    return read(kind, text, unit);
  } catch (refusal) {
    if (refusal instanceof QuantityError) return refusal;
    throw refusal;
  }
}

describe("readings", () => {
  test("a reading spelled out reads the same", () => {
    fc.assert(
      fc.property(readings, ({ kind, text }) => {
        const first = outcome(kind, text);
        if (first instanceof QuantityError) expect(first.code).toBe("quantity_absurd");
        else expect({ ...read(kind, first.reads), text }).toEqual(first);
      }),
    );
  });

  test("any text is read or refused in words", () => {
    const near = fc.string({ unit: fc.constantFrom(..."0123456789.,-/ '\"x½⁄×kglbozmt#") });
    fc.assert(
      fc.property(kinds, fc.oneof(near, fc.string({ unit: "binary" })), (kind, text) => {
        const result = outcome(kind, text, "lb oz");
        if (!(result instanceof QuantityError)) return result.last_digit > 0 && result.value >= 0;
        const names = [...`${told(result.code).sentence}${told(result.code).do}`.matchAll(/\{(\w+)\}/g)];
        return names.every(([, name]) => name !== undefined && Object.hasOwn(result.data, name));
      }),
    );
  });

  // [The Unicode Standard, its character database: <fraction> decompositions of Latin-1 and Number Forms]
  test("every ready-made fraction is what Unicode says it is", () => {
    const points = [0xbc, 0xbd, 0xbe, ...Array.from({ length: 15 }, (_, at) => 0x2150 + at)];
    for (const mark of points.map((point) => String.fromCodePoint(point))) {
      const spelled = readMass(`3 ${mark.normalize("NFKC").replace("\u2044", "/")} lb`);
      expect(readMass(`3 ${mark} lb`)).toEqual({ ...spelled, text: `3 ${mark} lb` });
    }
  });

  test("pounds and ounces are their sum", () => {
    fc.assert(
      fc.property(fc.nat(900), fc.nat(1599), (pounds, hundredths) => {
        const ounces = multiply(ratio(BigInt(hundredths), 100n), factor("mass", "oz"));
        const both = readMass(`${pounds} lb ${hundredths / 100} oz`);
        expect(both.exact).toEqual(add(multiply(ratio(BigInt(pounds)), factor("mass", "lb")), ounces));
      }),
    );
  });

  test("a value is the nearest double of what was typed", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (grams) => {
        const reading = readMass(`${grams / 1000} kg`);
        expect(reading.value).toBe(grams / 1000);
        expect(reading.value).toBe(toNumber(reading.exact));
        expect(Math.abs(toNumber(add(reading.exact, multiply(ratio(-1n), fromNumber(reading.value)))))).toBeLessThan(
          1e-12,
        );
      }),
    );
  });
});
