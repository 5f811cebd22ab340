/** What an official weigh-in should show by all that was known before it: summed by hand, and when nothing is said. */
import { describe, expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { u } from "../../webapp/src/core/numbers/uncertain";
import { foretell } from "../../webapp/src/core/standing/foretell";
import { masses } from "../../webapp/src/core/weighing/weighing";

const READY = ["zeroed", "level", "rolled", "pressures", "clear"];
const EMPTY = { fuel: "0 L", fuel_within: "0 L", driver_in: false, trim: "event", jobs: [], ready: READY };
const OWN = { ...EMPTY, id: "own", at: "2026-05-02", layout: "total", total: "930 kg", scale: "own" };
const COMING = { ...EMPTY, id: "official", at: "2026-06-06", layout: "total", scale: "theirs", official: true };
const LISTS = {
  cars: [{ id: "c" }],
  scales: [
    { id: "own", kind: "corner_pads", division: "1 kg", repeatability: "0.5 kg" },
    { id: "theirs", kind: "corner_pads", division: "0.5 kg", repeatability: "0.4 kg" },
    { id: "bench", kind: "bench", division: "0.1 kg" },
  ],
  drivers: [{ id: "anna", claim: "75 kg", claim_basis: "quoted" }],
  parts: [{ id: "seat" }, { id: "unweighed" }],
  weighings: [{ id: "w", of: "seat", method: "direct", shown: "13.4 kg", scale: "bench" }],
  jobs: [
    { id: "out", state: "fitted" },
    { id: "later", state: "idea" },
  ],
  job_parts: [
    { id: "p", job: "out", part: "seat", way: "off" },
    { id: "q", job: "later", part: "unweighed", way: "off" },
  ],
};

function told(coming: object, before: object[] = [OWN], more: object = {}) {
  const garage = readGarage({ ...LISTS, ...more, weigh_ins: [...before, { ...COMING, total: "123 kg", ...coming }] });
  return foretell(garage, masses(garage), "official");
}

describe("what is foretold", () => {
  test("counts the jobs, the driver and the ballast that the weigh-in names, not what is in the car now", () => {
    expect(told({})!.value).toBeCloseTo(930, 9);
    expect(told({ jobs: ["out"], driver_in: true, driver: "anna", ballast: "5 kg" })!.value).toBeCloseTo(996.6, 9);
  });

  test("does not know what the weigh-in shows", () => {
    expect(told({ total: "123 kg" })).toEqual(told({ total: "999 kg" }));
  });

  test("has the doubt of the weight, of that scale's gain, and of how it repeats", () => {
    // By hand, kg². Assumed gain of each: 0.2 % of 930 = 1.86. Own look: 1/√12 and 0.5, and in 15 of 100 garages three
    // times that. Theirs: repeats to 0.4.
    const own = (1 / 12 + 0.5 ** 2) * (0.85 + 0.15 * 9);
    const squares = 1.86 ** 2 + own + 1.86 ** 2 + 0.4 ** 2;
    expect(u(told({})!)).toBeCloseTo(Math.sqrt(squares), 6);
  });

  test("leaves the gain out where the car stood on that scale before: it cancels", () => {
    const before = { ...OWN, scale: "theirs", official: true };
    const squares = (0.5 ** 2 / 12 + 0.4 ** 2) * (0.85 + 0.15 * 9) + 0.4 ** 2;
    expect(u(told({}, [before])!)).toBeCloseTo(Math.sqrt(squares), 6);
  });
});

describe("nothing is foretold", () => {
  test.each([
    ["of our own scales", { official: false }, [OWN]],
    ["where nothing was weighed before", {}, []],
    ["when a later weigh-in is known already", {}, [OWN, { ...OWN, id: "later", at: "2026-07-01" }]],
    ["when it is not said what was in the tank", { fuel: null }, [OWN]],
    ["when nobody knows what was in the car", { jobs: null }, [OWN]],
    ["when a part without a weight has moved since", { jobs: ["later"] }, [OWN]],
  ])("%s", (_, coming, before) => {
    expect(told(coming, before)).toBeNull();
  });
});
