/** The form behind weighing a part: when it can be saved, which records it becomes, and which readings are odd. */
import { describe, expect, test } from "vitest";
import type { Rec } from "../../webapp/src/journal/types";
import { isBlank } from "../../webapp/src/parts/weighing/blank";
import { changesOf, emptyForm, frozen, missing, type PartForm } from "../../webapp/src/parts/weighPart/form";
import { offersFrom } from "../../webapp/src/parts/weighPart/offers";

const IDS = { weighing: "w-1", part: "p-new" };
const HABITS = { unit: "oz", scale: "s-1", place: "garage" } as const;
const AROUND = { car: "c-1", replaces: null, isPart: true };

const form = (patch: Partial<PartForm> = {}): PartForm => ({
  ...emptyForm(IDS, { id: "p-1", text: "Seat" }, HABITS),
  ...patch,
});

describe("what is missing", () => {
  test("a reading", () => {
    expect(missing(form())).toContain("Type what the scale shows");
    expect(missing(form({ shown: "0" }))).toContain("cannot be zero");
    expect(missing(form({ shown: "1,5" }))).toContain("1.5");
  });

  test("the second look, where the method takes two", () => {
    expect(missing(form({ method: "difference", shown: "80 kg" }))).toContain("me alone");
    expect(missing(form({ method: "ends", shown: "8 kg" }))).toContain("the other end");
    expect(missing(form({ method: "batch", shown: "8 kg", second: "some" }))).toContain("how many pieces");
  });

  test("sense: the empty box may not weigh as much as the full one", () => {
    expect(missing(form({ method: "container", shown: "2 kg", second: "2000 g" }))).toContain("must show more");
    expect(missing(form({ method: "container", shown: "2 kg", second: "1999 g" }))).toBeNull();
  });

  test("what it is", () => {
    expect(missing(form({ shown: "6", of: { id: null, text: " " } }))).toBe("Say what it is.");
    expect(missing(form({ shown: "6 3/8" }))).toBeNull();
  });
});

describe("the records it becomes", () => {
  test("a known part is one weighing, the bare number with the unit it was read in", () => {
    const [weighing, ...others] = changesOf(form({ shown: "6 3/8" }), AROUND);
    expect(others).toEqual([]);
    expect(weighing).toMatchObject({
      kind: "weighing",
      record: "w-1",
      base: [],
      set: { of: "p-1", what: "Seat", method: "direct", shown: "6 3/8 oz", scale: "s-1", place: "garage" },
    });
    expect("shown_empty" in weighing!.set).toBe(false);
    expect("with_bolts" in weighing!.set).toBe(false);
  });

  test("four weighed together are a part of four pieces", () => {
    const four = form({ method: "batch", shown: "48 oz", second: "4", of: { id: null, text: "Wheel nut" } });
    expect(changesOf(four, AROUND)[0]!.set).toMatchObject({ name: "Wheel nut", count: 4 });
    expect("count" in changesOf(form({ ...four, method: "direct" }), AROUND)[0]!.set).toBe(false);
  });

  test("free text makes a part of the car first; at the yard it is a part seen there", () => {
    const changes = changesOf(
      form({ shown: "4 lb", of: { id: null, text: " Bonnet " }, place: "yard", zone: "nose" }),
      AROUND,
    );
    expect(changes.map(({ kind }) => kind)).toEqual(["part", "weighing"]);
    expect(changes[0]!.set).toEqual({ name: "Bonnet", zone: "nose", car: "c-1", whereabouts: "yard" });
    expect(changes[1]!.set).toMatchObject({ of: "p-new", what: "Bonnet" });
  });

  test("a place given for a known part changes the part, never for a driver", () => {
    const placed = form({ shown: "4 lb", zone: "tail", x: "2100" });
    expect(changesOf(placed, AROUND)[0]).toEqual({ kind: "part", record: "p-1", set: { zone: "tail", x: "2100 mm" } });
    expect(changesOf(placed, { ...AROUND, isPart: false }).map(({ kind }) => kind)).toEqual(["weighing"]);
  });

  test("a batch keeps its count, two looks keep both texts, a correction names what it replaces", () => {
    expect(changesOf(form({ method: "batch", shown: "2 kg", second: "8" }), AROUND)[0]!.set).toMatchObject({
      pieces: 8,
    });
    const ends = changesOf(form({ method: "ends", shown: "11.2 kg", second: "9.9 kg" }), {
      ...AROUND,
      replaces: "w-0",
    })[0]!;
    expect(ends.set).toMatchObject({ shown: "11.2 kg", shown_far: "9.9 kg", replaces: "w-0" });
  });
});

test("a form with nothing in it is not worth keeping", () => {
  expect(isBlank(form({ of: { id: null, text: "" } }))).toBe(true);
  expect(isBlank(form({ of: { id: null, text: "" }, shown: "3" }))).toBe(false);
});

test("what nobody has weighed is offered first, newest first; what is gone is not offered", () => {
  const part = <K extends "part" | "driver">(id: string, values?: Rec<K>["values"]) =>
    ({ id, values: { name: id, ...values } }) as unknown as Rec<K>;
  const parts: Rec<"part">[] = [
    part("a"),
    part("b"),
    part("c", { whereabouts: "sold" }),
    part("d"),
    part("e", { whereabouts: "yard" }),
  ];
  const weighings = [{ values: { of: "d" } } as unknown as Rec<"weighing">];
  expect(offersFrom(parts, [part("x")], weighings).map(({ id }) => id)).toEqual(["e", "b", "a", "d", "x"]);
  expect(offersFrom(parts, [], weighings)[0]!.note).toBe("not weighed yet, at the yard");
});

test("a measured place that cannot be one stops the form, and a side is kept as a minus", () => {
  expect(missing(form({ shown: "6", x: "12 psi" }))).toContain("Its measured place");
  expect(missing(form({ shown: "6", y: "-12 m" }))).toContain("more than a car is long");
  const placed = form({ shown: "6", x: "-600", y: "330 mm" });
  expect(missing(placed)).toBeNull();
  expect(changesOf(placed, AROUND)[0]).toMatchObject({ record: "p-1", set: { x: "-600 mm", y: "330 mm" } });
});

test("a reading keeps its unit when the scale or the unit is changed after it", () => {
  expect(frozen(form({ shown: "6 3/8" }))).toEqual({ shown: "6 3/8 oz", second: "" });
  expect(frozen(form({ method: "difference", shown: "82.4 kg", second: "75.1", unit: "kg" })).second).toBe("75.1 kg");
  expect(frozen(form({ method: "batch", shown: "80", second: "12" })).second).toBe("12");
  expect(frozen(form({ shown: "" })).shown).toBe("");
});

test("a weighing made earlier is dated then, in the phone's own time", () => {
  const at = (patch: Partial<PartForm>) => String(changesOf(form({ shown: "6", ...patch }), AROUND)[0]!.set.at);
  expect(at({ at: "2026-05-02T09:30" })).toMatch(/^2026-05-02T09:30[+-]\d\d:\d\d$/);
  expect(Math.abs(Date.parse(at({})) - Date.now())).toBeLessThan(120_000);
});
