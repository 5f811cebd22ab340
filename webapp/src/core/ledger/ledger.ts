/**
 * The ledger: where the weight went, by job, stage, zone, state and trim, and how well that is known.
 *
 * Nothing here is rounded and every sum is made of lines, not of other sums, so a total is the same whichever way it is
 * cut. A part without a mass counts zero and is named. `shares` says how much of what was moved in the car now is
 * weighed and how much is claimed; money and hours are exact.
 */

import { order } from "../garage/order";
import { type Garage, type Job, type Part, type Warned, warned } from "../garage/records";
import { add, type Ratio, ZERO } from "../numbers/ratio";
import { fsum } from "../numbers/uncertain";
import { type ScaleModel, UNNAMED } from "../weighing/scale";
import { BASES, type Basis, type Mass, type Masses, masses } from "../weighing/weighing";
import {
  type Effort,
  effortOf,
  inTrim,
  type JobNet,
  jobNets,
  jobsInCar,
  type Line,
  type MassTotal,
  massTotal,
  STATES,
  type State,
  type Total,
  type Trim,
  unweighedOf,
} from "./net";
import { Running } from "./running";

/** One stage (null: jobs without one) and what its jobs of each state come to in the trim asked for. */
export type StageTotal = { readonly stage: string | null; readonly states: Readonly<Record<State, Total>> };

/** One zone (null: parts without one) and what moved there, of the jobs in the car now. */
export type ZoneTotal = { readonly zone: string | null; readonly mass: MassTotal };

/** The net of the car after this job was fitted, kg, with its standard uncertainty. */
export type Step = {
  readonly job: string;
  readonly fitted_on: string | null;
  readonly value: number;
  readonly u: number;
};

/** What sold parts brought, exact, and the parts. */
export type Brought = { readonly money: Ratio; readonly parts: readonly string[] };

/**
 * `now`: all jobs in the car, for `trim`; `in_car` names them in order of fitting, and `cumulative` follows it.
 *
 * `by_state` and `by_stage` count jobs of the trim; `by_trim` splits all fitted jobs into what stays for the road
 * ("both") and what is put in for the event. `by_zone`, `unsprung`, `rotating`, `shares` (basis → share of the
 * kilograms moved, 0 to 1) and `unweighed` (part ids) are of the jobs in the car now. `spent`: fitted and undone jobs
 * of either trim.
 */
export type Ledger = {
  readonly trim: "road" | "event";
  readonly jobs: ReadonlyMap<string, JobNet>;
  readonly in_car: readonly string[];
  readonly now: Total;
  readonly by_stage: readonly StageTotal[];
  readonly by_state: Readonly<Record<State, Total>>;
  readonly by_trim: Readonly<Record<Trim, Total>>;
  readonly by_zone: readonly ZoneTotal[];
  readonly unsprung: MassTotal;
  readonly rotating: MassTotal;
  readonly cumulative: readonly Step[];
  readonly shares: Readonly<Record<Basis, number>>;
  readonly unweighed: readonly string[];
  readonly spent: Effort;
  readonly brought: Brought;
  readonly warnings: readonly Warned[];
};

type Nets = ReadonlyMap<string, JobNet>;

/** The ledger of the garage's car in the garage's trim. `known`: its masses, when they are at hand already. */
export function ledger(garage: Garage, known: Masses = masses(garage)): Ledger {
  const nets = jobNets(garage, known);
  const inside = jobsInCar(garage);
  const lines = inside.flatMap((job) => netOf(nets, job).lines);
  const all = [...garage.jobs.values()];
  const ofTrim = all.filter((job) => inTrim(job, garage.trim));
  const fitted = jobsInCar(garage, "event");
  const ofPart = (wanted: (part: Part) => boolean | null) =>
    massTotal(lines.filter((line) => wanted(garage.parts.get(line.part) as Part)));
  const fittedFor = (trim: Trim) =>
    totalOf(
      nets,
      fitted.filter((job) => netOf(nets, job).trim === trim),
    );
  const states = byState(nets, ofTrim);
  const unweighed = unweighedOf(lines);
  return {
    trim: garage.trim,
    jobs: nets,
    in_car: inside.map((job) => job.id),
    now: states.fitted,
    by_stage: byStage(garage, nets, ofTrim),
    by_state: states,
    by_trim: { both: fittedFor("both"), event: fittedFor("event") },
    by_zone: byZone(garage, lines),
    unsprung: ofPart((part) => part.unsprung),
    rotating: ofPart((part) => part.rotating),
    cumulative: cumulativeOf(nets, inside),
    shares: sharesOf(lines),
    unweighed,
    spent: effortOf(all.filter((job) => ["fitted", "undone"].includes(netOf(nets, job).state))),
    brought: broughtBy(garage),
    warnings: [...garage.warnings, ...warningsOf(nets, known), ...countedTwice(garage, lines), ...said(unweighed)],
  };
}

