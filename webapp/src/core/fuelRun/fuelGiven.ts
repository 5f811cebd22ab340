/**
 * What a run on fuel is made from: the question, the litres with their doubt, and the car with an empty tank.
 *
 * The weight with an empty tank comes from `core/standing`, asked as if the class weighed so, whatever its own rule is.
 * Of its error sources only those are kept by name that fuel or the official scale share; all others are one.
 */

import { type Laden, laden } from "../balance/laden";
import { CERTAIN, type Spread } from "../fusion/mixture";
import type { ClassSheet, Garage } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { compare, divide, multiply, type Ratio, ratio, toNumber } from "../numbers/ratio";
import { rectangular, type Uncertain, u, uncertain, weightedSum } from "../numbers/uncertain";
import { type OfficialScale, weightBehind } from "../standing/official";
import { type Standing, standing } from "../standing/standing";
import type { Masses } from "../weighing/weighing";
import { type Condition, chosenSheet, conditionOf } from "../wholeCar/condition";

const LITRE = 0.001; // m³
const START_WITHIN = 0.5 * LITRE; // half-width of what is filled in by can or pump: common practice, no source
const LAP_WITHIN = 0.1; // half-width of what a lap takes, as a share of it: common practice, no source
export const MOST_LAPS = 500;
const NO_SHEET: ClassSheet = {
  id: "",
  car: null,
  name: null,
  minimum: null,
  driver: "out",
  fuel: "empty",
  fuel_stated: null,
  adders: null,
  scale_division: null,
  scale_rounding: null,
  risk: null,
};

/** The run. `start`: by default a full tank; `per_lap`: by default the car's own; with their half-widths. */
export type RunQuestion = {
  readonly start?: Quantity | null;
  readonly start_within?: Quantity | null;
  readonly per_lap?: Quantity | null;
  readonly per_lap_within?: Quantity | null;
  readonly laps?: number;
  readonly class_sheet?: string | null;
};

/** The run in m³, exactly: the `tank`, the `start` (no more than the tank) and a lap's; with their half-widths. */
export type Litres = {
  readonly tank: Ratio | null;
  readonly start: Ratio | null;
  readonly start_within: number;
  readonly per_lap: Ratio | null;
  readonly per_lap_within: number;
  readonly laps: number;
};

/**
 * The car before any run: `dry`: the standing with an empty tank, `weight` of it (kg) with few sources; `against`: the
 * same with the doubt of what the official scale would show. `against`, `scale`: null without a minimum, or where the
 * class does not count the fuel that is in the tank. `spread`: of what it would show. `car`: to be balanced.
 */
export type ReadyToRun = {
  readonly kind: string | null;
  readonly condition: Condition;
  readonly dry: Standing;
  readonly weight: Uncertain | null;
  readonly against: Uncertain | null;
  readonly scale: OfficialScale | null;
  readonly spread: Spread;
  readonly car: Laden;
};
export type RunGiven = ReadyToRun & { readonly litres: Litres };

/** The garage's car before any run, as its class weighs. `classSheet`: id; by default the newest of the car. */
export function readyToRun(garage: Garage, known: Masses, classSheet: string | null = null): ReadyToRun {
  const sheet = chosenSheet(garage, classSheet);
  const condition = conditionOf(garage, sheet, known);
  const dry = dryStanding(garage, sheet, known);
  const official = condition.fuel === "as_it_is" ? dry.official : null;
  const gain = official?.scale.gain.sources ?? {};
  return {
    kind: garage.car?.fuel_kind ?? null,
    condition,
    dry,
    weight: dry.weight && gathered(dry.weight, gain),
    against: official && gathered(weightBehind(official), gain),
    scale: official?.scale ?? null,
    spread: official?.spread ?? CERTAIN,
    car: laden(garage, condition, known, dry),
  };
}

function dryStanding(garage: Garage, sheet: ClassSheet | null, known: Masses): Standing {
  const empty: ClassSheet = sheet ? { ...sheet, fuel: "empty" } : NO_SHEET;
  const sheets = new Map(garage.class_sheets).set(empty.id, empty);
  return standing({ ...garage, class_sheets: sheets }, known, empty.id);
}

function gathered({ value, sources }: Uncertain, gain: Uncertain["sources"]): Uncertain {
  const all = Object.entries(sources);
  const isShared = (name: string) => Object.hasOwn(gain, name) || name === "fuel-density";
  const shared = Object.fromEntries(all.filter(([name]) => isShared(name)));
  const others = Object.fromEntries(all.filter(([name]) => !isShared(name)));
  return uncertain(value, { ...shared, "run:car": u(uncertain(0, others)) });
}

/** The litres of a run, what is not asked taken from the car. */
export function litresOf({ car }: Garage, question: RunQuestion): Litres {
  const tank = car?.tank_size?.exact ?? null;
  const asked = question.start?.exact ?? tank;
  const lap = question.per_lap ?? car?.fuel_per_lap ?? null;
  const perLap = lap?.exact.n ? lap : null;
  return {
    tank,
    start: asked && tank && compare(asked, tank) > 0 ? tank : asked,
    start_within: question.start_within?.value ?? START_WITHIN,
    per_lap: perLap?.exact ?? null,
    per_lap_within: question.per_lap_within?.value ?? LAP_WITHIN * (perLap?.value ?? 0),
    laps: Math.max(0, Math.min(question.laps ?? 0, MOST_LAPS)),
  };
}

/** What all laps take, exactly; nothing when a lap is not known. */
export function spentIn({ per_lap, laps }: Litres): Ratio {
  return per_lap ? multiply(ratio(BigInt(laps)), per_lap) : ratio(0n);
}

/** The lap in which nothing is left, when that is before the flag. */
export function runsDryIn(litres: Litres): number | null {
  const { start, per_lap } = litres;
  if (!start || !per_lap || compare(start, spentIn(litres)) >= 0) return null;
  const laps = divide(start, per_lap);
  return Number(laps.n / laps.d) + 1;
}

/** How far start and all laps together may be off. */
export function withinOf({ laps, per_lap_within, start_within }: Litres): number {
  return laps * per_lap_within + start_within;
}

/** What the run starts with. */
export function filledOf({ start, start_within }: Litres): Uncertain | null {
  return start && uncertain(toNumber(start), { "run:start": rectangular(start_within) });
}

/** What a lap takes; nothing when that is not known. */
export function lapOf({ per_lap, per_lap_within }: Litres): Uncertain {
  return uncertain(per_lap ? toNumber(per_lap) : 0, { "run:lap": rectangular(per_lap_within) });
}

/** What is left of a filling after so many laps; where nothing is, it keeps its doubt. */
export function leftAfter(litres: Litres, filled: Uncertain, lap: number): Uncertain {
  const left = weightedSum([filled, lapOf(litres)], [1, -lap]);
  return uncertain(Math.max(0, left.value), left.sources);
}
