/**
 * Ballast: how many blocks at which of the allowed places, found exactly.
 *
 * The car must come to the minimum and its guard, with its front and left shares inside their ranges. Multiplied out by
 * the total, every one of these is linear in the numbers of blocks, so the best choice is an integer programme
 * (`core/programme`). Masses are counted in whole hundredths of a milligram, and choices are compared in whole grams of
 * mass and tenths of a kilogram times a metre of moment: first the least mass, then the lowest, then the least effect on
 * cross weight; or the lowest centre, or the least effect on cross weight, first, under a ceiling for the total.
 *
 * Axes: x rearward from the front axle, y to the right, z up. A block of mass w adds w(1 − x/L) to the front and
 * w(½ − y/t) to the left, t the mean track. On springs it moves cross weight by w y (κ/t_f − (1 − κ)/t_r), κ the front's
 * share of roll stiffness: whatever κ is, that is least where Σ w y is nearest to nothing.
 */

import {
  type Ballast, type Carried, type Place, type Share, type Wanted, meanTrack, toldOf,
} from "./ballastAnswer";
import { type Found, type Row, least } from "./programme";
import { type Warned, warned } from "./records";
import { showMass } from "./shown";

export type { Ballast, Carried, Place, Share, Wanted } from "./ballastAnswer";

const MOST_PLACES = 8;
const MOST_BLOCKS = 10_000;
const GRAM = 1e5; // masses are compared in whole grams
const STEP = 1e7; // moments in tenths of a kg m, which move the centre of a car by a tenth of a millimetre
const FINE = 10_000; // steps of a metre in which the height of the centre is compared

type Aim = "mass" | "height" | "cross" | "centre";
type GoalCode = "ballast_short" | "ballast_over" | ShareCode;
type ShareCode = `ballast_${"front" | "left"}_${"low" | "high"}`;
type Goal = { readonly code: GoalCode; readonly row: Row };
type Costs = Readonly<Record<"mass" | "height" | "cross", readonly number[]>>;
type Reached = { readonly found: Found; readonly kept: readonly Row[] };

