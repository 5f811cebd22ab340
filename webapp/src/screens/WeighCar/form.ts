/**
 * The form behind weighing the whole car: what is typed, ticked and confirmed, what is missing, the record it becomes.
 *
 * The list of jobs then in the car is part of the fact: "since that weigh-in" is later the difference of two lists, so
 * the person confirms it here, once, while standing beside the car.
 */
import type { WeighIn } from "../../core/garage/records";
import { LOOKS, type Reading } from "../../core/wholeCar/weighIn";
import type { Change } from "../../garage/write";
import type { Value } from "../../journal/types";
import { own } from "../../own";
import type { Shot } from "../../parts/photos/Photos";
import { LOOK_WORDS } from "../../parts/weighIn/looks";
import { momentForField, momentTyped } from "../../parts/words/momentFields";
import { readingOf, troubleIn, typedOf } from "../../parts/words/reading";

export type Layout = WeighIn["layout"];
export type Trim = "road" | "event";

export type CarForm = {
  id: string;
  layout: Layout;
  looks: Record<Reading, string>;
  unit: string;
  scale: string | null;
  fuel: string;
  fuelWithin: string;
  driverIn: boolean;
  driver: string | null;
  ballast: string;
  trim: Trim;
  official: boolean;
  /** Only what the person ticked otherwise than it was offered. */
  ticks: Record<string, boolean>;
  confirmed: boolean;
  /** When, as a date field gives it; "" is now. */
  at: string;
  place: string;
  note: string;
  shots: Shot[];
};

export type CarHabits = {
  layout: Layout;
  unit: string;
  scale: string | null;
  driver: string | null;
  trim: Trim;
  place: string;
};

const NO_LOOKS: Record<Reading, string> = { lf: "", rf: "", lr: "", rr: "", front: "", rear: "", total: "" };

export function emptyForm(id: string, habits: CarHabits): CarForm {
  return {
    id,
    ...habits,
    looks: NO_LOOKS,
    fuel: "",
    fuelWithin: "",
    driverIn: false,
    ballast: "",
    official: false,
    ticks: {},
    confirmed: false,
    at: "",
    note: "",
    shots: [],
  };
}

/** A weigh-in to be replaced, opened as it was entered, so that only what was wrong is typed again. */
export function formFrom(id: string, before: Record<string, Value>, habits: CarHabits): CarForm {
  const text = (field: string) => String(before[field] ?? "");
  const names = Object.keys(NO_LOOKS) as Reading[];
  const jobs = (before["jobs"] as string[] | undefined) ?? [];
  return {
    ...emptyForm(id, habits),
    layout: before["layout"] as Layout,
    looks: Object.fromEntries(names.map((name) => [name, text(name)])) as Record<Reading, string>,
    scale: (before["scale"] as string | undefined) ?? null,
    fuel: text("fuel"),
    fuelWithin: text("fuel_within"),
    driverIn: before["driver_in"] === true,
    driver: (before["driver"] as string | undefined) ?? null,
    ballast: text("ballast"),
    trim: before["trim"] as Trim,
    official: before["official"] === true,
    ticks: Object.fromEntries(jobs.map((job) => [job, true])),
    at: momentForField(before["at"]), // a correction is no newer weigh-in: the order of weigh-ins stays
    place: text("place"),
    note: text("note"),
  };
}

/** The jobs in the car: those offered (fitted, for this trim) and what was ticked otherwise. */
export function jobsIn(form: CarForm, offered: ReadonlySet<string>, all: readonly string[]): string[] {
  return all.filter((job) => own(form.ticks, job) ?? offered.has(job));
}

/** What stands between this form and saving, as one sentence; null when it can be saved. */
export function missing(form: CarForm, jobs: number): string | null {
  for (const name of LOOKS[form.layout]) {
    const reading = readingOf("mass", form.looks[name], form.unit, true);
    if (reading.state === "empty")
      return `${LOOK_WORDS[name]} is missing. Type what it shows, or choose another way above.`;
    if (reading.state === "trouble") return `${LOOK_WORDS[name]}: ${reading.sentence} ${reading.todo}`;
  }
  const trouble =
    troubleIn("Fuel", readingOf("volume", form.fuel, "L")) ??
    troubleIn("Ballast", readingOf("mass", form.ballast, form.unit)) ??
    troubleIn("Fuel good to", readingOf("volume", form.fuelWithin, "L"));
  if (trouble) return trouble;
  if (jobs > 0 && !form.confirmed) return "Look through the jobs in the car, then tick that the list is right.";
  return null;
}

export type Units = { volume: string };

/** The weigh-in's own fields as far as they are typed: what is saved, and what is worked out while typing. */
export function weighInOf(form: CarForm, jobs: readonly string[], units: Units): Record<string, Value> {
  const fields: Record<string, Value> = {
    layout: form.layout,
    trim: form.trim,
    driver_in: form.driverIn,
    jobs: [...jobs],
  };
  for (const name of LOOKS[form.layout]) put(fields, name, typedOf("mass", form.looks[name], form.unit));
  put(fields, "scale", form.scale);
  put(fields, "fuel", typedOf("volume", form.fuel, units.volume));
  put(fields, "fuel_within", typedOf("volume", form.fuelWithin, units.volume));
  if (form.driverIn) put(fields, "driver", form.driver);
  put(fields, "ballast", typedOf("mass", form.ballast, form.unit));
  if (form.official) fields["official"] = true;
  put(fields, "place", form.place.trim());
  put(fields, "note", form.note.trim());
  return fields;
}

function put(fields: Record<string, Value>, name: string, value: string | null): void {
  if (value) fields[name] = value;
}

type Around = { car: string | null; jobs: readonly string[]; units: Units; replaces: string | null; at?: string };

export function changesOf(form: CarForm, { car, jobs, units, replaces, at = momentTyped(form.at) }: Around): Change[] {
  const set = { ...weighInOf(form, jobs, units), at, ...(car ? { car } : {}), ...(replaces ? { replaces } : {}) };
  return [{ kind: "weigh_in", record: form.id, set, base: [] }];
}
