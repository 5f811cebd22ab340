/** What a run on fuel says beside its figures: why one is missing, and what should be known of the litres. */

import "../../laterErrors";
import type { LadenReasons } from "../balance/laden";
import { type Garage, type Warned, warned } from "../garage/records";
import { add, compare, negate, toNumber } from "../numbers/ratio";
import { MOST_LAPS, type RunGiven, type RunQuestion, runsDryIn, spentIn, withinOf } from "./fuelGiven";

type Missing = "start" | "per_lap" | "weight" | "margin" | "least" | "full";
export type RunReasons = Readonly<Partial<Record<Missing, Warned>>> & LadenReasons;

/** Why an answer is missing, by name. */
export function reasonsOf({ litres, dry, condition, car }: RunGiven): RunReasons {
  const found: Partial<Record<Missing, Warned>> = {};
  if (dry.reasons.weight) found.weight = dry.reasons.weight;
  if (dry.reasons.margin) found.margin = dry.reasons.margin;
  if (condition.fuel !== "as_it_is") found.margin = warned(`fuel_class_${condition.fuel}`);
  if (!litres.start) found.start = warned("fuel_start_unknown");
  if (!litres.tank) found.full = warned("tank_size_unknown");
  if (!litres.per_lap) found.per_lap = warned("fuel_lap_unknown");
  if (!litres.per_lap || litres.laps === 0) found.least = warned(litres.per_lap ? "fuel_no_laps" : "fuel_lap_unknown");
  return { ...found, ...car.reasons };
}

/** What should be known of the weight, then of the litres, then of the balance. `least`: m³ to start with. */
export function aboutRun(garage: Garage, given: RunGiven, question: RunQuestion, least: number | null): Warned[] {
  const weight = [...given.condition.warnings, ...given.dry.warnings];
  if (!garage.car?.fuel_kind) weight.push(warned("fuel_kind_unknown"));
  const said = [...weight, ...aboutLitres(given, question, least), ...given.car.warnings];
  const texts = said.map((warning) => JSON.stringify(warning));
  return said.filter((_, at) => texts.indexOf(texts[at] as string) === at);
}

function aboutLitres(given: RunGiven, question: RunQuestion, least: number | null): Warned[] {
  const { tank, per_lap, laps } = given.litres;
  const dry = runsDryIn(given.litres);
  const isAbove = (volume: typeof tank | undefined) => !!volume && !!tank && compare(volume, tank) > 0;
  const said: [boolean, Warned][] = [
    [isAbove(question.start?.exact), warned("fuel_start_above_tank")],
    [isAbove(per_lap), warned("fuel_lap_above_tank")],
    [laps === 0, warned("fuel_no_laps")],
    [(question.laps ?? 0) > MOST_LAPS, warned("fuel_many_laps", { most: MOST_LAPS })],
    [isAssumed(given, question), warned("fuel_run_assumed")],
    [dry !== null, warned("fuel_runs_dry", { lap: dry })],
    [mayRunDry(given), warned("fuel_may_run_dry")],
    [least !== null && !!tank && least > toNumber(tank), warned("fuel_least_above_tank")],
  ];
  return said.flatMap(([isSo, warning]) => (isSo ? [warning] : []));
}

/** Whether nobody said how closely the start or the laps are known. */
function isAssumed({ litres }: RunGiven, question: RunQuestion): boolean {
  const startAssumed = !!litres.start && !question.start_within;
  return startAssumed || (!!litres.per_lap && litres.laps > 0 && !question.per_lap_within);
}

/** Whether the tank lasts to the flag, but not if start and laps are as far off as they may be. */
function mayRunDry({ litres }: RunGiven): boolean {
  const { start, per_lap, laps } = litres;
  if (!start || !per_lap || laps === 0 || runsDryIn(litres) !== null) return false;
  return toNumber(add(start, negate(spentIn(litres)))) < withinOf(litres);
}
