/** What there is to ask when work and weigh-ins' lists of jobs do not agree. */
import { expect, test } from "vitest";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { listing, unlisted } from "../../webapp/src/core/wholeCar/late";

const JOB = { id: "j-1", name: "Rear seat out", state: "fitted", fitted_on: "2026-09-05" };
const weighIn = (id: string, at: string, more: object = {}) => ({
  id,
  at,
  layout: "total",
  total: "1000 kg",
  trim: "event",
  jobs: [],
  ...more,
});

function asked(job: object, weigh_ins: object[], settled: string[] = []): string[] {
  const garage = readGarage({ jobs: [{ ...JOB, ...job }], weigh_ins });
  return unlisted(garage, garage.jobs.get("j-1")!, (id) => settled.includes(id));
}

const AUGUST = weighIn("w-1", "2026-08-01");
const SAME_DAY = weighIn("w-2", "2026-09-05T18:00:00Z");
const SEPTEMBER = weighIn("w-4", "2026-09-12T10:00:00Z");
const OCTOBER = weighIn("w-3", "2026-10-02");

test("a job is asked for at every later weigh-in that does not list it, the earliest first", () => {
  expect(asked({}, [OCTOBER, AUGUST, SEPTEMBER, SAME_DAY])).toEqual(["w-4", "w-3"]);
  expect(asked({}, [{ ...SEPTEMBER, jobs: ["j-1"] }, OCTOBER])).toEqual(["w-3"]);
});

test("one that is undone again is asked for at one weigh-in at a time", () => {
  expect(asked({ state: "undone" }, [SEPTEMBER, OCTOBER])).toEqual(["w-4"]);
  expect(asked({ state: "undone" }, [SEPTEMBER, OCTOBER], ["w-4"])).toEqual(["w-3"]);
});

test.each([
  ["is only an idea", { state: "idea" }, SEPTEMBER],
  ["has no date", { fitted_on: null }, SEPTEMBER],
  ["is of the event trim, at a weigh-in for the road", { trim: "event" }, { ...SEPTEMBER, trim: "road" }],
  ["meets a weigh-in without a confirmed list", {}, { ...SEPTEMBER, jobs: null }],
  ["meets a weigh-in without a date", {}, { ...SEPTEMBER, at: null }],
])("nothing is asked of a job that %s", (_, job, at) => {
  expect(asked(job, [at])).toEqual([]);
});

test("of a weigh-in and its correction only the correction is asked about", () => {
  expect(asked({}, [SEPTEMBER, { ...SEPTEMBER, id: "w-5", replaces: "w-4" }])).toEqual(["w-5"]);
});

test("the weigh-ins that list a job stand in order", () => {
  const lists = [OCTOBER, SEPTEMBER].map((each) => ({ ...each, jobs: ["j-1"] }));
  const garage = readGarage({ jobs: [JOB], weigh_ins: [...lists, AUGUST] });
  expect(listing(garage, "j-1")).toEqual(["w-4", "w-3"]);
});
