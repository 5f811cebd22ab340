/** Invented garages of any shape for the property tests, in the dialect of `core/garage`. */

import fc from "fast-check";

export type Lists = Record<string, Record<string, unknown>[]>;

const grams = fc.integer({ min: 1, max: 20_000 }).map((shown) => `${shown} g`);
const name = (kind: string, most: number) => fc.integer({ min: 0, max: most }).map((n) => `${kind}${n}`);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });

const SCALES: fc.Arbitrary<Record<string, unknown>> = fc.record({
  kind: fc.constantFrom("kitchen", "bench", "hanging", "bathroom"),
  division: maybe(fc.constantFrom("1 g", "20 g", "0.1 kg")),
});
const CHECKS = fc.record({
  scale: name("s", 2),
  known_name: fc.constantFrom("plate", "drum"),
  known: fc.constant("20 kg"),
  known_within: maybe(fc.constantFrom("10 g", "50 g")),
  shown: fc.integer({ min: 19_800, max: 20_200 }).map((shown) => `${shown} g`),
});
const PARTS = fc.record({
  zone: maybe(fc.constantFrom("nose", "boot")),
  count: maybe(fc.integer({ min: 1, max: 4 })),
  claim: maybe(grams),
  claim_basis: maybe(fc.constantFrom("guessed", "quoted", "worked_out")),
});
const WEIGHINGS = fc.record({
  of: name("p", 5),
  scale: maybe(name("s", 2)),
  method: fc.constantFrom("direct", "direct", "difference", "batch", "ends"),
  shown: grams,
  shown_empty: maybe(grams),
  shown_far: maybe(grams),
  pieces: maybe(fc.integer({ min: 1, max: 9 })),
});
const JOBS = fc.record({
  state: fc.constantFrom("fitted", "fitted", "chosen", "idea", "undone"),
  stage: maybe(fc.constantFrom("t0", "t1")),
  trim: maybe(fc.constantFrom("both", "event")),
  hours: maybe(fc.constantFrom("0.25", "1.5")),
  money: maybe(fc.constantFrom("0.10", "19.99")),
  fitted_on: maybe(fc.constantFrom("2026-03-01", "2026-04-09")),
});
const JOB_PARTS = fc.record({
  job: name("j", 3),
  part: name("p", 5),
  way: fc.constantFrom("off", "on"),
  count: maybe(fc.integer({ min: 1, max: 2 })),
});

/** So many records with the ids kind0, kind1 … */
function listed(kind: string, of: fc.Arbitrary<Record<string, unknown>>, least: number, most: number) {
  const list = fc.array(of, { minLength: least, maxLength: most });
  return list.map((records) =>
    records.map((record, at): Record<string, unknown> => ({ id: `${kind}${at}`, ...record })),
  );
}

/** Three scales checked or not, six parts weighed by any method, claimed or neither, moved by four jobs of every state. */
export const GARAGES: fc.Arbitrary<Lists> = fc.record({
  scales: listed("s", SCALES, 3, 3),
  scale_checks: listed("c", CHECKS, 0, 4),
  parts: listed("p", PARTS, 6, 6),
  weighings: listed("w", WEIGHINGS, 0, 14),
  stages: fc.constant([{ id: "t0", rank: 1 }, { id: "t1" }]),
  jobs: listed("j", JOBS, 4, 4),
  job_parts: listed("l", JOB_PARTS, 0, 10),
});

/** A garage, and the same records with every list in another order. */
export const SHUFFLED = GARAGES.chain((lists) => {
  const other = Object.entries(lists).map(([kind, list]) => {
    return [kind, fc.shuffledSubarray(list, { minLength: list.length })] as const;
  });
  return fc.tuple(fc.constant(lists), fc.record(Object.fromEntries(other)));
});

const JSON_VALUES = fc.jsonValue({ maxDepth: 2 });
const FIELDS = fc.constantFrom(
  "id",
  "of",
  "scale",
  "shown",
  "method",
  "part",
  "job",
  "way",
  "claim",
  "money",
  "deleted",
);
const RECORDS = fc.dictionary(
  FIELDS,
  fc.oneof(JSON_VALUES, fc.constantFrom("a", "b", "1 kg", "1,5 kg", "direct", "on")),
);
const KINDS = fc.constantFrom("scales", "parts", "weighings", "jobs", "job_parts", "weigh_ins", "car", "trim");

/** Anything JSON can say, now and then under the right name. */
export const WILD = fc.dictionary(KINDS, fc.oneof(fc.array(RECORDS, { maxLength: 4 }), JSON_VALUES));
