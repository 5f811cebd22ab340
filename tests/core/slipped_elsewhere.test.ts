/** Slips in the checks of scales and in stored weigh-ins: asked about when planted, and honest ones left alone. */
import { describe, expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { readMass } from "../../webapp/src/core/numbers/quantity";
import { knownOfCheck } from "../../webapp/src/core/weighing/known";
import { slipInLoads } from "../../webapp/src/core/weighing/slips";
import { slippedWeighIn } from "../../webapp/src/core/wholeCar/slipped";
import { randomFrom } from "../random";

const ANY = { unit: null, division: null, capacity: null };
const ROUNDS = 600;
const LB = 0.45359237; // kg: the international pound of 1959 (NIST SP 811, B.8)
const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

describe("a scale's check", () => {
  const meant = (known: string, shown: string) => {
    const found = slipInLoads([readMass(shown)], ANY, knownOfCheck(readMass(known).value));
    return found?.looks[0]?.reads ?? null;
  };

  // Factors near 2.2, 16, 28.35, 10 and 100, each way.
  test.each([
    ["10 kg", "22.1 kg", "22.1 lb"],
    ["22 lb", "9.98 lb", "9.98 kg"],
    ["2 lb", "32.1 lb", "32.1 oz"],
    ["32 oz", "2.01 oz", "2.01 lb"],
    ["1 oz", "28.4 oz", "28.4 g"],
    ["500 g", "17.6 g", "17.6 oz"],
    ["10 kg", "100.5 kg", "10.05 kg"],
    ["10 kg", "1.005 kg", "10.05 kg"],
    ["10 kg", "1002 kg", "10.02 kg"],
    ["10 kg", "0.1 kg", "10 kg"],
  ])("of %s that showed %s was most likely %s", (known, shown, other) => {
    expect(meant(known, shown)).toBe(other);
  });

  test("is left alone when the scale is honestly off, by up to an eighth", () => {
    for (const shown of ["8.8 kg", "9.5 kg", "10 kg", "10.4 kg", "11.2 kg"]) expect(meant("10 kg", shown)).toBeNull();
  });
});

describe("stored weigh-ins", () => {
  /** Three to six of a car that gets lighter: on a scale by some tenths of a per cent off, with or without a driver. */
  function build(random: () => number): { kg: number }[] {
    let car = 650 + 900 * random();
    return Array.from({ length: 3 + Math.floor(4 * random()) }, () => {
      car *= 1 - 0.08 * random();
      const driver = random() < 0.5 ? 60 + 40 * random() : 0;
      return { kg: (car + driver + 35 * random()) * (1 + 0.003 * normal(random)) };
    });
  }
  const found = (shown: readonly string[], minimum: number | null, right: readonly string[] = []) => {
    const weigh_ins = shown.map((total, n) => ({ id: `w${n}`, layout: "total", trim: "event", total }));
    return slippedWeighIn(readGarage({ weigh_ins }), minimum, (id) => right.includes(id));
  };

  test("at most one honest build in thirty has one to look at again", () => {
    const random = randomFrom(20261129);
    let asked = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const all = build(random);
      const minimum = random() < 0.5 ? 0.97 * all.at(-1)!.kg : null;
      const unit = random() < 0.5 ? "kg" : "lb";
      const shown = all.map(({ kg }) => `${(unit === "kg" ? kg : kg / LB).toFixed(1)} ${unit}`);
      if (found(shown, minimum)) asked++;
    }
    console.log(`Honest builds with a weigh-in to look at again: ${asked} of ${ROUNDS}`);
    expect(asked / ROUNDS).toBeLessThan(1 / 30);
  });

  test("a slip planted in one is found there, with the true reading", () => {
    const random = randomFrom(20261130);
    let right = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const all = build(random);
      const at = Math.floor(all.length * random());
      const slips = [
        (kg: number) => `${(kg / LB).toFixed(1)} kg`,
        (kg: number) => `${kg.toFixed(1)} lb`,
        (kg: number) => `${(10 * kg).toFixed(0)} kg`,
        (kg: number) => `${(kg / 10).toFixed(2)} kg`,
      ];
      const slip = slips[Math.floor(4 * random())]!;
      const slipped = found(
        all.map(({ kg }, n) => (n === at ? slip(kg) : `${kg.toFixed(1)} kg`)),
        null,
      );
      const total = slipped?.after.total?.value ?? 0;
      if (slipped?.weighIn === `w${at}` && Math.abs(total / all[at]!.kg - 1) < 0.01) right++;
    }
    console.log(`Planted slips found, with the true reading: ${right} of ${ROUNDS}`);
    expect(right / ROUNDS).toBeGreaterThan(0.95);
  });

  test("one that was found right is not listed again, and of two the class's minimum says which", () => {
    expect(found(["930 kg", "2050 kg"], 900)).toMatchObject({ weighIn: "w1", against: { why: "weigh_in" } });
    expect(found(["930 lb", "2050 lb"], 900)).toMatchObject({ weighIn: "w0" });
    expect(found(["930 kg", "2050 kg"], 900, ["w1"])).toBeNull();
    expect(found(["2050 kg"], 900)).toMatchObject({ weighIn: "w0", against: { why: "car" } });
    expect(found(["2050 kg"], null)).toBeNull();
  });

  test("of corners those that slipped are named, and only they", () => {
    const corners = { lf: "250 kg", rf: "2480 kg", lr: "212 kg", rr: "207 kg" };
    const weigh_ins = [
      { id: "a", layout: "total", trim: "event", total: "918 kg" },
      { id: "b", layout: "corners", trim: "event", ...corners },
    ];
    const slipped = slippedWeighIn(readGarage({ weigh_ins }), null, () => false);
    expect(slipped?.weighIn).toBe("b");
    expect(Object.entries(slipped!.after).map(([name, { reads }]) => [name, reads])).toEqual([["rf", "248 kg"]]);
  });
});
