/**
 * The whole car on scales: loads, shares and the centre of gravity, each with its uncertainty.
 *
 * A weigh-in is two or four looks at one scale, or one. Every look has its own rounding and its own part in how well
 * the scale repeats a whole car, less where it was read again (`weighing/repeats`); all of them share the scale's gain,
 * which therefore adds up fully in the total and cancels in every share. Four corners have a fourth freedom beside
 * total, front and left: how the car settles on its springs moves load from one diagonal to the other (+ − − +). It
 * touches the corners and the cross weight, nothing else.
 *
 * Whatever is there is worked out: with two corners typed there is an axle, with all four a total. Cross weight is
 * (RF + LR) / total. Axes: x rearward from the front axle, y to the car's right; each axle has its own track.
 */

import { type Car, type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { divide, multiply, resolution, total, type Uncertain, uncertain, weightedSum } from "../numbers/uncertain";
import { beyond, counted, LAYOUTS, mean, NONE, type Reading, repeatsTo, rounding, rowsOf } from "../weighing/repeats";
import { ASSUMED_GAIN, divisionFor, type ScaleModel, UNNAMED } from "../weighing/scale";
import { gainByClass, platformGain, wholeCarGain } from "../weighing/tradeScale";
import { type Masses, masses } from "../weighing/weighing";
import { aboard } from "./aboard";
import { atCondition, type Condition, chosenSheet, conditionOf, conditionWarnings, isWarned } from "./condition";
import { DIAGONAL, unready } from "./ready";

export type { Reading };
export const LOOKS = LAYOUTS;
const PAIRS = {
  front: ["lf", "rf"],
  rear: ["lr", "rr"],
  left: ["lf", "lr"],
  right: ["rf", "rr"],
  cross: ["rf", "lr"],
} as const;
export type Pair = keyof typeof PAIRS;
const PAIR_NAMES = Object.keys(PAIRS) as Pair[];

// Standard deviation of the whole car's weight on rolling it on again, kg: common practice, no source.
export const ASSUMED_REPEATABILITY: Readonly<Record<string, number>> = {
  kitchen: 0.5,
  bench: 0.5,
  hanging: 1,
  bathroom: 1,
  corner_pads: 0.5,
  axle_pads: 1,
  platform: 0.5,
};
const ASSUMED_REPEATABILITY_UNNAMED = 2;
const SETTLING = 1; // standard deviation, kg a corner in the pattern + − − +: common practice, no source
/** Pads that share a car; a capacity is of one of them. */
const PADS: Readonly<Record<string, number>> = { corner_pads: 4, bathroom: 4, axle_pads: 2 };
const ODD = [0.4, 1.6] as const; // a reading outside these, as a share of the mean of all, is most likely a slip

/** Loads in kg by name, as far as they are known. */
export type LoadsByName = Readonly<Partial<Record<Reading | Pair, Uncertain>>>;

/**
 * What the scale said of the car as it stood on it: fuel, driver and ballast included.
 *
 * `loads` in kg by name (lf, rf, lr, rr, front, rear, left, right, cross, total), as far as they are known. `shares`:
 * front, rear, left, right and cross as fractions of the total. `x_cg`, `y_cg` in m. `gain`: the scale's, taken out.
 */
export type Loads = {
  readonly loads: LoadsByName;
  readonly shares: Readonly<Partial<Record<Pair, Uncertain>>>;
  readonly x_cg: Uncertain | null;
  readonly y_cg: Uncertain | null;
  readonly gain: Uncertain;
  readonly warnings: readonly Warned[];
};

/**
 * One weigh-in and what follows from it. Masses in kg.
 *
 * `fuel`, `driver`: on board then, null when not known; `ballast` likewise, and kept. `weight`: at the class's
 * `condition`; when null, `reason` says why.
 */
export type WholeCar = {
  readonly weigh_in: string;
  readonly loads: Loads;
  readonly condition: Condition;
  readonly fuel: Uncertain | null;
  readonly driver: Uncertain | null;
  readonly ballast: number;
  readonly weight: Uncertain | null;
  readonly reason: Warned | null;
  readonly warnings: readonly Warned[];
};

/**
 * A weigh-in of the garage by id, half typed or whole; null when there is no such weigh-in.
 *
 * `classSheet`: id of the one whose condition is wanted, by default the newest of the car.
 */
export function weighIn(
  garage: Garage,
  id: string,
  known: Masses = masses(garage),
  classSheet: string | null = null,
): WholeCar | null {
  const record = garage.weigh_ins.get(id);
  if (!record) return null;
  const loads = loadsOf(garage, record, known);
  const condition = conditionOf(garage, chosenSheet(garage, classSheet), known);
  const then = aboard(garage, record, known);
  const answer = atCondition(loads.loads.total, then, condition);
  return {
    weigh_in: id,
    loads,
    condition,
    fuel: then.fuel,
    driver: then.driver,
    ballast: record.ballast?.value ?? 0,
    weight: isWarned(answer) ? null : answer,
    reason: isWarned(answer) ? answer : null,
    warnings: [
      ...unread(garage, id),
      ...loads.warnings,
      ...condition.warnings,
      ...conditionWarnings(garage, record, then, condition),
    ],
  };
}

/** What of this record could not be read. */
function unread(garage: Garage, id: string): Warned[] {
  return garage.warnings.filter(({ data }) => data.list === "weigh_ins" && data.id === id);
}

/** The loads of one weigh-in, as many of its readings as there are, each the mean of all of it that count. */
export function loadsOf(garage: Garage, record: WeighIn, known: Masses): Loads {
  const model = modelFor(record, known);
  const read = LOOKS[record.layout].flatMap((name) => {
    const looks = counted(garage, record, name);
    return looks.length ? [[name, looks] as const] : [];
  });
  const shown = new Map(read.map(([name, looks]) => [name, looks[0] as Quantity]));
  const first = [...shown.values()];
  const whole = first.reduce((sum, look) => sum + look.value, 0);
  const gain = gainFor(garage, record, model, whole);
  const repeats = oneLook(garage, record, model, Math.max(0, ...first.map((look) => divisionFor(model, look))));
  const looks = read.map(([name, looks]) => [name, loadOf(garage, record, model, gain, name, looks, repeats)] as const);
  const loads = sumsOf(Object.fromEntries(looks));
  const shares = sharesOf(loads);
  const warnings = [
    ...model.warnings,
    ...missing(record, shown),
    ...aboveCapacity(garage, record, model, shown),
    ...odd(record, loads),
    ...assumed(garage, record, model),
  ];
  return { loads, shares, x_cg: xCg(garage.car, shares), y_cg: yCg(garage.car, loads), gain, warnings };
}

/** The scale of a weigh-in. An official one without a name is a platform of its own: never two times the same. */
export function modelFor(record: WeighIn, known: Masses): ScaleModel {
  const named = known.scales.get(record.scale ?? UNNAMED) as ScaleModel;
  if (record.scale !== null || !record.official) return named;
  const gain = uncertain(0, { [`cal:official:${record.id}`]: ASSUMED_GAIN.platform as number });
  return { ...named, gain, repeatability: ASSUMED_REPEATABILITY.platform as number, of_car: NONE };
}

/** The gain for a car of about `load` kg; an official scale without a name is a platform of unknown class. */
export function gainFor(garage: Garage, record: WeighIn, model: ScaleModel, load: number): Uncertain {
  if (record.official && !record.scale) return platformGain(`cal:official:${record.id}`, load);
  return wholeCarGain(garage, model, load);
}

/** Standard deviation (kg) of a whole car's weight on this scale: as noted or assumed, with what repeats show. */
export function repeatability(garage: Garage, model: ScaleModel): number {
  const kind = garage.scales.get(model.id)?.kind ?? "";
  return repeatsTo(model.repeatability, ASSUMED_REPEATABILITY[kind] ?? ASSUMED_REPEATABILITY_UNNAMED, model.of_car);
}

/** How one of its looks repeats, standard deviation, kg: as the scale does, or worse where its readings say so. */
function oneLook(garage: Garage, record: WeighIn, model: ScaleModel, division: number): number {
  const [looks, repeats] = [LOOKS[record.layout], repeatability(garage, model)];
  if (!garage.repeats_of.has(record.id)) return repeats / Math.sqrt(looks.length);
  const own = beyond(rowsOf(garage, record, looks), division, true);
  return Math.sqrt(Math.max((repeats * repeats) / looks.length, own));
}

/** One look, the mean of its readings, with the scale's gain taken out. `repeats`: of one reading. */
function loadOf(
  garage: Garage,
  record: WeighIn,
  model: ScaleModel,
  gain: Uncertain,
  name: Reading,
  shown: readonly Quantity[],
  repeats: number,
): Uncertain {
  const steps = rounding(shown, divisionFor(model, shown[0] as Quantity));
  const load = mean(shown) / (1 + gain.value);
  const look = lookAt(`${record.id}:${name}`, load, gain, steps, repeats / Math.sqrt(shown.length));
  const doubts = unready(garage, record, name, LOOKS[record.layout].length);
  if (record.layout === "corners") doubts[`settle:${record.id}`] = SETTLING * (DIAGONAL[name] as number);
  return uncertain(load, { ...look.sources, ...doubts });
}

/** A load, kg, with the doubt of the look it was read from: the scale's gain, rounding, and how it repeats. */
export function lookAt(name: string, load: number, gain: Uncertain, rounding: number, repeats: number): Uncertain {
  const through = 1 + gain.value;
  const sources: Record<string, number> = {};
  for (const [source, part] of Object.entries(gain.sources)) sources[source] = (-load * part) / through;
  return uncertain(load, { ...sources, [`round:${name}`]: rounding / through, [`rep:${name}`]: repeats });
}

/** The looks, and every sum of two of them that has both; the total when nothing is missing. */
function sumsOf(looks: LoadsByName): LoadsByName {
  const sumOf = (names: readonly Reading[]) => {
    const found = names.flatMap((name) => looks[name] ?? []);
    return found.length === names.length ? [total(found)] : [];
  };
  const pairs = PAIR_NAMES.flatMap((name) => sumOf(PAIRS[name]).map((sum) => [name, sum] as const));
  const totals = Object.values(LOOKS)
    .flatMap(sumOf)
    .map((sum) => ["total", sum] as const);
  return { ...looks, ...Object.fromEntries(pairs), ...Object.fromEntries(totals) };
}

function sharesOf(loads: LoadsByName): Loads["shares"] {
  const whole = loads.total;
  if (!whole?.value) return {};
  const shares = PAIR_NAMES.flatMap((name) => (loads[name] ? [[name, divide(loads[name], whole)] as const] : []));
  return Object.fromEntries(shares);
}

/** Behind the front axle: wheelbase × rear share. */
function xCg(car: Car | null, shares: Loads["shares"]): Uncertain | null {
  const wheelbase = lengthOf(car, "wheelbase");
  return wheelbase && shares.rear ? multiply(wheelbase, shares.rear) : null;
}

/** To the right of the centreline: Σ half a track × (right − left), over the total. */
function yCg(car: Car | null, loads: LoadsByName): Uncertain | null {
  const { lf, rf, lr, rr, total: whole } = loads;
  const [front, rear] = [lengthOf(car, "track_front"), lengthOf(car, "track_rear")];
  if (!front || !rear || !lf || !rf || !lr || !rr || !whole?.value) return null;
  const moment = (track: Uncertain, right: Uncertain, left: Uncertain) =>
    multiply(track, weightedSum([right, left], [0.5, -0.5]));
  return divide(total([moment(front, rf, lf), moment(rear, rr, lr)]), whole);
}

type Length = "wheelbase" | "track_front" | "track_rear" | "tyre_radius_front" | "tyre_radius_rear";

/** A length of the car, m, with the doubt of its last digit; null while nobody gave it. */
export function lengthOf(car: Car | null, field: Length): Uncertain | null {
  const length = car?.[field];
  return length ? uncertain(length.value, { [`round:${car.id}:${field}`]: resolution(length.last_digit) }) : null;
}

function missing(record: WeighIn, shown: ReadonlyMap<Reading, Quantity>): Warned[] {
  const fields = LOOKS[record.layout].filter((name) => !shown.has(name));
  return fields.length > 0 ? [warned("reading_missing", { weigh_in: record.id, fields })] : [];
}

function aboveCapacity(
  garage: Garage,
  record: WeighIn,
  model: ScaleModel,
  shown: ReadonlyMap<Reading, Quantity>,
): Warned[] {
  const pads = PADS[garage.scales.get(model.id)?.kind ?? ""] ?? 1;
  const most = (model.capacity ?? Infinity) * Math.max(1, pads / LOOKS[record.layout].length);
  const fields = [...shown].filter(([, look]) => look.value > most).map(([field]) => field);
  return fields.map((field) => warned("above_capacity", { weigh_in: record.id, field, scale: model.id }));
}

function odd(record: WeighIn, loads: LoadsByName): Warned[] {
  const names = LOOKS[record.layout];
  if (!loads.total) return [];
  const mean = loads.total.value / names.length;
  const fields = names.filter((name) => {
    const load = loads[name]?.value ?? mean;
    return load < ODD[0] * mean || load > ODD[1] * mean;
  });
  return fields.length > 0 ? [warned("reading_odd", { weigh_in: record.id, fields })] : [];
}

/** What was taken for the scale because nobody checked or noted it. */
function assumed(garage: Garage, record: WeighIn, model: ScaleModel): Warned[] {
  if (record.official && record.scale === null) return [warned("official_scale_unnamed", { weigh_in: record.id })];
  const code = gainByClass(garage, model) ? "gain_by_class" : "gain_assumed";
  const found = model.assumed ? [warned(code, { scale: model.id })] : [];
  if (model.repeatability || model.of_car.freedom) return found;
  return [...found, warned("repeatability_assumed", { scale: model.id, kg: repeatability(garage, model) })];
}
