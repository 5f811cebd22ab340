/**
 * From what a scale showed to what one piece weighs, and how sure that is.
 *
 * Every weighing tells the mass of ONE piece, by its method:
 *
 *     direct      shown
 *     difference  shown − shown_empty: a person with the part less the person alone; two looks
 *     container   shown − shown_empty: full less empty; two looks
 *     batch       shown ÷ pieces: equal pieces weighed together, each as uncertain as the batch, ÷ pieces
 *     ends        shown + shown_far: one end at a time for what is too long. The part lies level on two supports, one
 *                 on the scale, the other a block of the same height, both at the same places for both looks; by the
 *                 lever's rule the two supports carry the whole between them, wherever its centre is; two looks
 *
 * (`pieces` divides in every method.) The scale's gain acts on the net, so a difference carries no error of the
 * person's own weight. A look read again counts as the mean of its readings (`repeats`). Looks at one load on one scale
 * that show the same share their rounding; several weighings of one part make a weighted mean. Without a weighing, a
 * part has what was claimed of it (`claims`), less what this garage's claims have run off by (`lessons`). Weighed beats
 * claimed.
 */

import { type Driver, type Garage, type Part, type Warned, type Weighing, warned } from "../garage/records";
import { dot } from "../numbers/plain";
import type { Quantity } from "../numbers/quantity";
import { type Uncertain, uncertain } from "../numbers/uncertain";
import { claimed } from "./claims";
import { type Lessons, learns, lessonsOf } from "./lessons";
import { weightedMean } from "./mean";
import { averaged, counted, mean } from "./repeats";
import { distinctLooks, divisionFor, partRepeats, type ScaleModel, scaleModels, UNNAMED } from "./scale";

export type Basis = "weighed" | "worked_out" | "quoted" | "guessed";
export const BASES: readonly Basis[] = ["weighed", "worked_out", "quoted", "guessed"];
const NOTHING: readonly Warned[] = [];
const NEEDS: Readonly<Record<string, "shown_empty" | "shown_far" | "pieces">> = {
  difference: "shown_empty",
  container: "shown_empty",
  batch: "pieces",
  ends: "shown_far",
};

/**
 * One weighing, read: the mass of one piece, kg. `own` is the part of its doubt no other reading shares.
 *
 * `scale`: its id, or `UNNAMED`. `division`: that of the scale, per piece, kg; `division_assumed`: nobody noted it.
 * `mass`: the value with all its sources.
 */
export class Reading {
  readonly #gain: Uncertain;

  constructor(
    readonly weighing: string,
    readonly scale: string,
    readonly value: number,
    readonly own: number,
    readonly division: number,
    readonly division_assumed: boolean,
    readonly with_bolts: boolean | null,
    readonly warnings: readonly Warned[],
    gain: Uncertain,
  ) {
    this.#gain = gain;
  }

  get mass(): Uncertain {
    const sources: Record<string, number> = {};
    const { value: gain, sources: parts } = this.#gain;
    for (const source in parts) sources[source] = -this.value * ((parts[source] as number) / (1 + gain));
    sources[`round:${this.weighing}`] = this.own;
    return uncertain(this.value, sources);
  }
}

/**
 * What one piece of a part (or a driver) weighs, kg, with the trail that leads there.
 *
 * `mass` and `basis` are null when nobody weighed or claimed anything. `readings`: every weighing that could be read;
 * `weighings`: the ids of those the mass is made from. `spread` of the readings, kg; `ratio`: the Birge ratio the mass
 * was widened by, 1 when the readings agree.
 */
export type Mass = {
  readonly of: string;
  readonly mass: Uncertain | null;
  readonly basis: Basis | null;
  readonly weighings: readonly string[];
  readonly readings: readonly Reading[];
  readonly spread: number;
  readonly ratio: number;
  readonly warnings: readonly Warned[];
};

/**
 * The mass of every part and driver by id, and the model of every scale by id (`UNNAMED` among them).
 *
 * `lessons`: what the garage's claims have run off by, by basis, and is taken out of `of`.
 */
export type Masses = {
  readonly scales: ReadonlyMap<string, ScaleModel>;
  readonly of: ReadonlyMap<string, Mass>;
  readonly lessons: Lessons;
};

/** The mass of every part and every driver of the garage. */
export function masses(garage: Garage): Masses {
  const scales = scaleModels(garage);
  const of = new Map<string, Mass>();
  for (const part of garage.parts.values()) of.set(part.id, massOf(garage, part, scales));
  const lessons = learns(garage) ? lessonsOf(garage.parts.values(), of) : {};
  for (const part of garage.parts.values()) {
    const mass = of.get(part.id) as Mass;
    if (mass.basis && lessons[mass.basis]) of.set(part.id, { ...mass, mass: claimed(part, lessons)?.[0] ?? null });
  }
  for (const driver of garage.drivers.values()) of.set(driver.id, massOf(garage, driver, scales));
  return { scales, of, lessons };
}

