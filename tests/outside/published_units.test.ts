/** The phone's units against their published definitions; the sources are in `fixtures/outside/units.json`. */

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

import { POWER_UNITS } from "../../webapp/src/core/balance/loadTransfer";
import { type Quantity, read, readLength, readMass } from "../../webapp/src/core/numbers/quantity";
import { multiply, ratio, toNumber } from "../../webapp/src/core/numbers/ratio";

type Entry = { id: string; expected: Record<string, number>; tolerance: number };

const FILE = new URL("../../fixtures/outside/units.json", import.meta.url);
const ENTRIES = (JSON.parse(readFileSync(FILE, "utf8")) as { entries: Entry[] }).entries;

const times = (factor: bigint, { exact }: Quantity) => toNumber(multiply(exact, ratio(factor)));

test.each([
  ["unit.lb", "kg", readMass("1 lb").value],
  ["unit.oz", "g", times(1000n, readMass("1 oz"))],
  ["unit.gal_us", "L", times(1000n, read("volume", "1 US gal"))],
  ["unit.gal_imp", "L", times(1000n, read("volume", "1 imp gal"))],
  ["unit.inch", "mm", times(1000n, readLength("1 in"))],
  ["unit.kilo", "W_kW", POWER_UNITS.kW],
  // A metric horsepower lifts 75 kg, and a horsepower 550 lb by a foot, in a second.
  ["unit.g0", "m_s2", POWER_UNITS.PS / 75],
  ["unit.g0", "lbf_N", POWER_UNITS.hp / 550 / readLength("1 ft").value],
] as const)("%s is what its definition says in %s", (id, unit, found) => {
  const entry = ENTRIES.find((candidate) => candidate.id === id);
  expect(Math.abs(found - (entry?.expected[unit] ?? Number.NaN))).toBeLessThanOrEqual(entry?.tolerance ?? 0);
});
