/**
 * Fuel over a run: what the car weighs and how it balances at the start and after every lap.
 *
 * Where a class weighs a car as it leaves the course, the fuel burnt is weight lost, and the last lap decides. Fuel is
 * put on top of the car with an empty tank (`core/fuelRun/fuelGiven`). The density is one error source for all laps and
 * for every weigh-in: with as much fuel as the car was weighed with it cancels. What a lap takes is one source too, for
 * a heavy foot is heavy on every lap, so that lap k is unsure by k of it. Near an empty tank the doubt of the litres is
 * kept as it is, though no tank holds less than nothing: on the cautious side for a minimum.
 *
 * The start that keeps the weight in hand at the flag is found by stepping: the fuel still lacking there is added until
 * nothing is lacking. The doubt hardly depends on it, so every step brings it some ten times nearer.
 */

import { type Trimmed, withFuel } from "../balance/laden";
import type { Garage, Warned } from "../garage/records";
import type { Since } from "../ledger/since";
import { toNumber } from "../numbers/ratio";
import { add, rectangular, scale, subtract, type Uncertain, uncertain } from "../numbers/uncertain";
import { chanceUnder, inHand } from "../standing/official";
import { type Masses, masses } from "../weighing/weighing";
import type { Condition } from "../wholeCar/condition";
import { densityOf, massOf } from "../wholeCar/fuel";
import {
  filledOf,
  lapOf,
  leftAfter,
  litresOf,
  type ReadyToRun,
  type RunGiven,
  type RunQuestion,
  readyToRun,
  runsDryIn,
  spentIn,
  withinOf,
} from "./fuelGiven";
import { aboutRun, type RunReasons, reasonsOf } from "./fuelNotes";

const PASSES = 20;

/** Against the minimum: `margin` in kg, the chance of being shown under it, and what to keep above it, kg. */
export type Judged = { readonly margin: Uncertain; readonly chance_under: number; readonly in_hand: number };

/**
 * The car after `lap` laps; null where it just stands there with a full or an empty tank.
 *
 * `fuel`: m³ still in the tank, `fuel_mass`: kg; `burnt`: kg since the start. `weight`: kg with this fuel and the driver
 * as the class weighs. `judged`: null where the class does not count this fuel, or has no minimum. `balance`: as it runs.
 */
export type Moment = {
  readonly lap: number | null;
  readonly fuel: Uncertain;
  readonly fuel_mass: Uncertain;
  readonly burnt: Uncertain | null;
  readonly weight: Uncertain | null;
  readonly judged: Judged | null;
  readonly balance: Trimmed;
};

/**
 * `fuel`: m³ to start with. `decided_by`: "minimum", or "distance" when reaching the flag takes more than that.
 *
 * `lacking`: kg that a full tank leaves too little in hand at the flag; null when it is enough or does not get there.
 */
export type Least = {
  readonly fuel: number;
  readonly decided_by: "minimum" | "distance";
  readonly lacking: number | null;
};

/**
 * `laps`: from the start to the flag, or to the lap in which the tank `runs_dry`. `full`, `empty`: the tank so.
 *
 * `worst`: the lap after which it is likeliest shown under the minimum. `per_lap`: m³. `since`: the weigh-in the weight
 * rests on, and what was done since. `reasons`: why something is missing, by name: start, per_lap, weight, margin, least,
 * full, x, y, z, front, left.
 */
export type FuelRun = {
  readonly car: string | null;
  readonly trim: Garage["trim"];
  readonly condition: Condition;
  readonly minimum: number | null;
  readonly risk: number;
  readonly per_lap: Uncertain | null;
  readonly laps: readonly Moment[];
  readonly full: Moment | null;
  readonly empty: Moment;
  readonly worst: number | null;
  readonly runs_dry: number | null;
  readonly since: Since | null;
  readonly least: Least | null;
  readonly reasons: RunReasons;
  readonly warnings: readonly Warned[];
};

/**
 * The run of the garage's car in the garage's trim. Never throws over data: what cannot be told has a reason.
 *
 * `ready`: the car before any run, when it is at hand already; no question changes it but the class sheet's.
 */