/** The best choice, the nearest one with what it misses, or why there is none to look for. */
export function ballast(car: Carried, places: readonly Place[], wanted: Wanted): Ballast | Warned {
  const trouble = troubleOf(car, places, wanted);
  if (trouble) return trouble;
  const goals = goalsOf(car, places, wanted);
  const limits = places.map(({ most }) => most);
  let found = best(car, places, wanted, goals.map(({ row }) => row), limits);
  let missing: Warned[] = [];
  if (found.length === 0) {
    const near = nearest(goals, limits);
    missing = near.missing;
    found = best(car, places, wanted, near.rows, limits);
  }
  const counts = found.at(-1)?.counts ?? places.map(() => 0);
  return toldOf(car, places, counts, missing, found.every(({ proven }) => proven));
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

/** Whole hundredths of a milligram, or those times a metre. */
function whole(kilograms: number): number {
  return Math.floor(kilograms * 1e8 + 0.5);
}

/** What is wanted as rows, the first to be given up last. The code says that a row does not hold. */
function goalsOf(car: Carried, places: readonly Place[], wanted: Wanted): Goal[] {
  const total = car.total.value;
  const blocks = places.map(({ block }) => whole(block));
  const least = { weights: blocks.map((block) => -block), most: -whole(wanted.least - total) };
  const goals: Goal[] = [{ code: "ballast_short", row: least }];
  if (wanted.most !== null) goals.push({ code: "ballast_over", row: { weights: blocks, most: whole(wanted.most - total) } });
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
  name: "front" | "left", load: number, total: number, [low, high]: Share, parts: readonly (readonly [number, number])[],
): Goal[] {
  const atLeast = { weights: parts.map(([block, part]) => whole(block * (low - part))), most: whole(load - low * total) };
  const atMost = { weights: parts.map(([block, part]) => whole(block * (part - high))), most: whole(high * total - load) };
  return [{ code: `ballast_${name}_low`, row: atLeast }, { code: `ballast_${name}_high`, row: atMost }];
}

/** One aim after the other, each under what the ones before reached; empty when the rows allow nothing. */
function best(
  car: Carried, places: readonly Place[], wanted: Wanted, rows: readonly Row[], limits: readonly number[],
): Found[] {
  const costs = {
    mass: places.map(({ block }) => whole(block * 1)),
    height: places.map(({ block, z }) => whole(block * z)),
    cross: places.map(({ block, y }) => whole(block * y)),
  };
  const start: Share = [whole(car.total.value), whole(car.total.value * (car.height ?? 0))];
  const solved: Found[] = [];
  const kept = [...rows];
  for (const aim of aimsOf(wanted)) {
    const reached = reach(aim, costs, start, kept, limits);
    if (reached === null) return [];
    solved.push(reached.found);
    kept.push(...reached.kept);
  }
  return solved;
}

const AIMS: Readonly<Record<Wanted["prefer"], readonly Aim[]>> = {
  mass: ["mass", "height", "cross"],
  centre: ["centre", "mass", "cross"],
  cross: ["cross", "mass", "height"],
};

function aimsOf({ prefer, most }: Wanted): readonly Aim[] {
  return most !== null || prefer === "mass" ? AIMS[prefer] : ["mass", ...AIMS[prefer]];
}

/** The best for one aim, and rows that keep it, to a step. */
function reach(
  aim: Aim, costs: Costs, start: Share, rows: readonly Row[], limits: readonly number[],
): Reached | null {
  if (aim === "cross") return smallest(costs.cross, rows, limits);
  if (aim === "centre") return lowest(costs, start, rows, limits);
  const step = aim === "mass" ? GRAM : STEP;
  const found = least(costs[aim], rows, limits, step);
  return found && { found, kept: [{ weights: costs[aim], most: Math.ceil(found.cost / step) * step }, found.row] };
}

/** The counts whose sum of costs is nearest to nothing, from above or from below; within a step is near enough. */
function smallest(costs: readonly number[], rows: readonly Row[], limits: readonly number[]): Reached | null {
  const turned = costs.map((cost) => -cost);
  const above = least(costs, [...rows, { weights: turned, most: 0 }], limits, STEP, STEP);
  const isNear = above !== null && above.cost <= STEP;
  const below = isNear ? null : least(turned, [...rows, { weights: costs, most: 0 }], limits, STEP, STEP);
  const found = below === null || (above !== null && above.cost <= below.cost) ? above : below;
  if (found === null) return null;
  const most = Math.max(Math.ceil(found.cost / STEP), 1) * STEP;
  return { found, kept: [{ weights: costs, most }, { weights: turned, most }] };
}

/**
 * The lowest centre of the whole car, to a tenth of a millimetre.
 *
 * The height is a ratio. Whether it can be so many tenths or less is a linear question, and the best answer to it leads
 * to the next lower one to ask (Dinkelbach, Management Science 13, 1967) until there is none.
 */
function lowest({ mass, height }: Costs, start: Share, rows: readonly Row[], limits: readonly number[]): Reached | null {
  const [carried, moment] = start;
  let reached: Reached | null = null;
  let found = least(height, rows, limits, STEP);
  while (found !== null) {
    const ratio = (FINE * (moment + dot(height, found.counts))) / (carried + dot(mass, found.counts));
    const tenths = Math.ceil(ratio);
    reached = { found, kept: [atMost(tenths, mass, height, start)] };
    const lower = atMost(tenths - 1, mass, height, start);
    found = least(lower.weights, [...rows, lower], limits, FINE * STEP);
  }
  return reached;
}

/** The centre is so many tenths of a millimetre high or lower. */
function atMost(tenths: number, mass: readonly number[], height: readonly number[], [carried, moment]: Share): Row {
  const weights = height.map((z, at) => FINE * z - tenths * (mass[at] as number));
  return { weights, most: tenths * carried - FINE * moment };
}

function dot(weights: readonly number[], counts: readonly number[]): number {
  return weights.reduce((sum, weight, at) => sum + weight * (counts[at] as number), 0);
}

/** Every goal in its turn as nearly as the ones before allow, and by how many kilograms some are missed. */
function nearest(goals: readonly Goal[], limits: readonly number[]): { rows: Row[]; missing: Warned[] } {
  const rows: Row[] = [];
  const missing: Warned[] = [];
  for (const { code, row } of goals) {
    const found = least(row.weights, rows, limits, GRAM, row.most);
    const over = (found ? found.cost : 0) - row.most;
    if (over > 0) missing.push(warned(code, { kg: over / 1e8, text: showMass(over / 1e8, "kg") }));
    rows.push({ weights: row.weights, most: row.most + Math.max(0, Math.ceil(over / GRAM) * GRAM) });
  }
  return { rows, missing };
}
