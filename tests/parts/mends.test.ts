/** What one tap does about each kind of slip: an act with all else equal, or the form that needs a figure. */

import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { book } from "../../webapp/src/answers";
import type { Of, Slip } from "../../webapp/src/core/causes/slip";
import type { WeighIn } from "../../webapp/src/core/garage/records";
import { live } from "../../webapp/src/garage/garage";
import type { Change } from "../../webapp/src/garage/write";
import { type Mend, mendOf, recordOf } from "../../webapp/src/parts/causes/mends";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

vi.hoisted(() => vi.stubGlobal("location", { hash: "" })); // the address is read as soon as its room is

let phone: Phone;
const made = (kind: string, record: string, set: Change["set"]): Change => ({ kind, record, set });

beforeEach(async () => {
  phone = await Phone.open("here", new HomeComputer("garage"));
  const weighIn = { car: "car", layout: "total", total: "90.0 kg", scale: "pads", trim: "event", jobs: ["out"] };
  await phone.writer.save([
    made("car", "car", { name: "Coupe" }),
    made("part", "seat", { name: "Seat" }),
    made("part", "cage", { name: "Cage" }),
    made("driver", "anna", { name: "Anna" }),
    made("driver", "ben", { name: "Ben" }),
    made("scale", "pads", { name: "Pads", kind: "corner_pads" }),
    made("scale", "platform", { name: "Platform", kind: "platform" }),
    made("weighing", "w-seat", { of: "seat", method: "container", shown: "14.2 kg", shown_empty: "1.0 kg" }),
    made("weighing", "w-cage", { of: "cage", method: "direct", shown: "20 kg" }),
    made("job", "out", { name: "Seat out", state: "fitted", car: "car" }),
    made("job", "again", { name: "Seat out again", state: "fitted", car: "car" }),
    made("job", "both", { name: "Seat and cage out", state: "fitted", car: "car" }),
    made("job_part", "q-out", { job: "out", part: "seat", way: "off" }),
    made("job_part", "q-again", { job: "again", part: "seat", way: "off" }),
    made("job_part", "q-both", { job: "both", part: "seat", way: "off" }),
    made("job_part", "q-cage", { job: "both", part: "cage", way: "off" }),
    made("weigh_in", "k", {
      ...weighIn,
      ...{ driver_in: true, driver: "anna", ballast: "12 kg", fuel: "9 L", note: "Windy", at: "2026-05-03T10:00" },
    }),
  ]);
  live.value = phone.live;
});

afterEach(() => {
  live.value = null;
});

const slip = (code: Slip["code"], of: Of): Slip => ({
  ...{ code, weigh_in: null, until: null, job: null, other: null, part: null, driver: null, weighing: null },
  ...{ scale: null, place: null, field: null, unit: null, way: null, kg: null, ...of },
});

async function tap(mend: Mend | null): Promise<void> {
  if (!mend || !("changes" in mend)) throw new Error("nothing is mended in one tap");
  await phone.writer.save(mend.changes());
}

function theWeighIn(): WeighIn {
  const found = [...book.value.weigh_ins.values()];
  expect(found).toHaveLength(1);
  return found[0] as WeighIn;
}