function netOf(nets: Nets, job: Job): JobNet {
  return nets.get(job.id) as JobNet;
}

function totalOf(nets: Nets, jobs: readonly Job[]): Total {
  return { mass: massTotal(jobs.flatMap((job) => netOf(nets, job).lines)), effort: effortOf(jobs) };
}

function byState(nets: Nets, jobs: readonly Job[]): Record<State, Total> {
  const of = (state: State) =>
    totalOf(
      nets,
      jobs.filter((job) => netOf(nets, job).state === state),
    );
  return Object.fromEntries(STATES.map((state) => [state, of(state)])) as Record<State, Total>;
}

/** Stages by rank (unranked last), then id; jobs without a stage at the end. */
function byStage(garage: Garage, nets: Nets, jobs: readonly Job[]): StageTotal[] {
  const groups = grouped(jobs, (job) => job.stage);
  const rank = (stage: { rank: number | null }) => stage.rank ?? Infinity;
  const unlike = (a: number, b: number) => (a === b ? 0 : a - b);
  const stages = [...garage.stages.values()].sort((a, b) => unlike(rank(a), rank(b)) || order(a.id, b.id));
  const keys = [...stages.map((stage) => stage.id), null];
  return keys.map((stage) => ({ stage, states: byState(nets, groups.get(stage) ?? []) }));
}

function byZone(garage: Garage, lines: readonly Line[]): ZoneTotal[] {
  const groups = [...grouped(lines, (line) => garage.parts.get(line.part)?.zone ?? null)];
  const last = (zone: string | null) => Number(zone === null);
  groups.sort(([a], [b]) => last(a) - last(b) || order(String(a), String(b)));
  return groups.map(([zone, group]) => ({ zone, mass: massTotal(group) }));
}

function grouped<T>(items: readonly T[], key: (item: T) => string | null): Map<string | null, T[]> {
  const groups = new Map<string | null, T[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return groups;
}

function cumulativeOf(nets: Nets, jobs: readonly Job[]): Step[] {
  const running = new Running();
  return jobs.map((job) => {
    for (const line of netOf(nets, job).lines) if (line.mass) running.add(line.mass);
    return { job: job.id, fitted_on: job.fitted_on, value: running.value, u: running.u };
  });
}

/** Basis → share of the kilograms moved, on and off alike; all zero when nothing was. */
function sharesOf(lines: readonly Line[]): Record<Basis, number> {
  const weighed = lines.flatMap(({ mass, basis }) => (mass ? [{ basis, kilograms: Math.abs(mass.value) }] : []));
  const whole = fsum(weighed.map((line) => line.kilograms));
  const moved = (of: Basis) => fsum(weighed.filter(({ basis }) => basis === of).map((line) => line.kilograms));
  return Object.fromEntries(BASES.map((basis) => [basis, whole ? moved(basis) / whole : 0])) as Record<Basis, number>;
}

function broughtBy(garage: Garage): Brought {
  const sold = [...garage.parts.values()].filter((part) => part.whereabouts === "sold" && part.sold_for);
  const ofCar = sold.filter((part) => part.car === null || garage.car === null || part.car === garage.car.id);
  const money = ofCar.reduce((sum, part) => add(sum, part.sold_for ?? ZERO), ZERO);
  return { money, parts: ofCar.map((part) => part.id) };
}

/** What is to be said of the masses used in any job, then of the scales they were weighed on. */
function warningsOf(nets: Nets, known: Masses): Warned[] {
  const parts = new Set([...nets.values()].flatMap((net) => net.lines.map((line) => line.part)));
  const used = [...parts].sort(order).map((part) => known.of.get(part) as Mass);
  const scales = new Set(used.flatMap((mass) => mass.readings.map((reading) => reading.scale)));
  const ofScales = [...scales].sort(order).flatMap((id) => {
    const model = known.scales.get(id) as ScaleModel;
    if (id === UNNAMED) return [warned("scale_unnamed")];
    return model.assumed ? [...model.warnings, warned("gain_assumed", { scale: id })] : model.warnings;
  });
  return [...used.flatMap((mass) => mass.warnings), ...ofScales];
}

/** Parts of which more pieces came off, or went on, than there are. */
function countedTwice(garage: Garage, lines: readonly Line[]): Warned[] {
  const pieces = new Map<string, number>();
  for (const line of lines) {
    pieces.set(line.part, (pieces.get(line.part) ?? 0) + (line.way === "on" ? line.count : -line.count));
  }
  const beyond = [...pieces].filter(([part, count]) => Math.abs(count) > (garage.parts.get(part)?.count ?? 1));
  return beyond
    .map(([part]) => part)
    .sort(order)
    .map((part) => warned("counted_twice", { part }));
}

function said(unweighed: readonly string[]): Warned[] {
  return unweighed.length > 0 ? [warned("unweighed", { parts: unweighed })] : [];
}
