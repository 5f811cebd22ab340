/**
 * Ballast: how many blocks at which of the allowed places, found exactly.
 *
 * The car must come to the minimum and its guard, with its front and left shares inside their ranges. Multiplied out by
 * the total, every one of these is linear in the numbers of blocks, so the best choice is an integer programme
 * (`core/ballast/programme`). Masses are counted in whole hundredths of a milligram, and choices are compared in whole
 * grams of mass and tenths of a kilogram times a metre of moment: first the least mass, then the lowest, then the least
 * effect on cross weight; or the lowest centre, or the least effect on cross weight, first, under a ceiling for the
 * total.
 *
 * Axes: x rearward from the front axle, y to the right, z up. A block of mass w adds w(1 − x/L) to the front and
 * w(½ − y/t) to the left, t the mean track. On springs it moves cross weight by w y (κ/t_f − (1 − κ)/t_r), κ the front's
 * share of roll stiffness: whatever κ is, that is least where Σ w y is nearest to nothing.
 */

import "../../laterErrors";
import { type Warned, warned } from "../garage/records";
import { dot } from "../numbers/plain";
import { showMass } from "../numbers/shown";
import { type Ballast, type Carried, meanTrack, type Place, type Share, toldOf, type Wanted } from "./ballastAnswer";
import { type Bounds, Effort, type Found, least, type Row } from "./programme";

export type { Ballast, Carried, Place, Share, Wanted } from "./ballastAnswer";

const MOST_PLACES = 8;
const MOST_BLOCKS = 10_000;
const KILOGRAM = 1e8; // whole steps in one, or in a kg m
const GRAM = 1e5; // masses are compared in whole grams
const MOMENT = 1e7; // heights in tenths of a kg m, which move the centre of a car by a tenth of a millimetre
const CROSS = 5e7; // effects on cross weight in halves of a kg m: a few hundredths of a kilogram at the wheels
const LOAD = 1e7; // a share that cannot be reached is missed by as few tenths of a kilogram as can be
const WORTH = 20; // kg of ballast that may be carried for every kg a share that cannot be reached comes nearer
const FINE = 10_000; // steps of a metre in which the height of the centre is compared

type Aim = "mass" | "height" | "cross" | "centre";
type GoalCode = "ballast_short" | "ballast_over" | ShareCode;
type ShareCode = `ballast_${"front" | "left"}_${"low" | "high"}`;
/** `step`: how nearly it is reached where it cannot be. */
type Goal = { readonly code: GoalCode; readonly row: Row; readonly step: number };
type Costs = Readonly<Record<"mass" | "height" | "cross", readonly number[]>>;
type Reached = { readonly found: Found; readonly kept: readonly Row[] };

/** The best choice, the nearest one with what it misses, or why there is none to look for. */
export function ballast(car: Carried, places: readonly Place[], wanted: Wanted): Ballast | Warned {
  const trouble = troubleOf(car, places, wanted);
  if (trouble) return trouble;
  const task = taskOf(car, places);
  const goals = goalsOf(car, places, wanted);
  const rows = goals.map(({ row }) => row);
  const counts = best(task, wanted, rows) ?? best(task, wanted, nearest(task, goals)) ?? places.map(() => 0);
  return toldOf(car, places, counts, missingOf(goals, counts), task.effort.isProven);
}

function troubleOf(car: Carried, places: readonly Place[], wanted: Wanted): Warned | null {
  if (places.length > MOST_PLACES) return warned("ballast_many_places", { most: MOST_PLACES });
  const bad = places.find(({ block, most }) => !(block > 0 && most >= 0 && most <= MOST_BLOCKS));
  if (bad) return warned("ballast_bad_place", { place: bad.id });
  if ([wanted.front, wanted.left].some((share) => share && !isRange(share))) return warned("ballast_share_range");
  if (wanted.most !== null && wanted.most < wanted.least) return warned("ballast_ceiling");
  if (wanted.front && !(car.front && car.wheelbase)) return warned("ballast_no_front");
  if (wanted.left && !(car.left && car.track_front && car.track_rear)) return warned("ballast_no_left");
  return wanted.prefer === "centre" && car.height === null ? warned("ballast_no_height") : null;
}

function isRange([low, high]: Share): boolean {
  return low >= 0 && low <= high && high <= 1;
}

/** Whole steps of a hundredth of a milligram, or those times a metre. */
function whole(kilograms: number): number {
  return Math.floor(kilograms * KILOGRAM + 0.5);
}

