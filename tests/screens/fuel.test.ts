/** The fuel screen's form and drawing: what is asked of the core, and that everything lies where it is said to. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { MOST_LAPS } from "../../webapp/src/core/fuelRun/fuelGiven";
import { type FuelRun, fuelRun } from "../../webapp/src/core/fuelRun/fuelRun";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { drawnOf, HEIGHT, shareLine, through, WIDTH } from "../../webapp/src/screens/Fuel/drawing";
import {
  emptyRun,
  lapsWithin,
  questionOf,
  type RunForm,
  unreadRun,
  volumeOf,
} from "../../webapp/src/screens/Fuel/form";

const EXAMPLE = new URL("../../fixtures/demo/calc/fuel.json", import.meta.url);

function run(minimum: string, patch: Partial<RunForm> = {}): FuelRun {
  const given = JSON.parse(readFileSync(EXAMPLE, "utf8"));
  given.class_sheets[0].minimum = minimum;
  given.weigh_ins[0].id = "w";
  return fuelRun(readGarage(given), questionOf({ ...emptyRun(), start: "30", perLap: "1.8", ...patch }, "L"));
}

describe("the form", () => {
  test("asks for what can be read, bare numbers in the garage's unit", () => {
    const question = questionOf({ ...emptyRun(), laps: 7, start: "5", perLap: "1,8", startWithin: "0.2 L" }, "gal_us");
    expect(question.laps).toBe(7);
    expect(question.start?.unit).toBe("gal_us");
    expect(question.start_within?.unit).toBe("L");
    expect(question.per_lap).toBeNull();
  });

  test("leaves the lap to the car while nothing else is typed", () => {
    expect(questionOf(emptyRun(), "L").per_lap).toBeNull();
  });

  test("says what cannot be read in place of an answer", () => {
    const said = (patch: Partial<RunForm>) => unreadRun({ ...emptyRun(), ...patch }, "L");
    expect([said({}), said({ start: "30", perLap: "1.8" })]).toEqual([null, null]);
    for (const patch of [{ start: "abc" }, { start: "-5" }, { perLap: "0" }, { perLap: "-5" }, { startWithin: "abc" }])
      expect(said(patch)).toMatch(/Type /);
  });

  test("takes no lap that takes nothing, yet a start with nothing", () => {
    expect(volumeOf("0", "L", true)).toBeNull();
    expect(volumeOf("0", "L")?.value).toBe(0);
  });

  test("keeps laps to a whole number that can be told", () => {
    expect([-1, 2.6, Number.NaN, MOST_LAPS + 1].map(lapsWithin)).toEqual([0, 3, 0, MOST_LAPS]);
  });
});

describe("the drawing", () => {
  const drawn = drawnOf(run("960 kg"))!;

  test("has a dot for every lap from one edge to the other, falling as fuel is burnt", () => {
    expect(drawn.line).toHaveLength(11);
    expect(drawn.line.every(({ y }, i) => i === 0 || y > drawn.line[i - 1]!.y)).toBe(true);
    expect(drawn.line[0]!.x).toBeGreaterThan(0);
    expect(drawn.line.at(-1)!.x).toBeLessThan(WIDTH);
  });

  test("has the line inside its band, and the band inside the drawing", () => {
    drawn.line.forEach(({ x, y }, i) => {
      const [over, under] = [drawn.band[i]!, drawn.band[drawn.band.length - 1 - i]!];
      expect([over.x, under.x]).toEqual([x, x]);
      expect(over.y).toBeLessThan(y);
      expect(under.y).toBeGreaterThan(y);
    });
    expect(drawn.band.every(({ y }) => y > 0 && y < HEIGHT)).toBe(true);
  });

  test("has the minimum under what is to be kept in hand, and the ring at the flag", () => {
    expect(drawn.minimum).toBeGreaterThan(drawn.inHand!);
    expect(drawn.worst).toEqual(drawn.line.at(-1));
  });

  test("has the line cross the minimum when the car gets too light", () => {
    const low = drawnOf(run("980 kg"))!;
    expect(low.line[0]!.y).toBeLessThan(low.minimum!);
    expect(low.line.at(-1)!.y).toBeGreaterThan(low.minimum!);
  });

  test("leaves out a minimum far below, and says so", () => {
    const far = drawnOf(run("700 kg"))!;
    expect([far.minimum, far.inHand, far.isFar]).toEqual([null, null, true]);
  });

  test("is not there without a run to draw", () => {
    expect(drawnOf(run("960 kg", { laps: 0 }))).toBeNull();
  });

  test("goes through its dots in order", () => {
    expect(
      through([
        { x: 1, y: 2 },
        { x: 3.25, y: 4 },
      ]),
    ).toBe("M1.0 2.0 L3.3 4.0");
  });
});

test("the share line reaches to whole per cent on both sides of all shares", () => {
  const { low, high, at } = shareLine([0.548, 0.562]);
  expect([low, high]).toEqual([54, 57]);
  expect(at(0.555)).toBeCloseTo(0.5);
  expect(shareLine([0.5, 0.5])).toMatchObject({ low: 49, high: 51 });
});
