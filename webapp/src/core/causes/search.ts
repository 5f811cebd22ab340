/**
 * The search for causes: every single slip the records could hide, tried against what does not fit.
 *
 * Each slip has its likelihood from all looks (`core/causes/looks`), so that its size and its place both count, and its
 * odds beforehand (`generated/slipPriors`). What is told are kinds of slip, each with the odds of all its instances, and
 * the likeliest instances of it: three lines are three different stories. Nothing is accused: a spare wheel and a
 * misread tank of one size are the same to a scale.
 */

import { PRIORS, UNSPECIFIC } from "../../generated/slipPriors";
import type { Fusion } from "../fusion/fusion";
import type { Garage } from "../garage/records";
import type { Nets } from "../ledger/since";
import { plainSum } from "../numbers/plain";
import type { Masses } from "../weighing/weighing";
import { Looks, type Shape } from "./looks";
import { tryJobs } from "./ofJobs";
import { tryWeighIns } from "./ofWeighIns";
import { tryWeighings } from "./ofWeighings";
import { type Code, type Slip, Tried } from "./slip";
import { trailOf } from "./trail";

const LINES = 3;
const INSTANCES = 3;
const LEAST = 0.05; // what is less likely is not told

type Told = readonly ArrayLike<number>[];

/** One slip and its odds. */
export type Likely = { readonly slip: Slip; readonly odds: number };

/** A kind of slip (`code`) with its odds, 0 to 1, against all others and none. `likely`: its likeliest instances. */
export type Cause = { readonly code: Code; readonly odds: number; readonly likely: readonly Likely[] };

/** What the search reads beside what the looks tell. `now`: the jobs in the car now. */
export type Asked = {
  readonly garage: Garage;
  readonly known: Masses;
  readonly nets: Nets;
  readonly now: readonly string[];
};

/**
 * The likeliest kinds of slip, at most three, and "chance" among them.
 *
 * `told`: what the looks tell beside their mean and what else is named.
 */
export function causesOf(asked: Asked, fusion: Fusion, told: Told): Cause[] {
  return toldOf(everyOdds(asked, fusion, told));
}

/** The same of all that is named together, where without the likeliest single slip nothing would stand out. */
export function causesOfAll(asked: Asked, fusion: Fusion, told: Told): Cause[] | null {
  const tried = everySlip(asked, fusion, told);
  return looksOf(fusion, told).without(tried.likeliest()).nameNothing() ? toldOf(tried.odds()) : null;
}

/** The odds of every slip that says anything, and of none ("chance"); together one. */
export function everyOdds(asked: Asked, fusion: Fusion, told: Told): [Slip, number][] {
  return everySlip(asked, fusion, told).odds();
}

/** Every slip the records could hide, with how well it explains the looks. */
function everySlip(asked: Asked, fusion: Fusion, told: Told): Tried {
  const trail = trailOf(asked, asked.now, fusion.evidence);
  const looks = looksOf(fusion, told);
  const tried = new Tried();
  tried.add({ likely: 0, shape: looks.singles.at(-1) as Shape, size: 0 }, "chance", {});
  for (const each of [tryWeighIns, tryWeighings, tryJobs]) each(trail, looks, tried);
  return tried;
}

function looksOf({ values }: Fusion, told: Told): Looks {
  const rows = told.map((row) => Array.from(row));
  return new Looks(rows, values);
}

function toldOf(odds: readonly [Slip, number][]): Cause[] {
  const byCode = new Map<Code, Likely[]>();
  for (const [slip, each] of odds) byCode.set(slip.code, [...(byCode.get(slip.code) ?? []), { slip, odds: each }]);
  const order = Object.keys(PRIORS);
  const kinds = [...byCode].map(([code, likely]) => {
    return { code, odds: plainSum(likely.map((each) => each.odds)), likely: likeliest(likely) };
  });
  kinds.sort((a, b) => graded(b.odds) - graded(a.odds) || order.indexOf(a.code) - order.indexOf(b.code));
  const slips = new Set(kinds.filter(({ code }) => code !== "chance").slice(0, LINES));
  return kinds.filter((cause) => cause.odds >= LEAST && (cause.code === "chance" || slips.has(cause)));
}

function likeliest(likely: readonly Likely[]): Likely[] {
  const ordered = [...likely].sort((a, b) => graded(b.odds) - graded(a.odds)).slice(0, INSTANCES);
  return ordered.filter(({ odds }, at) => at === 0 || odds >= LEAST);
}

/** For an order that does not hang on the last digit. */
const graded = (odds: number): number => Math.floor(odds * 1e9);

/** Whether something that a record tells of is the likeliest. */
export function isExplained([first]: readonly Cause[]): boolean {
  return first !== undefined && !(UNSPECIFIC as readonly Code[]).includes(first.code);
}
