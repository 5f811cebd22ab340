/** What a garage's guesses have run off by, on the phone: the cases people make. */
import { expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { learned } from "../../webapp/src/core/weighing/lessons";
import { masses } from "../../webapp/src/core/weighing/weighing";

type Row = { id: string; [field: string]: unknown };
type Given = { parts: Row[]; weighings: Row[]; [list: string]: Row[] };

/** Parts p0, p1, … guessed so, each weighed at one kilogram; the part q is still guessed at ten. */
function guessed(...kilograms: number[]): Given {
  return {
    scales: [{ id: "k", kind: "kitchen", division: "1 g" }],
    parts: [...kilograms.map((each, n) => ({ id: `p${n}`, claim: `${each} kg` })), { id: "q", claim: "10 kg" }],
    weighings: kilograms.map((_, n) => ({ id: `w${n}`, of: `p${n}`, method: "direct", shown: "1 kg", scale: "k" })),
  };
}

const known = (given: Given) => masses(readGarage(given));
const massOf = (given: Given) => known(given).of.get("q")?.mass;
const partsIn = (given: Given) => known(given).lessons.guessed?.parts ?? 0;
const HIGH = [1.3, 1.1, 1.2];

test("what runs high is taken out of what is still guessed, and what runs low is added", () => {
  expect(massOf(guessed(...HIGH))?.value).toBeLessThan(9);
  expect(massOf(guessed(0.7, 0.8, 0.9))?.value).toBeGreaterThan(11);
});

test("nothing is learned of two, and nothing where claims count as typed", () => {
  const typed = { ...guessed(...HIGH), garages: [{ id: "g", claims: "typed" }] };
  for (const given of [guessed(1.3, 1.1), typed]) {
    expect(known(given).lessons).toEqual({});
    expect(massOf(given)?.value).toBe(10);
  }
});

test("a lesson worked by hand: ln 0.1, 0.2, 0.3", () => {
  const variance = (0.16 / 3 + 0.02 + 0.03) / 7;
  const { bias, bias_u, spread } = learned("guessed", [0.1, 0.2, 0.3])!;
  expect(bias).toBeCloseTo(0.15, 8);
  expect(spread).toBeCloseTo(Math.sqrt(variance), 8);
  expect(bias_u).toBeCloseTo(Math.sqrt(variance) / 2, 8);
});

test("a guess of nothing teaches nothing and is no mass", () => {
  const given = guessed(...HIGH, 0);
  given.parts.push({ id: "r", claim: "0 kg" });
  expect(partsIn(given)).toBe(3);
  expect(known(given).of.get("r")?.mass).toBeNull();
});

test("a part weighed again teaches once, and what was deleted not at all", () => {
  const given = guessed(...HIGH);
  const again = { ...given.weighings[0]!, id: "w9", shown: "1.002 kg" };
  expect(partsIn({ ...given, weighings: [...given.weighings, again] })).toBe(3);
  const [first, ...parts] = given.parts;
  expect(partsIn({ ...given, parts: [{ ...first!, deleted: true }, ...parts] })).toBe(0);
});

test("of several pieces one is claimed and one was weighed", () => {
  const given = guessed(...HIGH);
  Object.assign(given.parts[0]!, { count: 4 });
  Object.assign(given.weighings[0]!, { method: "batch", pieces: 4, shown: "4 kg" });
  expect(known(given).lessons.guessed?.bias).toBeCloseTo(known(guessed(...HIGH)).lessons.guessed!.bias, 8);
});

test("a guess off by a factor of ten changes nothing for the others", () => {
  for (const wild of [10, 0.1]) expect(massOf(guessed(...HIGH, wild))).toEqual(massOf(guessed(...HIGH)));
});

test("a claim with its own half-width neither teaches nor changes", () => {
  const given = guessed(...HIGH);
  Object.assign(given.parts[3]!, { claim_within: "0.3 kg" });
  expect(massOf(given)?.value).toBe(10);
  Object.assign(given.parts[0]!, { claim_within: "0.3 kg" });
  expect(partsIn(given)).toBe(0);
});
