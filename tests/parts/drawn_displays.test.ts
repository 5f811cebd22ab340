/** The drawn displays: each is found again from what a scale's record says of it, however that was typed. */
import { describe, expect, test } from "vitest";
import { DIMENSIONS } from "../../webapp/src/generated/units";
import { displaysFor, isOf, showsFractions } from "../../webapp/src/parts/weighing/drawnDisplays";
import { readingOf } from "../../webapp/src/parts/words/reading";

const all = displaysFor("kg");

describe("drawn displays", () => {
  test("each shows a reading it could show: whole steps, in its own unit", () => {
    for (const { unit, division, sample } of all) {
      const [shown, step] = [readingOf("mass", sample, null), readingOf("mass", division, null)];
      if (shown.state !== "read" || step.state !== "read") throw new Error(sample);
      expect([sample, shown.unit]).toEqual([sample, unit]);
      const steps = shown.value / step.value;
      expect(Math.abs(steps - Math.round(steps)), sample).toBeLessThan(1e-9);
    }
  });

  test("each is only itself", () => {
    for (const one of all) expect(all.filter((other) => isOf(one, other))).toEqual([one]);
  });

  test("a step typed otherwise is the same step; another unit is another display", () => {
    const [hundredth] = all.filter(({ division }) => division === "0.01 kg");
    expect(isOf({ unit: "kg", division: "10 g" }, hundredth!)).toBe(true);
    expect(isOf({ unit: "kg", division: "0.010" }, hundredth!)).toBe(true);
    expect(isOf({ unit: "g", division: "10 g" }, hundredth!)).toBe(false);
    expect(isOf({ unit: "kg", division: null }, hundredth!)).toBe(false);
  });

  test("those of the garage's own system come first, and none is left out", () => {
    const metric = (massUnit: string) => DIMENSIONS.mass.units[displaysFor(massUnit)[0]!.unit.split(" ")[0]!]!.metric;
    expect([metric("g"), metric("lb oz")]).toEqual([true, false]);
    expect(new Set(displaysFor("lb"))).toEqual(new Set(all));
  });

  test("only a display that counts in fractions needs their keys", () => {
    expect(all.filter(showsFractions).map(({ division }) => division)).toEqual(["1/8 oz"]);
  });
});
