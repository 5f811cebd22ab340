/** Readings added as one adds the displays on paper; the sums by hand. */

import { expect, test } from "vitest";

import { readGarage } from "../../webapp/src/core/garage/garage";
import { asRead } from "../../webapp/src/core/ledger/asRead";
import { ledger } from "../../webapp/src/core/ledger/ledger";
import { readMass } from "../../webapp/src/core/numbers/quantity";
import { sumAsRead, type Term } from "../../webapp/src/core/numbers/sumAsRead";

const sum = (...texts: string[]) =>
  sumAsRead(texts.map((text): Term => [readMass(text.replace("-", "")), text.startsWith("-") ? -1 : 1]));

test.each([
  [["262.8 kg", "276.85 kg"], "539.65 kg"],
  [["262.0 kg", "276.0 kg"], "538.0 kg"],
  [["0.1 kg", "0.2 kg"], "0.3 kg"],
  [["1.5 kg", "420 g"], "1.92 kg"],
  [["9 lb 4 oz", "3 lb 13 oz"], "13 lb 1 oz"],
  [["6 3/8 oz", "1/4 oz"], "6 5/8 oz"],
  [["3 lb 4 1/2 oz", "12 oz"], "4 lb 1/2 oz"],
  [["560.6 lb", "584.7 lb"], "1145.3 lb"],
  [["1 lb", "-2 lb 4 oz"], "\u22121 lb 4 oz"],
] as const)("%j come to %s", (texts, found) => {
  expect(sum(...texts)).toBe(found);
});

test("kilograms and pounds have no sum on paper, nor has nothing", () => {
  expect(sum("1 kg", "1 lb")).toBeNull();
  expect(sum()).toBeNull();
});

const job = (weighings: object[]) => {
  const garage = readGarage({
    parts: [{ id: "p" }, { id: "q" }],
    jobs: [{ id: "j", state: "fitted" }],
    job_parts: [
      { id: "a", job: "j", part: "p", way: "off" },
      { id: "b", job: "j", part: "q", way: "on", count: 4 },
    ],
    weighings,
  });
  return asRead(garage, ledger(garage).jobs.get("j")!.lines);
};
const SEAT = { id: "w", of: "p", method: "difference", shown: "97.4 kg", shown_empty: "81.2 kg" };
const CLIPS = { id: "v", of: "q", method: "batch", shown: "0.420 kg", pieces: 4 };

test("a job's net is what went on less what came off, a batch as it was weighed", () => {
  expect(job([SEAT, CLIPS])).toBe("\u221215.780 kg"); // 0.420 - (97.4 - 81.2)
});

test("a part weighed twice, or by nobody, has no plain sum", () => {
  expect(job([SEAT])).toBeNull();
  expect(job([SEAT, CLIPS, { ...SEAT, id: "x" }])).toBeNull();
});
