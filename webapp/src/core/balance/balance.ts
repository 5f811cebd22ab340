/**
 * Where the weight is: centre of gravity, axle and side shares, height and yaw inertia before and after any jobs.
 *
 * The one thing known is the car of a weigh-in, as it stood on the scales: where its weight stands by that weigh-in, how
 * much it is by all of them (`core/balance/weighedByAll`). Every other state of it differs by jobs, and a job is loads at
 * places (`core/balance/place`, `core/balance/moved`) put on a body or taken off it (`core/balance/body`):
 *
 *     start     before any job: the jobs then in the car are taken back
 *     weighed   as it stood on the scales that day
 *     now       with the jobs in the car today
 *     after     and with the jobs asked for, by default those chosen
 *
 * Loads on axles and sides follow from the statics of one rigid car: m (1 − x/L) on the front axle, m (½ − y/t) on the
 * left side, t the mean track. A car on four wheels has a fourth freedom, the cross weight, which spring seats and roll
 * stiffness set and no part's place tells: corner loads are given as weighed, and not invented for any other state.
 * The height above the ground is measured by lifting an axle or assumed from the track (`core/balance/height`).
 */

import "../../laterErrors";
import { order } from "../garage/order";
import { type Car, type Garage, type Part, type Warned, type WeighIn, warned } from "../garage/records";
import { inTrim, type JobNet, jobNets, jobsInCar, stateOf } from "../ledger/net";
import { divide, multiply, subtract, total, type Uncertain, uncertain, weightedSum } from "../numbers/uncertain";
import type { Standing } from "../standing/standing";
import { type Masses, masses } from "../weighing/weighing";
import { inOrder } from "../wholeCar/weighed";
import { type Loads, lengthOf, loadsOf } from "../wholeCar/weighIn";
import { aboutCar, aboutJobs, aboutLevels, reasonsOf } from "./balanceNotes";
import { type Body, changed, type Load } from "./body";
import { heightOf } from "./height";
import { type Change, changeOf, type Moved, movedBetween, type Sizes } from "./moved";
import { type Place, placeOf } from "./place";
import { byAll } from "./weighedByAll";

export type Corner = "lf" | "rf" | "lr" | "rr";
export const CORNERS: readonly Corner[] = ["lf", "rf", "lr", "rr"];
export type Side = "front" | "rear" | "left" | "right";

/**
 * What to ask of a garage. `jobs`: ids of those beyond the present, left out for all chosen ones of the trim.
 *
 * `weighIn`: id of the one to rest on alone, by default the last that tells most, as heavy as all of them say.
 * `height`: of the centre of gravity as weighed, m. `sizes`: part id → [length along x, width along y] in m, for its own inertia; else the part's record.
 */
export type Question = {
  readonly jobs?: readonly string[] | null;
  readonly weighIn?: string | null;
  readonly height?: Uncertain | null;
  readonly sizes?: Sizes;
};

/**
 * One state of the car: mass and centre of gravity, and what stands where.
 *
 * `loads` in kg by front, rear, left, right and the corners, as far as they can be known; `shares`: front, rear, left
 * and right as fractions of the mass. `reasons`: why "x", "y", "z" or "corners" is missing.
 */
export type CarState = {
  readonly body: Body;
  readonly loads: Readonly<Partial<Record<Side | Corner, Uncertain>>>;
  readonly shares: Readonly<Partial<Record<Side, Uncertain>>>;
  readonly reasons: Readonly<Record<string, Warned>>;
};
export type StateName = "start" | "weighed" | "now" | "after";

/**
 * `states` by name; `changes`: "done" leads from start to now, "planned" from now to after.
 *
 * `jobs`: those asked for and not yet in the car. `places`: of every part moved by a job now in the car or asked for.
 * `reasons`: by name of a state, why it is not there.
 */
export type Balance = {
  readonly car: string | null;
  readonly trim: string;
  readonly weigh_in: string | null;
  readonly jobs: readonly string[];
  readonly states: Readonly<Partial<Record<StateName, CarState>>>;
  readonly changes: Readonly<Record<"done" | "planned", Change>>;
  readonly places: readonly Place[];
  readonly reasons: Readonly<Record<string, Warned>>;
  readonly warnings: readonly Warned[];
};

