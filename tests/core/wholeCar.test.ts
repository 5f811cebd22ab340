/** The whole car on the phone: chances, guards, shares and standings keep their laws, whatever is typed. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";

import { readGarage } from "../../webapp/src/core/garage/garage";
import { cumulative, density, inverse } from "../../webapp/src/core/numbers/normal";
import { uncertain } from "../../webapp/src/core/numbers/uncertain";
import { chanceUnder, inHand, type OfficialScale } from "../../webapp/src/core/standing/official";
import { standing } from "../../webapp/src/core/standing/standing";
import { trailOf } from "../../webapp/src/core/wholeCar/weighed";
import { weighIn } from "../../webapp/src/core/wholeCar/weighIn";

const MINIMUM = 900;
const part = fc.double({ min: 0.05, max: 3, noNaN: true });
const weights = fc.record({
  value: fc.double({ min: 850, max: 950, noNaN: true }),
  sources: fc.record({ "cal:a": part, w: part }),
});
const lump = fc.record({
  chance: fc.double({ min: 0.05, max: 1, noNaN: true }),
  off: fc.double({ min: -5, max: 5, noNaN: true }),
  more: fc.double({ min: 0, max: 9, noNaN: true }),
});
const spreads = fc.array(lump, { minLength: 1, maxLength: 3 }).map((lumps) => {
  const whole = lumps.reduce((sum, { chance }) => sum + chance, 0);
  return lumps.map((each) => ({ ...each, chance: each.chance / whole }));
});
const scales: fc.Arbitrary<OfficialScale> = fc.record({
  scale: fc.constant(null),
  gain: fc.record({
    value: fc.double({ min: -0.005, max: 0.005, noNaN: true }),
    sources: fc.record({ "cal:a": fc.double({ min: -0.002, max: 0.002, noNaN: true }) }),
  }),
  repeatability: fc.double({ min: 0.05, max: 1, noNaN: true }),
  division: fc.constantFrom(null, 0.1, 0.5, 1, 5),
  rounding: fc.constantFrom("nearest", "unknown"),
});
const risks = fc.double({ min: 0.001, max: 0.5, noNaN: true });

describe("the normal distribution", () => {
  test("a chance found for a number leads back to it", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-300, max: 0.5, noNaN: true }), (p) => {
        expect(Math.abs(cumulative(inverse(p)) / p - 1)).toBeLessThan(1e-11);
      }),
    );
  });

  test("below and above make one whole", () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        expect(cumulative(z) + cumulative(-z)).toBeCloseTo(1, 14);
      }),
    );
  });

  test("its density is its slope", () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (z) => {
        expect((cumulative(z + 1e-5) - cumulative(z - 1e-5)) / 2e-5).toBeCloseTo(density(z), 8);
      }),
    );
  });

  test.each([0, 1, -0.1, Number.NaN])("%s is no chance to find a number for", (p) => {
    expect(() => inverse(p)).toThrow("between 0 and 1");
  });
});

describe("the official scale", () => {
  test("with the guard in hand, and with no gram less, the chance is within the risk", () => {
    fc.assert(
      fc.property(weights, spreads, scales, risks, (weight, spread, scale, risk) => {
        const chanceWith = (more: number) => {
          const guarded = MINIMUM + inHand(weight, MINIMUM, scale, risk, spread) + more;
          return chanceUnder(uncertain(guarded, weight.sources), MINIMUM, scale, spread);
        };
        expect(chanceWith(0) / risk).toBeLessThan(1 + 1e-9);
        expect(chanceWith(-0.001) / risk).toBeGreaterThan(1 - 1e-9);
      }),
    );
  });

  test("a smaller risk asks for more in hand", () => {
    fc.assert(
      fc.property(weights, spreads, scales, risks, risks, (weight, spread, scale, one, other) => {
        const [small, large] = [Math.min(one, other), Math.max(one, other)];
        const guard = (risk: number) => inHand(weight, MINIMUM, scale, risk, spread);
        expect(guard(small)).toBeGreaterThanOrEqual(guard(large));
      }),
    );
  });
});

const typed = fc.oneof(
  fc.integer({ min: 1000, max: 4000 }).map((tenths) => `${tenths / 10} kg`),
  fc.constantFrom("", "12 psi", "-3", "1,25", "241", "1e9 kg", "530 lb", "15 lb 6 oz"),
  fc.string({ maxLength: 12 }),
);
const halfTyped = fc.record({ lf: typed, rf: typed, lr: typed, rr: typed }, { requiredKeys: [] });

describe("a weigh-in being typed", () => {
  test("is never refused, and has a total only when all four corners can be read", () => {
    fc.assert(
      fc.property(halfTyped, (corners) => {
        const garage = readGarage({ weigh_ins: [{ id: "w", layout: "corners", trim: "road", ...corners }] });
        const found = weighIn(garage, "w");
        const read = ["lf", "rf", "lr", "rr"].filter((name) => name in (found?.loads.loads ?? {}));
        expect("total" in (found?.loads.loads ?? {})).toBe(read.length === 4);
        expect(found?.weight === null).toBe(read.length < 4);
      }),
    );
  });

  test("opposite shares make one whole", () => {
    const load = fc.integer({ min: 400, max: 4000 }).map((tenths) => `${tenths / 10} kg`);
    fc.assert(
      fc.property(fc.record({ lf: load, rf: load, lr: load, rr: load }), (corners) => {
        const garage = readGarage({ weigh_ins: [{ id: "w", layout: "corners", trim: "road", ...corners }] });
        const { front, rear, left, right } = weighIn(garage, "w")?.loads.shares ?? {};
        expect((front?.value ?? 0) + (rear?.value ?? 0)).toBeCloseTo(1, 12);
        expect((left?.value ?? 0) + (right?.value ?? 0)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe("a standing", () => {
  const weighed = { id: "k", layout: "total", trim: "road", total: "930 kg", jobs: ["j"] };
  const jobs = [
    { id: "j", state: "fitted" },
    { id: "k", state: "fitted", fitted_on: "1999-01-01" },
  ];
  const lists = {
    parts: [{ id: "p", claim: "12 kg" }],
    job_parts: [{ id: "q", job: "k", part: "p", way: "off" }],
  };

  test("rests on the list stored with the weigh-in and on no clock", () => {
    const found = standing(readGarage({ ...lists, jobs, weigh_ins: [weighed] }));
    expect(found.weight?.value).toBe(918);
    expect(found.since?.put_in).toEqual(["k"]);
    expect(found.fused?.left_out).toEqual({});
  });

  test("claims no weight while nobody confirmed which jobs were in the car", () => {
    const found = standing(readGarage({ ...lists, jobs, weigh_ins: [{ ...weighed, jobs: null }] }));
    expect(found.weight).toBeNull();
    expect(found.reasons.weight?.code).toBe("jobs_not_confirmed");
  });
});

test("from the readings to the weight: what they come to, and what the checks put in", () => {
  expect(trailOf([500, 400.5], uncertain(901))).toEqual({ together: 900.5, taken: 0.5 });
});