/** What is wanted as rows, the first to be given up last. The code says that a row does not hold. */
function goalsOf(car: Carried, places: readonly Place[], wanted: Wanted): Goal[] {
  const total = car.total.value;
  const blocks = places.map(({ block }) => whole(block));
  const least = atMost(
    blocks.map((block) => -block),
    -whole(wanted.least - total),
  );
  const goals: Goal[] = [{ code: "ballast_short", row: least, step: GRAM }];
  if (wanted.most !== null)
    goals.push({ code: "ballast_over", row: atMost(blocks, whole(wanted.most - total)), step: GRAM });
  const { front, left, wheelbase } = car;
  const track = meanTrack(car);
  if (wanted.front && front && wheelbase) {
    const parts = places.map(({ block, x }) => [block, 1 - x / wheelbase] as const);
    goals.push(...shareGoals("front", front.value, total, wanted.front, parts));
  }
  if (wanted.left && left && track) {
    const parts = places.map(({ block, y }) => [block, 0.5 - y / track] as const);
    goals.push(...shareGoals("left", left.value, total, wanted.left, parts));
  }
  return goals;
}

/** `parts`: mass of a block and the share of it that this axle or side carries. */
function shareGoals(
  name: "front" | "left",
  load: number,
  total: number,
  [low, high]: Share,
  parts: readonly (readonly [number, number])[],
): Goal[] {
  const atLeast = atMost(
    parts.map(([block, part]) => whole(block * (low - part))),
    whole(load - low * total),
  );
  const over = atMost(
    parts.map(([block, part]) => whole(block * (part - high))),
    whole(high * total - load),
  );
  return [
    { code: `ballast_${name}_low`, row: atLeast, step: LOAD },
    { code: `ballast_${name}_high`, row: over, step: LOAD },
  ];
}

function atMost(weights: readonly number[], high: number): Row {
  return { weights, low: -Infinity, high };
}

/** Where several places take the same block, how many blocks of it there are in all is a whole number. */
function sumsOf(places: readonly Place[]): Row[] {
  return [...new Set(places.map(({ block }) => block))].flatMap((block) => {
    const alike = places.filter((place) => place.block === block);
    const weights = places.map((place) => (place.block === block ? 1 : 0));
    const high = alike.reduce((sum, { most }) => sum + most, 0);
    return alike.length > 1 ? [{ weights, low: 0, high, isWhole: true }] : [];
  });
}

/** What is searched: costs by aim, mass and moment of the car without ballast, limits, and what it may take. */
type Task = {
  readonly costs: Costs;
  readonly start: Share;
  readonly limits: Bounds;
  readonly sums: readonly Row[];
  readonly effort: Effort;
};

function taskOf(car: Carried, places: readonly Place[]): Task {
  const costs = {
    mass: places.map(({ block }) => whole(block)),
    height: places.map(({ block, z }) => whole(block * z)),
    cross: places.map(({ block, y }) => whole(block * y)),
  };
  const start: Share = [whole(car.total.value), whole(car.total.value * (car.height ?? 0))];
  const limits = { low: places.map(() => 0), high: places.map(({ most }) => most) };
  return { costs, start, limits, sums: sumsOf(places), effort: new Effort() };
}

/** One aim after the other, each under what the ones before reached; null when the rows allow nothing. */
function best(task: Task, wanted: Wanted, rows: readonly Row[]): readonly number[] | null {
  const kept = [...rows];
  if (wanted.prefer !== "mass" && wanted.more !== null) {
    const lightest = search(task, task.costs.mass, rows, GRAM);
    if (lightest === null) return null;
    kept.push(atMost(task.costs.mass, lightest.cost + whole(wanted.more)));
  }
  let found: Found | null = null;
  for (const aim of aimsOf(wanted)) {
    const reached = reach(aim, task, kept);
    if (reached === null) return found?.counts ?? null;
    found = reached.found;
    kept.push(...reached.kept);
  }
  return found && firstPlacesFirst(task, kept, found.counts);
}

const AIMS: Readonly<Record<Wanted["prefer"], readonly Aim[]>> = {
  mass: ["mass", "height", "cross"],
  centre: ["centre", "mass", "cross"],
  cross: ["cross", "mass", "height"],
};

/** Without a ceiling the mass comes first; of two choices of one mass the lower has the lower centre. */
function aimsOf({ prefer, most, more }: Wanted): readonly Aim[] {
  if (most !== null || more !== null) return AIMS[prefer];
  return prefer === "cross" ? ["mass", "cross", "height"] : AIMS.mass;
}

