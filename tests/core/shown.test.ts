/** What is shown is the value to the last digit shown; less than nothing is the same text with a minus sign. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";

import { factor, read } from "../../webapp/src/core/numbers/quantity";
import { add, compare, fromNumber, multiply, negate, powerOfTen, ratio } from "../../webapp/src/core/numbers/ratio";
import * as shown from "../../webapp/src/core/numbers/shown";
import { DIMENSIONS, type Kind } from "../../webapp/src/generated/units";

const single = Object.entries(DIMENSIONS).flatMap(([kind, dimension]) => {
  return Object.keys(dimension.units).map((unit) => ({ kind: kind as Kind, unit }));
});
const units = fc.constantFrom(
  ...single,
  { kind: "mass" as const, unit: "lb oz" },
  { kind: "length" as const, unit: "ft in" },
);
const values = fc.double({ noNaN: true, min: 0, max: 1.9 });
const margins = fc.option(fc.double({ noNaN: true, min: 1e-6, max: 3 }));

describe("shown text", () => {
  test("reads back to the last digit shown", () => {
    fc.assert(
      fc.property(units, values, ({ kind, unit }, si) => {
        const [large, small] = unit.split(" ") as [string, string?];
        const places = small ? 1 : (DIMENSIONS[kind].units[unit]?.places ?? 0);
        const half = multiply(multiply(factor(kind, small ?? large), powerOfTen(-places)), ratio(1n, 2n));
        const off = add(read(kind, shown.layOut(kind, si, unit).text).exact, negate(fromNumber(si)));
        return compare(off.n < 0n ? negate(off) : off, half) <= 0;
      }),
    );
  });

  test("less than nothing is the same text with a minus sign", () => {
    fc.assert(
      fc.property(units, values, margins, ({ kind, unit }, si, margin) => {
        const [more, less] = [shown.layOut(kind, si, unit, margin), shown.layOut(kind, -si, unit, margin)];
        const nothing = more.parts.every(([digits]) => Number(digits) === 0);
        expect(less.text).toBe(nothing ? more.text : `−${more.text}`);
        expect(less.parts).toEqual(more.parts);
      }),
    );
  });

  test("an uncertainty that cannot be is refused, and so is a value that is no number", () => {
    expect(() => shown.showMass(12, "kg", -1)).toThrow("cannot be -1");
    expect(() => shown.showMass(12, "kg", Number.NaN)).toThrow("cannot be NaN");
    expect(() => shown.showMass(Number.NaN, "kg")).toThrow("not a number of anything");
    expect(() => shown.showMass(12, "stoen")).toThrow("no unit stoen of mass");
  });
});