/** The mass of one piece of a part, or of a driver: from its weighings, else as claimed. */
function massOf(garage: Garage, thing: Part | Driver, scales: ReadonlyMap<string, ScaleModel>): Mass {
  const weighings: Weighing[] = [];
  const readings: Reading[] = [];
  const warnings: Warned[] = [];
  for (const weighing of garage.weighings_of.get(thing.id) ?? []) {
    const result = readWeighing(weighing, scales.get(weighing.scale ?? UNNAMED) as ScaleModel, garage);
    if (result instanceof Reading) {
      weighings.push(weighing);
      readings.push(result);
    } else {
      warnings.push(result);
    }
  }
  if (readings.length > 0) return weighed(garage, thing, weighings, readings, scales, warnings);
  const claim = claimed(thing);
  const [mass, basis] = claim ?? [null, null];
  return { of: thing.id, mass, basis, weighings: [], readings: [], spread: 0, ratio: 1, warnings };
}

function weighed(
  garage: Garage,
  thing: Part | Driver,
  weighings: readonly Weighing[],
  readings: readonly Reading[],
  scales: ReadonlyMap<string, ScaleModel>,
  warnings: Warned[],
): Mass {
  const shows = (weighing: Weighing) => looksOf(weighing, garage)[1].map(mean).join();
  const kept = new Set(distinctLooks(weighings, load, shows).map((weighing) => weighing.id));
  const gains = new Map(readings.map(({ scale }) => [scale, (scales.get(scale) as ScaleModel).gain]));
  const { mass, spread, ratio } = weightedMean(
    thing.id,
    readings.filter((reading) => kept.has(reading.weighing)),
    gains,
  );
  for (const reading of readings) for (const warning of reading.warnings) warnings.push(warning);
  if (ratio > 1) warnings.push(warned("readings_disagree", { of: thing.id, spread, ratio }));
  if (new Set(readings.map((reading) => Boolean(reading.with_bolts))).size > 1) {
    warnings.push(warned("bolts_differ", { of: thing.id }));
  }
  const ids = weighings.map((weighing) => weighing.id);
  return { of: thing.id, mass, basis: "weighed", weighings: ids, readings, spread, ratio, warnings };
}

function load(weighing: Weighing): string {
  return `${weighing.method}|${weighing.pieces ?? 1}|${weighing.scale ?? ""}`;
}

/** The mass of one piece, or the warning that says why there is none. `garage`: the one with its repeats, if any. */
export function readWeighing(weighing: Weighing, model: ScaleModel, garage?: Garage): Reading | Warned {
  const need = NEEDS[weighing.method];
  if (need !== undefined && weighing[need] === null) {
    return warned("missing_field", { list: "weighings", id: weighing.id, field: need });
  }
  const [signs, looks] = looksOf(weighing, garage);
  const net = dot(signs, looks.map(mean));
  if (net <= 0) return warned("not_positive", { weighing: weighing.id });
  const pieces = weighing.pieces ?? 1;
  const corrected = 1 + model.gain.value;
  const divisions = looks.map(([first]) => divisionFor(model, first as Quantity));
  const doubts = looks.map((look, at) => averaged(look, divisions[at] as number, partRepeats(model)));
  return new Reading(
    weighing.id,
    model.id,
    net / pieces / corrected,
    Math.sqrt(dot(doubts, doubts)) / pieces / corrected,
    Math.max(...divisions) / pieces,
    model.division === null,
    weighing.with_bolts,
    overCapacity(weighing, model),
    model.gain,
  );
}

/** How each look it took enters what all pieces together showed, and the readings of each that count. */
function looksOf(weighing: Weighing, garage?: Garage): [number[], (readonly Quantity[])[]] {
  const second = NEEDS[weighing.method];
  const look = (name: "shown" | "shown_empty" | "shown_far") =>
    garage ? counted(garage, weighing, name) : [weighing[name] as Quantity];
  if (second === undefined || second === "pieces") return [[1], [look("shown")]];
  return [
    [1, second === "shown_far" ? 1 : -1],
    [look("shown"), look(second)],
  ];
}

function overCapacity(weighing: Weighing, model: ScaleModel): readonly Warned[] {
  const { shown, shown_empty, shown_far } = weighing;
  const most = Math.max(shown.value, shown_empty?.value ?? 0, shown_far?.value ?? 0);
  if (model.capacity === null || most <= model.capacity) return NOTHING;
  return [warned("above_capacity", { weighing: weighing.id, scale: model.id })];
}
