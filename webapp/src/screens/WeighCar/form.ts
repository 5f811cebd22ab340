/**
 * The form behind weighing the whole car: what is typed, ticked and confirmed, what is missing, the record it becomes.
 *
 * The list of jobs then in the car is part of the fact: "since that weigh-in" is later the difference of two lists, so
 * the person confirms it here, once, while standing beside the car.
 */
import { LOOKS } from "../../core/wholeCar/weighIn";
import type { Change } from "../../garage/write";
import type { Changes, FieldName, Values } from "../../journal/kinds";
import { own } from "../../own";
import { setOf, textsOf } from "../../parts/forms/draftRecord";
import type { Shot } from "../../parts/photos/Photos";
import { labelOf } from "../../parts/words/fieldWords";
import { momentForField, momentTyped } from "../../parts/words/momentFields";
import { readingOf, troubleIn } from "../../parts/words/reading";

export type Layout = NonNullable<Values<"weigh_in">["layout"]>;
export type Trim = NonNullable<Values<"weigh_in">["trim"]>;

const READINGS = Object.values(LOOKS).flat();
const TYPED = [...READINGS, "fuel", "fuel_within", "ballast", "place", "note"] as const;

export type CarHabits = {
  layout: Layout;
  unit: string;
  scale: string | null;
  trim: Trim;
  place: string;
};

/** Named as the fields of the weigh-in. `at`: when, as a date field gives it; "" is now. */
export type CarForm = CarHabits &
  Record<(typeof TYPED)[number] | "at", string> & {
    id: string;
    /** Null until somebody says so, as who it was: an empty seat is no more taken for granted than a driver. */
    driver_in: boolean | null;
    driver: string | null;
    official: boolean;
    /** What was seen to before it; null for one that was made when nobody asked. */
    ready: Values<"weigh_in">["ready"] | null;
    /** Only what the person ticked otherwise than it was offered. */
    ticks: Record<string, boolean>;
    confirmed: boolean;
    shots: Shot[];
  };
export type OfCar = { form: CarForm; change: (patch: Partial<CarForm>) => void };

export function emptyForm(id: string, habits: CarHabits): CarForm {
  return {
    ...textsOf<"weigh_in", (typeof TYPED)[number] | "at">({}, [...TYPED, "at"]),
    id,
    ...habits,
    driver_in: null,
    driver: null,
    official: false,
    ready: [],
    ticks: {},
    confirmed: false,
    shots: [],
  };
}

/** A weigh-in to be replaced, opened as it was entered, so that only what was wrong is typed again. */
export function formFrom(id: string, before: Values<"weigh_in">, habits: CarHabits): CarForm {
  const { layout = habits.layout, trim = habits.trim, scale = null, driver = null } = before;
  const { driver_in = null, official = false, jobs = [] } = before;
  return {
    ...emptyForm(id, habits),
    ...textsOf(before, TYPED),
    ...{ layout, trim, scale, driver, driver_in, official },
    ready: before.ready ?? null,
    ticks: Object.fromEntries(jobs.map((job) => [job, true])),
    at: momentForField(before.at), // a correction is no newer weigh-in: the order of weigh-ins stays
  };
}

/** The jobs in the car: those offered (fitted, for this trim) and what was ticked otherwise. */
export function jobsIn(form: CarForm, offered: ReadonlySet<string>, all: readonly string[]): string[] {
  return all.filter((job) => own(form.ticks, job) ?? offered.has(job));
}

/** What stands between this form and saving, as one sentence; null when it can be saved. */
export function missing(form: CarForm, jobs: number): string | null {
  for (const name of LOOKS[form.layout]) {
    const reading = readingOf("mass", form[name], form.unit, true);
    const word = labelOf("weigh_in", name);
    if (reading.state === "empty") return `${word} is missing. Type what it shows, or choose another way above.`;
    if (reading.state === "trouble") return troubleIn(word, reading);
  }
  const trouble =
    troubleIn("Fuel", readingOf("volume", form.fuel, "L")) ??
    troubleIn("Ballast", readingOf("mass", form.ballast, form.unit)) ??
    troubleIn("Fuel good to", readingOf("volume", form.fuel_within, "L"));
  if (trouble) return trouble;
  if (jobs > 0 && !form.confirmed) return "Look through the jobs in the car, then tick that the list is right.";
  return null;
}

/** The weigh-in's own fields as far as they are typed: what is saved, and what is worked out while typing. */
export function weighInOf(form: CarForm, jobs: readonly string[]): Changes<"weigh_in"> {
  const names: FieldName<"weigh_in">[] = ["layout", ...LOOKS[form.layout], "scale", "fuel", "fuel_within", "ballast"];
  names.push("trim", "driver_in", "place", "note");
  if (form.driver_in) names.push("driver");
  if (form.official) names.push("official");
  if (form.ready && !form.official) names.push("ready"); // how others weigh is theirs to see to
  return { ...setOf("weigh_in", form, names, { mass: form.unit }), jobs: [...jobs] };
}

type Around = {
  car: string | null;
  jobs: readonly string[];
  replaces: string | null;
  at?: string;
  /** What it should show, as it was foretold. */
  told?: Changes<"weigh_in">;
};

export function changesOf(form: CarForm, { car, jobs, replaces, at = momentTyped(form.at), told }: Around): Change[] {
  const set = { ...weighInOf(form, jobs), at, ...(car && { car }), ...(replaces && { replaces }), ...told };
  return [{ kind: "weigh_in", record: form.id, set, base: [] }];
}
