/** Every vector, run in TypeScript. `tests/test_vectors.py` runs the same files in Python. */

import { describe, expect, test } from "vitest";

import { type Case, claims, differences, vectors } from "./vectors";

const CLAIMS = await claims();
const VECTORS = vectors();

test("every vector file is claimed", () => {
  expect(VECTORS.filter((vector) => !CLAIMS[vector.function]).map((vector) => vector.file)).toEqual([]);
});

test("every claim has a file", () => {
  const named = new Set(VECTORS.map((vector) => vector.function));
  expect(Object.keys(CLAIMS).filter((name) => !named.has(name))).toEqual([]);
});

describe.each(VECTORS)("$file", (vector) => {
  test.each(vector.cases)("$name", (item) => {
    const run = () => CLAIMS[vector.function]?.(item.in);
    if (item.error !== undefined) expectRefusal(run, item);
    else expect(differences(run(), item.out, item.close)).toEqual([]);
  });
});

function expectRefusal(run: () => unknown, item: Case): void {
  const refusal = refusalOf(run);
  const wanted = item.data ?? {};
  const given = Object.fromEntries(Object.keys(wanted).map((key) => [key, refusal.data?.[key]]));
  expect(refusal.code ?? refusal).toBe(item.error);
  expect(given).toEqual(wanted);
}

function refusalOf(run: () => unknown): { code?: string; data?: Record<string, unknown> } {
  try {
    return { code: `no refusal but ${JSON.stringify(run())}` };
  } catch (refusal) {
    return refusal as { code?: string; data?: Record<string, unknown> };
  }
}
