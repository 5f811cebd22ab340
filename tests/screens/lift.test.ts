/** The form behind lifting an axle: two pads as one reading, what is missing, the fact it becomes. */
import { describe, expect, test } from "vitest";
import { changesOf, emptyForm, formFrom, type LiftForm, missing, tiltedOf } from "../../webapp/src/screens/Lift/form";

const TYPED = { height: "452", left: "254.3", right: "265.2 kg" };
const form = (patch: Partial<LiftForm> = {}): LiftForm => ({
  ...emptyForm("l-1", "kg", "s-1", true),
  ...TYPED,
  ...patch,
});

describe("two pads under one axle", () => {
  test("are added as typed, a bare number in the unit picked, and only once both are there", () => {
    expect(tiltedOf(form({ left: "262.8", right: "276.85 kg" }))).toBe("539.65 kg");
    expect(tiltedOf(form({ right: "584.7 lb" }))).toBe("");
    expect(tiltedOf(form({ right: "" }))).toBe("");
  });

  test("or their sum is typed as it is", () => {
    expect(tiltedOf(form({ pads: false, left: "519.5", right: "" }))).toBe("519.5 kg");
  });
});

describe("what is missing", () => {
  test("the rise, then the axle on the ground, and nothing else", () => {
    expect(missing(form({ height: "" }))).toContain("rose is missing");
    expect(missing(form({ left: "", right: "" }))).toContain("on the ground shows is missing");
    expect(missing(form())).toBeNull();
  });

  test("what cannot be read is named with what to type", () => {
    expect(missing(form({ height: "45,2" }))).toContain("The rise: ");
    expect(missing(form({ right: "12 psi" }))).toContain("The right pad: ");
    expect(missing(form({ height_within: "much" }))).toContain("good to: ");
    expect(missing(form({ right: "584.7 lb" }))).toContain("same unit");
  });

  test("an axle that did not rise", () => {
    expect(missing(form({ height: "0" }))).toContain("cannot be zero");
  });
});

test("it becomes one fact of its weigh-in, its bare numbers with their units", () => {
  const [change] = changesOf(form({ height_within: "2" }), {
    car: "c-1",
    weighIn: "w-1",
    replaces: "l-0",
    at: "2026-05-02T09:30+00:00",
  });
  expect(change).toEqual({
    kind: "lift",
    record: "l-1",
    base: [],
    set: {
      car: "c-1",
      weigh_in: "w-1",
      raised: "rear",
      tilted: "519.5 kg",
      height: "452 mm",
      height_within: "2 mm",
      scale: "s-1",
      at: "2026-05-02T09:30+00:00",
      replaces: "l-0",
    },
  });
});

test("a lift to be replaced opens as it was entered, at the step where numbers are typed", () => {
  const before = {
    weigh_in: "w-1",
    raised: "front",
    tilted: "424 kg",
    height: "602 mm",
    scale: "s-2",
    note: "bars",
    at: "2026-05-02",
  } as const;
  const opened = formFrom("l-2", before, "kg", 6);
  expect(opened).toMatchObject({
    step: 6,
    raised: "front",
    pads: false,
    left: "424 kg",
    height: "602 mm",
    scale: "s-2",
    note: "bars",
  });
  expect(missing(opened)).toBeNull();
});