/** The car of the weigh-in everything rests on; `height`: what its height rests on, when nobody gave it. */
export type Base = {
  readonly record: WeighIn;
  readonly loads: Loads;
  readonly body: Body;
  readonly height: Warned | null;
};
type Nets = ReadonlyMap<string, JobNet>;
type Lists = readonly (readonly [StateName, readonly string[]])[];
type Told = Pick<Balance, "states" | "reasons">;

/**
 * The balance of the garage's car. Never throws over data: what cannot be told has a reason.
 *
 * `known`, `stand`: the garage's masses and its standing, when they are at hand already.
 */
export function balance(
  garage: Garage,
  question: Question = {},
  known: Masses = masses(garage),
  stand: Standing | null = null,
): Balance {
  const [nets, sizes] = [jobNets(garage, known), question.sizes ?? {}];
  const base = baseOf(garage, question, nets, known, stand);
  const now = jobsInCar(garage).map((job) => job.id);
  const jobs = askedOf(garage, question, now);
  const after = [...now, ...jobs];
  const told = statesOf(
    garage,
    nets,
    base,
    [
      ["start", []],
      ["now", now],
      ["after", after],
    ],
    sizes,
  );
  const step = (of: StateName, old: readonly string[], new_: readonly string[]) =>
    changeOf(garage, told.states[of]?.body ?? null, movedBetween(garage, nets, old, new_, sizes));
  const changes = { done: step("start", [], now), planned: step("now", now, after) };
  const places = placesOf(garage, nets, after);
  return {
    car: garage.car?.id ?? null,
    trim: garage.trim,
    weigh_in: base?.record.id ?? null,
    jobs,
    ...told,
    changes,
    places,
    warnings: [
      ...(base?.loads.warnings ?? []),
      ...unknownJobs(garage, question),
      ...aboutJobs(nets, after, places),
      ...aboutLevels(Object.values(changes)),
      ...aboutCar(garage, base),
    ],
  };
}

function askedOf(garage: Garage, question: Question, now: readonly string[]): string[] {
  if (question.jobs) return [...new Set(question.jobs)].filter((job) => garage.jobs.has(job) && !now.includes(job));
  const chosen = [...garage.jobs.values()].filter((job) => stateOf(job) === "chosen" && inTrim(job, garage.trim));
  return chosen.map((job) => job.id);
}

function unknownJobs(garage: Garage, question: Question): Warned[] {
  const jobs = (question.jobs ?? []).filter((job) => !garage.jobs.has(job));
  return jobs.length > 0 ? [warned("balance_job_unknown", { jobs })] : [];
}

/** The weigh-in asked for; else the last with a confirmed list of jobs and an axle share; else the last of any. */
function baseOf(garage: Garage, question: Question, nets: Nets, known: Masses, stand: Standing | null): Base | null {
  const asked = question.weighIn ?? null;
  const records = asked === null ? inOrder(garage) : [garage.weigh_ins.get(asked)].filter((record) => !!record);
  const whole = records.flatMap((record) => {
    const loads = loadsOf(garage, record, known);
    return loads.loads.total ? [{ record, loads, mass: loads.loads.total }] : [];
  });
  const best = whole.filter(({ record, loads }) => record.jobs !== null && loads.loads.front);
  const found = (best.length > 0 ? best : whole).at(-1);
  if (!found) return null;
  const { record } = found;
  const isOneOfMany = asked === null && records.length > 1;
  const loads = isOneOfMany ? byAll(garage, record, found.loads, known, stand) : found.loads;
  const mass = loads.loads.total ?? found.mass;
  const given = question.height ? { value: question.height, note: null } : null;
  const height = given ?? heightOf(garage, record, nets, known, question.sizes);
  const body = { mass, x: loads.x_cg, y: loads.y_cg, z: height.value };
  return { record, loads, body, height: height.note };
}