/** The best for one aim, and rows that keep it, to a step. */
function reach(aim: Aim, task: Task, rows: readonly Row[]): Reached | null {
  if (aim === "cross") return smallest(task, rows);
  if (aim === "centre") return lowest(task, rows);
  const step = aim === "mass" ? GRAM : MOMENT;
  const found = search(task, task.costs[aim], rows, step);
  return found && { found, kept: [atMost(task.costs[aim], Math.ceil(found.cost / step) * step)] };
}

function search(
  { limits, sums, effort }: Task,
  costs: readonly number[],
  rows: readonly Row[],
  step: number,
  enough?: number,
): Found | null {
  return least(costs, [...rows, ...sums], limits, effort, step, enough);
}

/** The counts whose sum of costs is nearest to nothing, from above or from below; within a step is near enough. */
function smallest(task: Task, rows: readonly Row[]): Reached | null {
  const costs = task.costs.cross;
  const turned = costs.map((cost) => -cost);
  const above = search(task, costs, [...rows, atMost(turned, 0)], CROSS, CROSS);
  const isNear = above !== null && above.cost <= CROSS;
  const below = isNear ? null : search(task, turned, [...rows, atMost(costs, 0)], CROSS, CROSS);
  const found = below === null || (above !== null && above.cost <= below.cost) ? above : below;
  if (found === null) return null;
  const most = Math.max(Math.ceil(found.cost / CROSS), 1) * CROSS;
  return { found, kept: [{ weights: costs, low: -most, high: most }] };
}

/**
 * The lowest centre of the whole car, to a tenth of a millimetre.
 *
 * The height is a ratio. Whether it can be so many tenths or less is a linear question, and the best answer to it leads
 * to the next lower one to ask (Dinkelbach, Management Science 13, 1967) until there is none.
 */
function lowest(task: Task, rows: readonly Row[]): Reached | null {
  const {
    costs: { mass, height },
    start: [carried, moment],
  } = task;
  let reached: Reached | null = null;
  let found = search(task, height, rows, MOMENT);
  while (found !== null) {
    const ratio = (FINE * (moment + dot(height, found.counts))) / (carried + dot(mass, found.counts));
    const tenths = Math.ceil(ratio);
    reached = { found, kept: [asLowAs(tenths, task)] };
    const lower = asLowAs(tenths - 1, task);
    found = search(task, lower.weights, [...rows, lower], FINE * MOMENT);
  }
  return reached;
}

/** The centre is so many tenths of a millimetre high or lower. */
function asLowAs(tenths: number, { costs: { mass, height }, start: [carried, moment] }: Task): Row {
  return atMost(
    height.map((z, at) => FINE * z - tenths * (mass[at] as number)),
    tenths * carried - FINE * moment,
  );
}

/** Of choices that are alike the one with the most at the first place, then at the second, and so on. */
function firstPlacesFirst(task: Task, rows: readonly Row[], counts: readonly number[]): readonly number[] {
  let [found, { limits }] = [counts, task];
  for (const at of counts.keys()) {
    const costs = counts.map((_, of) => (of === at ? -1 : 0));
    const more = search({ ...task, limits }, costs, rows, 1, -(limits.high[at] as number));
    if (more === null) return found;
    found = more.counts;
    limits = { low: withAt(limits.low, at, -more.cost), high: withAt(limits.high, at, -more.cost) };
  }
  return found;
}

function withAt(values: readonly number[], at: number, value: number): number[] {
  return values.map((other, of) => (of === at ? value : other));
}

/** Every goal in its turn, as near as the ones before allow, to a step; a share as near as is worth its weight. */
function nearest(task: Task, goals: readonly Goal[]): Row[] {
  const rows: Row[] = [];
  for (const { row, step } of goals) {
    let found = search(task, row.weights, rows, step, row.high);
    if (found && found.cost > row.high && step === LOAD) {
      const worth = row.weights.map((weight, at) => weight + Math.floor((task.costs.mass[at] as number) / WORTH));
      found = search(task, worth, rows, step) ?? found;
    }
    const over = Math.max(0, (found ? dot(row.weights, found.counts) : 0) - row.high);
    rows.push(atMost(row.weights, row.high + Math.ceil(over / step) * step));
  }
  return rows;
}

/** By how many kilograms which goals are missed. */
function missingOf(goals: readonly Goal[], counts: readonly number[]): Warned[] {
  const over = goals.map(({ code, row }) => ({ code, kg: (dot(row.weights, counts) - row.high) / KILOGRAM }));
  return over.flatMap(({ code, kg }) => (kg > 0 ? [warned(code, { kg, text: showMass(kg, "kg") })] : []));
}
