/**
 * The form behind weighing a part: what is typed and chosen, what is still missing, and the records it becomes.
 *
 * The weighing's id is made when the form opens, so that a form saved just before the page was killed is known again
 * and never saved twice.
 */

import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import type { Change } from "../../garage/write";
import type { Changes, Values } from "../../journal/kinds";
import type { Picked } from "../controls/RecordPick";
import { placing, type Zone } from "../drawing/zones";
import { setOf } from "../forms/draftRecord";
import type { Shot } from "../photos/Photos";
import { type Method, methodRow } from "../weighing/methods";
import { momentTyped } from "../words/momentFields";
import { placeTrouble } from "../words/place";
import { readingOf, typedOf, whyNot } from "../words/reading";

export type Place = NonNullable<Values<"weighing">["place"]>;

/** Named as the fields of the weighing and its part. `second`: the other reading, or the count. */
export type PartForm = {
  id: string;
  newPart: string;
  of: Picked;
  method: Method;
  shown: string;
  second: string;
  /** What a bare number is read in. */
  unit: string;
  scale: string | null;
  with_bolts: boolean | null;
  zone: string | null;
  x: string;
  y: string;
  place: Place;
  /** When, as a date field gives it; "" is now. */
  at: string;
  note: string;
  shots: Shot[];
};
export type OfPart = { form: PartForm; change: (patch: Partial<PartForm>) => void };

/** What the next weighing starts with: the scale and unit in hand, and where. */
export type Habits = { unit: string; scale: string | null; place: Place };

export function emptyForm(ids: { weighing: string; part: string }, of: Picked, habits: Habits): PartForm {
  return {
    id: ids.weighing,
    newPart: ids.part,
    of,
    method: "direct",
    shown: "",
    second: "",
    ...habits,
    with_bolts: null,
    zone: null,
    x: "",
    y: "",
    at: "",
    note: "",
    shots: [],
  };
}

/** What stands between this form and saving, as one sentence; null when it can be saved. */
export function missing(form: PartForm, isPart = true): string | null {
  const looks = missingLooks(form);
  if (looks) return looks;
  if (form.of.id === null && form.of.text.trim() === "") return "Say what it is.";
  const place = isPart && (placeTrouble(form.x, unitOf("length")) ?? placeTrouble(form.y, unitOf("length")));
  return place ? `Its measured place: ${place}` : null;
}

function missingLooks(form: PartForm): string | null {
  const row = methodRow(form.method);
  const first = readingOf("mass", form.shown, form.unit, true);
  if (first.state === "empty") return `Type what the scale shows (${row.first.toLowerCase()}).`;
  if (first.state === "trouble") return whyNot(first);
  if (row.second === "pieces" && !isCount(form.second)) return "Type how many pieces are on the scale, a whole number.";
  if (row.second && row.second !== "pieces") {
    const second = readingOf("mass", form.second, form.unit);
    if (second.state === "empty") return `Type the second reading too (${row.secondLabel.toLowerCase()}).`;
    if (second.state === "trouble") return whyNot(second);
    if (row.second === "shown_empty" && second.value >= first.value)
      return `“${row.first}” must show more than “${row.secondLabel}”. Look at both readings again.`;
  }
  return null;
}

/** The looks with the unit they were typed in, so that another scale or unit never reads them anew. */
export function frozen(form: PartForm): Pick<PartForm, "shown" | "second"> {
  const isReading = ![null, "pieces"].includes(methodRow(form.method).second);
  const kept = (text: string) => (text.trim() ? typedOf("mass", text, form.unit) : text);
  return { shown: kept(form.shown), second: isReading ? kept(form.second) : form.second };
}

function isCount(text: string): boolean {
  return /^[1-9][0-9]{0,3}$/.test(text.trim()) && Number(text) <= 1000;
}

/** The weighing's own fields, as far as they are typed: what is saved, and what is worked out while typing. */
export function weighingOf(form: PartForm, replaces: string | null): Changes<"weighing"> {
  const own = ["method", "shown", "place", "scale", "with_bolts", "note"] as const;
  return {
    of: form.of.id ?? form.newPart,
    what: form.of.text.trim(),
    ...setOf("weighing", form, own, { mass: form.unit }),
    ...secondOf(form),
    ...(replaces && { replaces }),
  };
}

/** Of several weighed together, how many: so many the part stands for, and so many go into a job. */
export function alike({ method, second }: PartForm): number {
  return methodRow(method).second === "pieces" && isCount(second) ? Number(second) : 1;
}

function secondOf({ method, second: text, unit }: PartForm): Changes<"weighing"> {
  const { second } = methodRow(method);
  if (second === null) return {};
  if (second !== "pieces") return { [second]: typedOf("mass", text, unit) };
  return { pieces: isCount(text) ? Number(text) : null };
}

/** `isPart`: what is weighed is a part (a driver has no place in the car to note here). */
export type Around = { car: string | null; replaces: string | null; isPart: boolean };

/** The changes that save the form: the weighing, and before it the part where it is new or its place was given. */
export function changesOf(form: PartForm, { car, replaces, isPart }: Around): Change[] {
  const set = { ...weighingOf(form, replaces), at: momentTyped(form.at) };
  const weighing: Change = { kind: "weighing", record: form.id, set, base: [] };
  const about = garage.value.one("part", form.of.id)?.values ?? { name: form.of.text };
  const follows = form.zone ? placing(form.zone as Zone, about) : {};
  const where = { ...setOf("part", form, ["zone", "x", "y"]), ...follows };
  if (form.of.id === null) {
    const seen = form.place === "yard" ? { whereabouts: "yard" } : {};
    const count = alike(form) > 1 ? { count: alike(form) } : {};
    const part = { name: form.of.text.trim(), ...count, ...where, ...(car && { car }), ...seen };
    return [{ kind: "part", record: form.newPart, set: part, base: [] }, weighing];
  }
  return isPart && Object.keys(where).length
    ? [{ kind: "part", record: form.of.id, set: where }, weighing]
    : [weighing];
}
