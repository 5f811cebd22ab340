/**
 * The form behind a swap: two weighings, one after the other, and the records they become in one save.
 *
 * A part weighed before needs no reading now. Several alike are typed once, as the pieces on the scale: so many the
 * part stands for, and the job takes them from there.
 */
import { garage, type Rec } from "../../garage/garage";
import { type Change, newId } from "../../garage/write";
import { foundRight } from "../../parts/weighing/foundRight";
import { methodRow } from "../../parts/weighing/methods";
import { alike, changesOf, type Habits, missing, type PartForm } from "../../parts/weighPart/form";
import { startFor } from "../../parts/weighPart/start";
import { nameOf } from "../../parts/words/naming";

export type Way = "off" | "on";
/** `id`: of the job it becomes. `step`: which of the two is on the scale. `right`: readings asked about and kept. */
export type SwapForm = { id: string; step: Way; right: string[] } & Record<Way, PartForm>;
export type State = "fitted" | "idea";

export function emptySwap(off: string | null, on: string | null, habits: Habits): SwapForm {
  return { id: newId(), step: "off", right: [], off: startFor(off, habits), on: startFor(on, habits) };
}

/** Whether no reading has been typed yet. */
export function isUntouched({ off, on }: SwapForm): boolean {
  return off.shown === "" && on.shown === "";
}

/** The second goes onto the scale as the first did. */
export function second({ off, on }: SwapForm): PartForm {
  const isCount = methodRow(off.method).second === "pieces";
  const { method, scale, unit, place } = off;
  return { ...on, method, scale, unit, place, second: isCount ? off.second : "" };
}

/** What the new part is called while nobody has named it. */
export const newName = ({ off }: SwapForm): string => `${off.of.text.trim()}, new`;

function named(form: SwapForm): PartForm {
  const { on } = form;
  return on.of.id !== null || on.of.text.trim() ? on : { ...on, of: { id: null, text: newName(form) } };
}

/** What stands between this and saving. `isWeighed`: whether a part has been weighed before. */
export function missingIn(form: SwapForm, way: Way, isWeighed: (part: string) => boolean): string | null {
  const now = way === "on" ? named(form) : form.off;
  if (form.on.of.id !== null && form.on.of.id === form.off.of.id)
    return "Say what takes its place: this is the same part.";
  return needsNone(now, isWeighed) ? null : missing(now);
}

function needsNone({ of, shown }: PartForm, isWeighed: (part: string) => boolean): boolean {
  return of.id !== null && shown.trim() === "" && isWeighed(of.id);
}

/** How many come off and go on, as its record has it or as they were weighed. */
export function countOf(form: SwapForm, way: Way): number {
  const one = form[way];
  const own = garage.value.one("part", one.of.id)?.values.count ?? null;
  if (own !== null) return own;
  if (alike(one) > 1 || way === "off") return alike(one);
  return one.of.id === null ? countOf(form, "off") : 1;
}

type Around = { car: string | null; into: Rec<"job"> | null; state: State; today: string };

/** All that a swap writes, the job first. `into`: the job it is added to, in place of one of its own. */
export function swapChanges(form: SwapForm, { car, into, state, today }: Around): Change[] {
  const on = named(form);
  const job = into?.id ?? form.id;
  const done: Change["set"] = state === "fitted" ? { state, fitted_on: today } : { state };
  const set: Change["set"] = { name: `${form.off.of.text.trim()} swap`, trim: "both", ...done, ...(car && { car }) };
  const line = (way: Way, one: PartForm): Change => {
    const known = garage.value.one("part", one.of.id);
    const count = known && known.values.count === undefined && countOf(form, way) > 1 ? countOf(form, way) : null;
    return { kind: "job_part", set: { job, part: partIn(one), way, ...(count && { count }) } };
  };
  return [
    ...(into ? [] : [{ kind: "job", record: job, set, base: [] }]),
    ...partChanges(form.off, car, {}),
    ...partChanges(on, car, { whereabouts: "shelf", instead_of: partIn(form.off), ...several(form) }),
    line("off", form.off),
    line("on", on),
    ...form.right.map(foundRight),
  ];
}

const several = (form: SwapForm): Change["set"] => (countOf(form, "on") > 1 ? { count: countOf(form, "on") } : {});

/** The weighing of one of the two, where it was read now; before it the part, where it is new. */
function partChanges(form: PartForm, car: string | null, about: Change["set"]): Change[] {
  if (form.shown.trim() === "") return [];
  return changesOf(form, { car, replaces: null, isPart: true }).map((change) =>
    change.kind === "part" && form.of.id === null ? { ...change, set: { ...change.set, ...about } } : change,
  );
}

export const partIn = (form: PartForm): string => form.of.id ?? form.newPart;

export const nameIn = (form: SwapForm, way: Way): string => {
  const { of } = way === "on" ? named(form) : form.off;
  const known = garage.value.one("part", of.id);
  return known ? nameOf(known) : of.text.trim();
};
