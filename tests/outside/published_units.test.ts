/** The phone's units against their published definitions; the sources are in `fixtures/outside/units.json`. */

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

import { read, readLength, readMass } from "../../webapp/src/core/numbers/quantity";
import { multiply, ratio, toNumber } from "../../webapp/src/core/numbers/ratio";

type Entry = { id: string; expected: Record<string, number>; tolerance: number };

const FILE = new URL("../../fixtures/outside/units.json", import.meta.url);
const ENTRIES = (JSON.parse(readFileSync(FILE, "utf8")) as { entries: Entry[] }).entries;

test.each([
  ["unit.lb", "kg", readMass("1 lb"), 1n],
  ["unit.oz", "g", readMass("1 oz"), 1000n],
  ["unit.gal_us", "L", read("volume", "1 US gal"), 1000n],
  ["unit.gal_imp", "L", read("volume", "1 imp gal"), 1000n],
  ["unit.inch", "mm", readLength("1 in"), 1000n],
])("%s is what its definition says in %s", (id, unit, reading, times) => {
  const entry = ENTRIES.find((candidate) => candidate.id === id);
  const found = toNumber(multiply(reading.exact, ratio(times)));
  expect(Math.abs(found - (entry?.expected[unit] ?? Number.NaN))).toBeLessThanOrEqual(entry?.tolerance ?? 0);
});
