/** The records a swap becomes: one job, two parts, two weighings, and how many of each go off and on. */
import { expect, test } from "vitest";
import type { Rec } from "../../webapp/src/journal/types";
import { emptyForm, type PartForm } from "../../webapp/src/parts/weighPart/form";
import { missingIn, type SwapForm, second, swapChanges } from "../../webapp/src/screens/Swap/form";

const HABITS = { unit: "kg", scale: "s-1", place: "garage" } as const;
const one = (id: string, text: string, patch: Partial<PartForm> = {}): PartForm => ({
  ...emptyForm({ weighing: `w-${id}`, part: `p-${id}` }, { id: null, text }, HABITS),
  ...patch,
});
const swap = (patch: Partial<SwapForm> = {}): SwapForm => ({
  id: "j-1",
  step: "on",
  right: [],
  off: one("old", "Battery", { shown: "18.2" }),
  on: one("new", "", { shown: "4.1" }),
  ...patch,
});
const AROUND = { car: "c-1", into: null, state: "fitted", today: "2026-09-12" } as const;
const never = () => false;

test("a swap is one save: the job first, what it moves with its reading, and both lines", () => {
  const changes = swapChanges(swap(), AROUND);
  expect(changes.map(({ kind }) => kind)).toEqual([
    "job",
    "part",
    "weighing",
    "part",
    "weighing",
    "job_part",
    "job_part",
  ]);
  expect(changes[0]!.set).toMatchObject({ name: "Battery swap", state: "fitted", fitted_on: "2026-09-12" });
  expect(changes[3]!.set).toMatchObject({ name: "Battery, new", instead_of: "p-old", whereabouts: "shelf" });
  expect(changes.slice(5).map(({ set }) => [set.part, set.way])).toEqual([
    ["p-old", "off"],
    ["p-new", "on"],
  ]);
});

test("four weighed together go off as four and the new ones on as four, from the one number typed", () => {
  const off = one("old", "Steel wheel", { method: "batch", shown: "36", second: "4" });
  const on = { ...second(swap({ off })), shown: "28" };
  expect(on).toMatchObject({ method: "batch", second: "4" });
  const [, old, , young, , ...lines] = swapChanges(swap({ off, on }), AROUND);
  expect([old!.set.count, young!.set.count]).toEqual([4, 4]);
  expect(lines.every(({ set }) => !("count" in set))).toBe(true); // so many as the part stands for
});

test("an idea has no day of fitting, and a job that is there takes both parts", () => {
  const [job] = swapChanges(swap(), { ...AROUND, state: "idea" });
  expect("fitted_on" in job!.set).toBe(false);
  const into = { id: "j-9" } as Rec<"job">;
  const [first, , , , ...lines] = swapChanges(swap(), { ...AROUND, into });
  expect(first!.kind).toBe("part");
  expect(lines.map(({ set }) => set.job)).toEqual(["j-9", "j-9"]);
});

test("each reading is asked for, and a part cannot take its own place", () => {
  expect(missingIn(swap({ on: one("new", "") }), "on", never)).toContain("Type what the scale shows");
  const same = { id: "p-1", text: "Battery" };
  const twice = swap({ off: one("old", "", { of: same, shown: "1" }), on: one("new", "", { of: same, shown: "2" }) });
  expect(missingIn(twice, "on", never)).toContain("the same part");
  const before = swap({ off: one("old", "", { of: same }) });
  expect(missingIn(before, "off", () => true)).toBeNull(); // weighed before
  expect(missingIn(before, "off", never)).toContain("Type what the scale shows");
});
