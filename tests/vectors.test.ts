/** Every vector, run in TypeScript. `tests/test_vectors.py` runs the same files in Python. */

import { describe, expect, test } from "vitest";

import { claims, differences, outcome, vectors } from "./vectors";

const CLAIMS = await claims();
const VECTORS = vectors();

test("every vector file is claimed, and every claim has a file", () => {
  expect(new Set(VECTORS.map((vector) => vector.function))).toEqual(new Set(Object.keys(CLAIMS)));
});

describe.each(VECTORS)("$file", (vector) => {
  test.each(vector.cases)("$name", (item) => {
    const { out, leaves, error, data, close } = item;
    const kept = { out, leaves, error, data };
    expect(differences(outcome(CLAIMS[vector.function]!, item), kept, close)).toEqual([]);
  });
});
