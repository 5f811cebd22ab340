/**
 * Several readings of one thing, lifted or rolled off and on again: they measure how a scale repeats.
 *
 * A repeat is a reading of what a weighing or a weigh-in weighed, of all of it or of one wheel; what was the same for
 * all of them (tare, fuel, driver, jobs, how the car settled) stays one doubt, only the looks' own part is averaged:
 *
 * - A look's variance is d²/12 + r², its rounding and how the scale repeats. The mean of n has r²/n; its rounding too
 *   is averaged where the readings differ by more than a division, else all of them share it.
 * - r² is pooled by degrees of freedom (JCGM 100:2008, 4.2.4): what was noted or assumed of the scale, worth a stated
 *   number of them, and what all repeats on it show, Σ(x − mean)² less what rounding explains of it, ν·d²/12
 *   (Sheppard). Such a pooled variance is the mean of what is believed of r² (Gelman et al., Bayesian Data Analysis,
 *   2.6): two readings that agree by luck never make a scale perfect, and twice its root keeps to about 95 %.
 * - Readings that differ by more than a division and more than the scale's record allows widen their own mean (the
 *   Birge ratio), as several weighings of a part do.
 *
 * Of four corners, how the car settled moves load along + − − + and no total: that part is taken out of what the
 * repeats show of a whole car. Only repeats with every look of the first tell of the scale; one wheel again has its own
 * mean.
 */

import type { Garage, Omission, Repeat, WeighIn, Weighing } from "../garage/records";
import { dot, plainSum } from "../numbers/plain";
import type { Quantity } from "../numbers/quantity";
import { resolution } from "../numbers/uncertain";

export type Look = Omission["reading"];
export type Reading = Exclude<Look, "shown" | "shown_empty" | "shown_far">;
export const LAYOUTS: Readonly<Record<WeighIn["layout"], readonly Reading[]>> = {
  corners: ["lf", "rf", "lr", "rr"],
  axles: ["front", "rear"],
  total: ["total"],
};
const SETTLES = [1, -1, -1, 1];
// How many degrees of freedom a repeatability is worth: an assumed one may be off by half of it (JCGM 100:2008, G.3);
// a noted one comes of a few tries, five or so: common practice, no source.
const [ASSUMED_WORTH, NOTED_WORTH] = [2, 4];
export const APART = 1.5; // divisions: a display differs by whole ones; the half leaves out what computing adds

/**
 * What repeats show of one scale: so many `readings`, their degrees of `freedom`, and Σ(x − mean)² less rounding.
 *
 * `squares` in kg²: of one look for parts, of the whole car's weight for weigh-ins; below zero where the rounding alone
 * would scatter more.
 */
export type Scatter = { readonly readings: number; readonly freedom: number; readonly squares: number };
export const NONE: Scatter = { readings: 0, freedom: 0, squares: 0 };

/** One reading of one look: `of` is the record it stands in. */
export type Read = { readonly of: string; readonly shown: Quantity; readonly left_out: boolean };
type Weighed = Weighing | WeighIn;
type Rows = readonly (readonly (number | null)[])[];

const rowsWith = (garage: Garage, record: Weighed) => [record, ...(garage.repeats_of.get(record.id) ?? [])];

/** Every reading of one look of a weighing or weigh-in, the first one first, those left out among them. */
export function readings(garage: Garage, record: Weighed, look: Look): Read[] {
  return rowsWith(garage, record).flatMap((row) => {
    const shown = (row as Partial<Repeat>)[look];
    const left_out = garage.omissions_of.get(row.id)?.some(({ reading }) => reading === look) ?? false;
    return shown ? [{ of: row.id, shown, left_out }] : [];
  });
}

/** The readings of one look that count; with every one of them left out, all do. */
export function counted(garage: Garage, record: Weighed, look: Look): readonly Quantity[] {
  if (!garage.repeats_of.has(record.id)) {
    const only = (record as Partial<Repeat>)[look];
    return only ? [only] : [];
  }
  const read = readings(garage, record, look);
  const kept = read.filter(({ left_out }) => !left_out);
  return (kept.length ? kept : read).map(({ shown }) => shown);
}

export const mean = (shown: readonly Quantity[]): number => average(shown.map(({ value }) => value));

const average = (values: readonly number[]) =>
  values.length === 1 ? (values[0] as number) : plainSum(values) / values.length;

/** Whether readings of one look differ by more than a division. */
const apart = (values: readonly number[], division: number) =>
  Math.max(...values) - Math.min(...values) > APART * division;

const averagedOver = (shown: readonly Quantity[], division: number) =>
  apart(
    shown.map(({ value }) => value),
    division,
  )
    ? shown.length
    : 1;