export function fuelRun(
  garage: Garage,
  question: RunQuestion = {},
  known: Masses = masses(garage),
  ready: ReadyToRun = readyToRun(garage, known, question.class_sheet),
): FuelRun {
  const given = { ...ready, litres: litresOf(garage, question) };
  const { litres, dry } = given;
  const [laps, least] = [lapsOf(given), leastOf(given)];
  return {
    car: garage.car?.id ?? null,
    trim: garage.trim,
    condition: given.condition,
    minimum: dry.minimum,
    risk: dry.risk,
    per_lap: litres.per_lap && lapOf(litres),
    laps,
    full: litres.tank && momentOf(given, null, uncertain(toNumber(litres.tank)), null),
    empty: momentOf(given, null, uncertain(0), null),
    worst: worstOf(laps),
    runs_dry: runsDryIn(litres),
    since: dry.since,
    least,
    reasons: reasonsOf(given),
    warnings: aboutRun(garage, given, question, least?.fuel ?? null),
  };
}

function lapsOf(given: RunGiven): Moment[] {
  const { litres, kind } = given;
  const filled = filledOf(litres);
  if (!filled) return [];
  const start = massOf(filled, kind);
  const last = litres.per_lap ? (runsDryIn(litres) ?? litres.laps) : 0;
  return Array.from({ length: last + 1 }, (_, lap) => momentOf(given, lap, leftAfter(litres, filled, lap), start));
}

/** `start`: kg of fuel at the start. */
function momentOf(given: RunGiven, lap: number | null, fuel: Uncertain, start: Uncertain | null): Moment {
  const mass = massOf(fuel, given.kind);
  return {
    lap,
    fuel,
    fuel_mass: mass,
    burnt: start && subtract(start, mass),
    weight: given.weight && add(given.weight, mass),
    judged: judgedOf(given, mass),
    balance: withFuel(given.car, mass),
  };
}

/** The car with so much fuel (kg) against the minimum. */
function judgedOf(given: RunGiven, fuel: Uncertain): Judged | null {
  const { weight: dry, against, scale: official } = given;
  const { minimum, risk } = given.dry;
  if (!dry || !against || minimum === null || !official) return null;
  const weight = add(against, fuel);
  return {
    margin: subtract(add(dry, fuel), uncertain(minimum)),
    chance_under: chanceUnder(weight, minimum, official, given.spread),
    in_hand: inHand(weight, minimum, official, risk, given.spread),
  };
}

/** Of equal chances the lap with the least margin, of equal margins the first. */
function worstOf(laps: readonly Moment[]): number | null {
  const judged = laps.flatMap(({ lap, judged: of }) =>
    of ? [{ lap, chance: of.chance_under, kg: of.margin.value }] : [],
  );
  judged.sort((a, b) => b.chance - a.chance || a.kg - b.kg);
  return judged[0]?.lap ?? null;
}

/** The least start that reaches the flag for sure and keeps the weight in hand there. */
function leastOf(given: RunGiven): Least | null {
  const { litres, kind } = given;
  if (!litres.per_lap || litres.laps === 0) return null;
  const spent = toNumber(spentIn(litres));
  const reach = spent + withinOf(litres);
  if (!given.scale) return { fuel: reach, decided_by: "distance", lacking: null };
  const { low, high } = densityOf(kind);
  let left = 0;
  for (let pass = 0; pass < PASSES; pass++) left = Math.max(0, left + lackingAt(given, left) / (0.5 * (low + high)));
  const most = litres.tank && toNumber(litres.tank) - spent;
  const lacking = most !== null && most >= 0 ? lackingAt(given, most) : 0;
  return {
    fuel: Math.max(reach, spent + left),
    decided_by: spent + left > reach ? "minimum" : "distance",
    lacking: lacking > 0 ? lacking : null,
  };
}

/** What is lacking in hand at the flag, kg, with so much fuel (m³) left there. */
function lackingAt(given: RunGiven, left: number): number {
  const { litres, kind } = given;
  const doubt = { ...scale(lapOf(litres), -litres.laps).sources, "run:start": rectangular(litres.start_within) };
  const judged = judgedOf(given, massOf(uncertain(left, doubt), kind));
  return judged ? judged.in_hand - judged.margin.value : 0;
}
