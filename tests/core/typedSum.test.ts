/** Two readings added as typed: what stands on the displays comes out to the last digit, or nothing does. */

import { expect, test } from "vitest";

import { sumOf } from "../../webapp/src/core/numbers/typedSum";

test.each([
  ["262.8 kg", "276.85 kg", "539.65 kg"],
  ["276.85 kg", "262.8 kg", "539.65 kg"],
  ["262 kg", "276.85 kg", "538.85 kg"],
  ["0.1 kg", "0.2 kg", "0.3 kg"],
  ["0.05 kg", "0.03 kg", "0.08 kg"],
  ["9 kg", "1 kg", "10 kg"],
  ["560.6 lb", "584.7lb", "1145.3 lb"],
])("%s and %s are %s", (one, other, sum) => {
  expect(sumOf(one, other)).toBe(sum);
});

test.each([
  ["262.8 kg", "584.7 lb"],
  ["262 1/2 lb", "584 lb"],
  ["262.8 kg", ""],
  ["", "262.8 kg"],
  ["9 lb 4 oz", "3 lb 1 oz"],
])("%s and %s are not added digit by digit", (one, other) => {
  expect(sumOf(one, other)).toBeNull();
});