/** Standard uncertainty (kg) of the mean by rounding alone: shared by readings that agree within a division. */
export function rounding(shown: readonly Quantity[], division: number): number {
  return resolution(division) / Math.sqrt(averagedOver(shown, division));
}

/** Standard uncertainty (kg) of the mean of one look's readings. `repeats`: the scale's, of one look. */
export function averaged(shown: readonly Quantity[], division: number, repeats: number): number {
  if (shown.length === 1) return Math.sqrt((division * division) / 12 + repeats * repeats);
  const own = beyond(
    shown.map(({ value }) => [value]),
    division,
  );
  const steps = (division * division) / 12 / averagedOver(shown, division);
  return Math.sqrt(steps + Math.max(repeats * repeats, own) / shown.length);
}

/** Standard deviation (kg): as noted, or assumed and worth less, pooled by freedom with what repeats show. */
export function repeatsTo(noted: number, assumed: number, { freedom, squares }: Scatter): number {
  const [prior, worth] = noted ? [noted, NOTED_WORTH] : [assumed, ASSUMED_WORTH];
  return freedom ? Math.sqrt(Math.max(0, (worth * prior * prior + squares) / (worth + freedom))) : prior;
}

/** What complete rows show, a row a repeat and a column a look. `isCar`: of the weight of all looks together. */
export function scatterOf(rows: Rows, division: number, isCar = false): Scatter {
  const whole = rows.filter((row): row is number[] => !row.includes(null));
  if (whole.length < 2) return NONE;
  const looks = whole[0]?.length ?? 0;
  const means = whole[0]?.map((_, at) => average(whole.map((row) => row[at] as number))) ?? [];
  const settles = isCar && looks === SETTLES.length;
  let squares = 0;
  for (const row of whole) {
    const off = row.map((value, at) => value - (means[at] as number));
    const along = settles ? dot(off, SETTLES) : 0;
    squares += dot(off, off) - (along * along) / looks;
  }
  const freedom = (whole.length - 1) * (looks - Number(settles));
  const less = squares - (freedom * division * division) / 12;
  return { readings: whole.length * looks, freedom, squares: isCar ? less * looks : less };
}

/**
 * Variance (kg²) of one look by its own readings alone, less rounding; nothing where they agree within a division.
 *
 * Where not every look of a car was read as often, what settled otherwise between the readings no longer falls out of
 * the total, and counts with the rest.
 */
export function beyond(rows: Rows, division: number, isCar = false): number {
  const columns = (rows[0] ?? []).map((_, at) => rows.map((row) => row[at] as number | null));
  const found = columns.map((column) => column.filter((value) => value !== null));
  if (!found.some((column) => column.length > 1 && apart(column, division))) return 0;
  if (isCar && found.every(({ length }) => length === rows.length)) {
    const own = scatterOf(rows, division, isCar);
    return own.squares / found.length / own.freedom;
  }
  const scatters = found.map((column) =>
    scatterOf(
      column.map((value) => [value]),
      division,
    ),
  );
  const own = scatters.reduce(added);
  return own.squares / own.freedom;
}

const added = (a: Scatter, b: Scatter): Scatter => ({
  readings: a.readings + b.readings,
  freedom: a.freedom + b.freedom,
  squares: a.squares + b.squares,
});

/** The readings that count, a row a repeat. */
export function rowsOf(garage: Garage, record: Weighed, looks: readonly Look[]): (number | null)[][] {
  const columns = looks.map((look) => new Map(readings(garage, record, look).map((each) => [each.of, each])));
  const value = (read?: Read) => (read && !read.left_out ? read.shown.value : null);
  return rowsWith(garage, record).map(({ id }) => columns.map((column) => value(column.get(id))));
}

/** By scale id, what repeats show: of parts and drivers, and of a whole car on named scales and those of our own. */
export function scattersOn(garage: Garage): { parts: Map<string, Scatter>; car: Map<string, Scatter> } {
  const found = { parts: new Map<string, Scatter>(), car: new Map<string, Scatter>() };
  for (const of of garage.repeats_of.keys()) {
    const [part, car] = [garage.weighings.get(of), garage.weigh_ins.get(of)];
    const record = part ?? car;
    if (!record || (car?.official && !car.scale)) continue;
    const scale = record.scale ?? "";
    const noted = garage.scales.get(scale)?.division?.value;
    const on = found[car ? "car" : "parts"];
    for (const looks of car ? [LAYOUTS[car.layout]] : PART_LOOKS.map((look) => [look])) {
      const [first] = looks.flatMap((look) => counted(garage, record, look));
      const scatter = scatterOf(rowsOf(garage, record, looks), noted ?? first?.last_digit ?? 0, !!car);
      on.set(scale, added(on.get(scale) ?? NONE, scatter));
    }
  }
  return found;
}

const PART_LOOKS: readonly Look[] = ["shown", "shown_empty", "shown_far"];