describe("one tap", () => {
  const CORRECTED: [string, Slip, object][] = [
    ["Put Seat out again on its list", slip("wrong_side", { job: "again", way: "done" }), { jobs: ["again", "out"] }],
    ["Take Seat out off its list", slip("wrong_side", { job: "out", way: "undone" }), { jobs: [] }],
    ["Ben was in it", slip("other_driver", { driver: "ben" }), { driver: "ben", driver_in: true }],
    ["Nobody was in it", slip("person", { driver: "anna", way: "off" }), { driver: null, driver_in: false }],
    ["It was on Platform", slip("other_scale", { scale: "platform" }), { scale: "platform" }],
    ["No ballast was in it", slip("ballast", { way: "off", kg: -12 }), { ballast: null }],
    ["Correct it: 900 kg", slip("unit", { field: "total", unit: "ten" }), { total: { reads: "900 kg" } }],
    ["Correct it: 90.0 lb", slip("unit", { field: "total", unit: "pounds" }), { total: { reads: "90.0 lb" } }],
  ];

  it.each(CORRECTED)("%s", async (label, found, now) => {
    const { id: _, ...before } = theWeighIn();
    const mend = mendOf({ ...found, weigh_in: "k" });
    expect(mend?.label).toBe(label);
    await tap(mend);
    const { id, ...after } = theWeighIn();
    expect(id === "k").toBe(false);
    const changed = Object.keys(now);
    expect(after).toMatchObject(now);
    for (const name of Object.keys(before).filter((each) => !changed.includes(each))) {
      expect(after).toHaveProperty(name, before[name as keyof typeof before]);
    }
  });

  it("takes both looks of a weighing for pounds", async () => {
    const mend = mendOf(slip("unit", { part: "seat", weighing: "w-seat", unit: "pounds" }));
    expect(mend?.label).toBe("Correct it: 14.2 lb and 1.0 lb");
    await tap(mend);
    const [now, ...others] = book.value.weighings_of.get("seat") ?? [];
    expect([now?.shown.reads, now?.shown_empty?.reads, others.length]).toEqual(["14.2 lb", "1.0 lb", 0]);
  });

  it("deletes a job that is nothing but what another has, and else the part in it", async () => {
    const whole = mendOf(slip("twice", { job: "again", other: "out", part: "seat", kg: -13.2 }));
    expect(whole?.label).toBe("Delete Seat out again");
    const one = mendOf(slip("twice", { job: "both", other: "out", part: "seat", kg: -13.2 }));
    expect(one?.label).toBe("Take Seat out of Seat and cage out");
    await tap(whole);
    await tap(one);
    expect([...book.value.jobs.keys()].sort()).toEqual(["both", "out"]);
    expect(book.value.parts_of.get("both")?.map(({ part }) => part)).toEqual(["cage"]);
  });
});

describe("what needs a figure", () => {
  it.each([
    [slip("fuel", { weigh_in: "k" }), "Correct the fuel", "#/weigh-car?replaces=k"],
    [slip("ballast", { weigh_in: "k", way: "off", kg: -7 }), "Correct the ballast", "#/weigh-car?replaces=k"],
    [slip("misread", { weigh_in: "k" }), "Correct the reading", "#/weigh-car?replaces=k"],
    [slip("person", { weigh_in: "k", way: "on" }), "Correct who sat in it", "#/weigh-car?replaces=k"],
    [
      slip("unit", { weighing: "w-seat", part: "seat", unit: "grams" }),
      "Weigh Seat again",
      "#/weigh-part/seat?replaces=w-seat",
    ],
    [slip("tare", { weighing: "w-cage", part: "cage" }), "Weigh Cage again", "#/weigh-part/cage?replaces=w-cage"],
    [slip("wet", { weigh_in: "k" }), "Weigh the car again", "#/weigh-car"],
    [slip("guess", { part: "seat" }), "Weigh Seat", "#/weigh-part/seat"],
    [slip("unwritten", { weigh_in: "k" }), "Write the job down", "#/job/new"],
  ])("opens its form", (found, label, href) => {
    expect(mendOf(found)).toEqual({ label, href });
  });

  it("is nothing where nothing is wrong", () => {
    expect([mendOf(slip("chance", {})), recordOf(slip("chance", {}))]).toEqual([null, null]);
  });

  it("has its record one tap away", () => {
    expect(recordOf(slip("twice", { job: "again" }))?.href).toBe("#/job/again");
    expect(recordOf(slip("unit", { part: "seat", weighing: "w-seat" }))).toEqual({
      label: "Look at Seat",
      href: "#/weighing/w-seat",
    });
    expect(recordOf(slip("put_back", { part: "cage", weigh_in: "k" }))?.href).toBe("#/part/cage");
    expect(recordOf(slip("fuel", { weigh_in: "k" }))?.href).toBe("#/weigh-in/k");
    expect(recordOf(slip("unwritten", { weigh_in: "k" }))).toBeNull();
  });
});
