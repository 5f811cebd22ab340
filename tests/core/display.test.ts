/** What a display cannot have shown. Units and steps of scales are common practice, no source; worked out by hand. */
import { describe, expect, test } from "vitest";
import { readMass } from "../../webapp/src/core/numbers/quantity";
import { type Display, misread, pointMoved, sameDigits } from "../../webapp/src/core/weighing/display";

const display = (unit: string | null, division: string | null, capacity: string | null = null): Display => ({
  unit,
  division: division ? readMass(division, unit) : null,
  capacity: capacity ? readMass(capacity, unit) : null,
});
const asked = (shown: string, of: Display) => {
  const found = misread(readMass(shown), of);
  return found && [found.why, ...found.likely.map(({ reads }) => reads)];
};

const HOOK = display("kg", "0.01 kg", "50 kg");
const FLOOR = display("lb", "0.2 lb", "330 lb");
const KITCHEN = display("oz", "1/8 oz");
const POST = display("lb oz", "1 oz", "25 lb");

describe("asked about", () => {
  test("another unit than the display's: most likely it showed these digits in its own", () => {
    expect(asked("13.2 lb", HOOK)).toEqual(["unit", "13.2 kg"]);
    expect(asked("6 3/8 lb", KITCHEN)).toEqual(["unit", "6 3/8 oz"]);
  });

  test("another unit, and digits it cannot show: somebody has converted what it showed", () => {
    expect(asked("132 lb", HOOK)).toEqual(["unit"]); // 59.87 kg is beyond it too
    expect(asked("2.345 lb", HOOK)).toEqual(["unit", "1.06 kg"]); // 1.0637 kg
    expect(asked("1.5 kg", POST)).toEqual(["unit", "3 lb 5 oz"]); // 52.9 oz
    expect(asked("420 g", display("kg", null))).toEqual(["unit", "420 kg"]);
  });

  test("no multiple of the step: the nearest, or both where it lies between", () => {
    expect(asked("13.3 lb", FLOOR)).toEqual(["step", "13.2 lb", "13.4 lb"]);
    expect(asked("13.234 kg", HOOK)).toEqual(["step", "13.23 kg"]);
    expect(asked("6.4 oz", KITCHEN)).toEqual(["step", "6 3/8 oz"]);
    expect(asked("0.1 oz", KITCHEN)).toEqual(["step", "1/8 oz"]);
    expect(asked("3 lb 4.5 oz", POST)).toEqual(["step", "3 lb 4 oz", "3 lb 5 oz"]);
  });

  test("beyond the capacity: the point was forgotten, where that makes a reading it can show", () => {
    expect(asked("599 kg", HOOK)).toEqual(["capacity", "5.99 kg"]);
    expect(asked("132 kg", HOOK)).toEqual(["capacity", "13.2 kg"]);
    expect(asked("333.4 lb", FLOOR)).toEqual(["capacity"]); // 33.34 and 3.334 are no steps of 0.2
  });
});

describe("not asked about", () => {
  test("a reading the display can have shown", () => {
    expect(asked("13.2 kg", HOOK)).toBeNull();
    expect(asked("50 kg", HOOK)).toBeNull();
    expect(asked("181.6 lb", FLOOR)).toBeNull();
    expect(asked("12 3/8 oz", KITCHEN)).toBeNull();
    expect(asked("6.375 oz", KITCHEN)).toBeNull();
    expect(asked("12 oz", POST)).toBeNull();
    expect(asked("3 lb", POST)).toBeNull();
  });

  test("a step written in another unit is still a step", () => {
    expect(asked("4.25 kg", display("kg", "50 g"))).toBeNull();
    expect(asked("4.26 kg", display("kg", "50 g"))).toEqual(["step", "4.25 kg"]);
  });

  test("what nobody said of the scale", () => {
    expect(asked("13.234 lb", display(null, null))).toBeNull();
    expect(asked("13.234 lb", display("lb", null))).toBeNull();
  });
});

test("digits keep their fraction in another unit; a moved point needs digits with a point", () => {
  expect(sameDigits(readMass("6 3/8 oz"), "kg")?.reads).toBe("6 3/8 kg");
  expect(sameDigits(readMass("3 lb 4 oz"), "kg")).toBeNull();
  expect(pointMoved(readMass("13.2 kg"), 1)?.reads).toBe("132 kg");
  expect(pointMoved(readMass("13.2 kg"), -2)?.reads).toBe("0.132 kg");
  expect(pointMoved(readMass("6 3/8 oz"), 1)).toBeNull();
  expect(pointMoved(readMass("3000 kg"), 1)).toBeNull(); // no car weighs that
});
