/** The form behind weighing the whole car: what is missing, the list of jobs, and the fact it becomes. */
import { describe, expect, test } from "vitest";
import type { Values } from "../../webapp/src/journal/kinds";
import { type CarForm, changesOf, emptyForm, formFrom, jobsIn, missing } from "../../webapp/src/screens/WeighCar/form";

const HABITS = { layout: "corners", unit: "kg", scale: "s-1", trim: "event", place: "" } as const;
const CORNERS = { lf: "251", rf: "248.5", lr: "212", rr: "207.5 kg", front: "", rear: "", total: "" };

const form = (patch: Partial<CarForm> = {}): CarForm => ({ ...emptyForm("wi-1", HABITS), ...CORNERS, ...patch });

describe("what is missing", () => {
  test("a corner, by its name", () => {
    expect(missing(form({ rr: "" }), 0)).toContain("Right rear is missing");
    expect(missing(form({ lf: "250,5" }), 0)).toContain("Left front: ");
  });

  test("only what the layout asks for", () => {
    expect(missing(form({ layout: "total", lf: "", total: "912" }), 0)).toBeNull();
  });

  test("that somebody looked through the jobs, when there are any", () => {
    expect(missing(form(), 3)).toContain("tick that the list is right");
    expect(missing(form({ confirmed: true }), 3)).toBeNull();
    expect(missing(form(), 0)).toBeNull();
  });

  test("a readable amount of fuel, when one is typed", () => {
    expect(missing(form({ fuel: "12 psi" }), 0)).toContain("Fuel: ");
    expect(missing(form({ fuel: "" }), 0)).toBeNull();
  });
});

test("jobs are those offered, unless the person ticked otherwise", () => {
  const ticked = form({ ticks: { b: false, c: true } });
  expect(jobsIn(ticked, new Set(["a", "b"]), ["a", "b", "c", "d"])).toEqual(["a", "c"]);
});

test("it becomes one fact, with its bare numbers in the unit of the scales and its list of jobs", () => {
  const typed = form({ fuel: "20", ballast: "5", official: true, driver_in: true });
  const [change] = changesOf(typed, {
    car: "c-1",
    jobs: ["a"],
    replaces: "wi-0",
    at: "2026-05-02T09:30+00:00",
  });
  expect(change).toEqual({
    kind: "weigh_in",
    record: "wi-1",
    base: [],
    set: {
      layout: "corners",
      trim: "event",
      driver_in: true,

      jobs: ["a"],
      lf: "251 kg",
      rf: "248.5 kg",
      lr: "212 kg",
      rr: "207.5 kg",
      scale: "s-1",
      fuel: "20 L",
      ballast: "5 kg",
      official: true,
      at: "2026-05-02T09:30+00:00",
      car: "c-1",
      replaces: "wi-0",
    },
  });
});

test("an empty seat names no driver, whoever drove last", () => {
  const [change] = changesOf(form(), { car: null, jobs: [], replaces: null, at: "2026-05-02" });
  expect("driver" in change!.set).toBe(false);
});

test("a weigh-in to be replaced opens as it was entered", () => {
  const before: Values<"weigh_in"> = {
    layout: "axles",
    front: "500 kg",
    rear: "419 kg",
    trim: "road",
    driver_in: false,
    fuel: "10 L",
    jobs: ["a"],
    official: true,
  };
  expect(formFrom("wi-2", before, HABITS)).toMatchObject({
    id: "wi-2",
    layout: "axles",
    front: "500 kg",
    rear: "419 kg",
    lf: "",
    trim: "road",
    fuel: "10 L",
    official: true,
    ticks: { a: true },
    confirmed: false,
    scale: null,
  });
});

test("every amount typed can be read before it is saved", () => {
  expect(missing(form({ fuel_within: "12 psi" }), 0)).toContain("Fuel good to: ");
  expect(missing(form({ ballast: "1,5" }), 0)).toContain("Ballast: ");
});

test("a weigh-in that is corrected keeps its moment, so that it is not taken for a newer one", () => {
  const before = { layout: "total", total: "912 kg", trim: "event", at: "2026-05-02T09:30+00:00" } as const;
  const [change] = changesOf(formFrom("wi-2", before, HABITS), { car: null, jobs: [], replaces: "wi-1" });
  expect(Date.parse(String(change!.set.at))).toBe(Date.parse("2026-05-02T09:30Z"));
});

describe("who sat in it", () => {
  const saved = (patch: Partial<CarForm>) => changesOf(form(patch), { car: null, jobs: [], replaces: null })[0]!.set;

  test("is not said until somebody says it, an empty seat neither", () => {
    expect(Object.keys(saved({})).filter((name) => name.startsWith("driver"))).toEqual([]);
    expect(saved({ driver_in: false }).driver_in).toBe(false);
    expect(formFrom("wi-2", { layout: "total", total: "900 kg" }, HABITS).driver_in).toBeNull();
  });
});