/** Every state that can be told, and why the others cannot. */
function statesOf(garage: Garage, nets: Nets, base: Base | null, lists: Lists, sizes: Sizes): Told {
  const names = lists.map(([name]) => name);
  if (!base) return { states: {}, reasons: forAll(["weighed", ...names], warned("no_weigh_in")) };
  const weighed = stateOfCar(garage.car, base, []);
  const then = base.record.jobs;
  if (then === null) {
    return { states: { weighed }, reasons: forAll(names, warned("jobs_not_confirmed", { weigh_in: base.record.id })) };
  }
  const all = lists.map(([name, jobs]) => {
    return [name, stateOfCar(garage.car, base, movedBetween(garage, nets, then, jobs, sizes))] as const;
  });
  const found = all.filter(([, { body }]) => body.mass.value > 0);
  const lost = all.filter(([, { body }]) => body.mass.value <= 0).map(([name]) => name);
  return { states: { weighed, ...Object.fromEntries(found) }, reasons: forAll(lost, warned("nothing_left")) };
}

function forAll(names: readonly string[], reason: Warned): Record<string, Warned> {
  return Object.fromEntries(names.map((name) => [name, reason]));
}

function stateOfCar(car: Car | null, base: Base, moves: readonly Moved[]): CarState {
  const body = changed(
    base.body,
    moves.map(({ load }) => load),
  );
  const sides = sideLoads(car, base, moves, body);
  const shares = Object.entries(sides).flatMap(([name, load]) => {
    return body.mass.value === 0 ? [] : [[name, divide(load, body.mass)] as const];
  });
  const corners = CORNERS.flatMap((name) => {
    const load = base.loads.loads[name];
    return load && moves.length === 0 ? [[name, load] as const] : [];
  });
  const loads = { ...sides, ...Object.fromEntries(corners) };
  return { body, loads, shares: Object.fromEntries(shares), reasons: reasonsOf(car, base, body, loads) };
}

/** Front, rear, left and right, by the lever's rule on top of what was weighed. */
function sideLoads(car: Car | null, base: Base, moves: readonly Moved[], body: Body): Partial<Record<Side, Uncertain>> {
  const found: Partial<Record<Side, Uncertain>> = {};
  const loads = moves.map(({ load }) => load);
  const pairs = [
    ["front", "rear"],
    ["left", "right"],
  ] as const;
  for (const [one, other] of pairs) {
    const load = sideOf(car, one, base.loads.loads[one] ?? null, loads);
    if (load) Object.assign(found, { [one]: load, [other]: subtract(body.mass, load) });
  }
  return found;
}

/** What the front axle or the left side carries, kg, with these loads on top of what it weighed. */
export function sideOf(
  car: Car | null,
  name: "front" | "left",
  weighed: Uncertain | null,
  loads: readonly Load[],
): Uncertain | null {
  const moved = loads.flatMap((load) => {
    const lever = leverOf(car, name, load);
    return lever ? [multiply(load.mass, lever)] : [];
  });
  return weighed && moved.length === loads.length ? total([weighed, ...moved]) : null;
}

/** What share of the load the front axle or the left side carries: 1 − x/L, ½ − y/t, t the mean track. */
export function leverOf(car: Car | null, name: "front" | "left", load: Load): Uncertain | null {
  const [whole, arm, start] = name === "front" ? [lengthOf(car, "wheelbase"), load.x, 1] : [trackOf(car), load.y, 0.5];
  return whole && arm ? subtract(uncertain(start), divide(arm, whole)) : null;
}

/** The mean track, m, with the doubt of its last digits. */
export function trackOf(car: Car | null): Uncertain | null {
  const items = (["track_front", "track_rear"] as const).flatMap((name) => {
    return lengthOf(car, name) ?? [];
  });
  return items.length > 0
    ? weightedSum(
        items,
        items.map(() => 1 / items.length),
      )
    : null;
}

function placesOf(garage: Garage, nets: Nets, jobs: readonly string[]): Place[] {
  const lines = jobs.flatMap((job) => nets.get(job)?.lines ?? []);
  const counts = [...new Map(lines.map((line) => [line.part, line.count]))].sort(([a], [b]) => order(a, b));
  return counts.map(([part, count]) => placeOf(garage.car, garage.parts.get(part) as Part, count));
}
