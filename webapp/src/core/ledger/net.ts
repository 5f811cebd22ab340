/**
 * The net of a job: what goes on less what comes off, piece by piece.
 *
 * A line is one part going on or off in one job: its mass of one piece × pieces, signed (on +, off −). A total is a sum
 * of lines with every error source kept, so that what two lines share adds or cancels as it should: a part taken off
 * and put back nets to nothing, with no doubt. Every total names the lines and jobs it was made from.
 */

import { order } from "../garage/order";
import type { Garage, Job, JobPart } from "../garage/records";
import { add, type Ratio, ZERO } from "../numbers/ratio";
import { scale, subtract, total, type Uncertain, weightedSum } from "../numbers/uncertain";
import type { Basis, Mass, Masses } from "../weighing/weighing";

export type State = "fitted" | "chosen" | "idea" | "undone";
export type Trim = "both" | "event";
export const STATES: readonly State[] = ["fitted", "chosen", "idea", "undone"];

/** One `job_part`. `mass` (kg) is signed and of all `count` pieces; null when the part has no mass (counts zero). */
export type Line = {
  readonly id: string;
  readonly job: string;
  readonly part: string;
  readonly way: "off" | "on";
  readonly count: number;
  readonly mass: Uncertain | null;
  readonly basis: Basis | null;
  readonly weighings: readonly string[];
};

/** `net` = on − off, kg; `off` and `on` are both counted positive. `lines`: ids of the lines with a mass. */
export type MassTotal = {
  readonly net: Uncertain;
  readonly off: Uncertain;
  readonly on: Uncertain;
  readonly lines: readonly string[];
};

/** Hours and money of some jobs, exact; a job that says nothing counts zero. */
export type Effort = { readonly hours: Ratio; readonly money: Ratio; readonly jobs: readonly string[] };

/** What some jobs come to. */
export type Total = { readonly mass: MassTotal; readonly effort: Effort };

/** One job. `in_car`: fitted, and part of the trim asked for. `unweighed`: parts that have no mass, count zero. */
export type JobNet = {
  readonly job: string;
  readonly state: State;
  readonly trim: Trim;
  readonly stage: string | null;
  readonly in_car: boolean;
  readonly total: Total;
  readonly lines: readonly Line[];
  readonly unweighed: readonly string[];
};

export function stateOf(job: Job): State {
  return (job.state ?? "idea") as State;
}

/** Whether the job is part of the car in this trim; the event trim has everything the road trim has. */
export function inTrim(job: Job, trim: string): boolean {
  return job.trim !== "event" || trim === "event";
}

/** The jobs in the car now, for the garage's trim or the one given, in order of fitting (undated ones last). */
export function jobsInCar(garage: Garage, trim: string = garage.trim): Job[] {
  const fitted = [...garage.jobs.values()].filter((job) => stateOf(job) === "fitted" && inTrim(job, trim));
  return fitted.sort(byFitting);
}

function byFitting(a: Job, b: Job): number {
  const undated = Number(a.fitted_on === null) - Number(b.fitted_on === null);
  return undated || order(String(a.fitted_on), String(b.fitted_on)) || order(a.id, b.id);
}

/** Every job of the car, whatever its state, by id. */
export function jobNets(garage: Garage, known: Masses): Map<string, JobNet> {
  return new Map([...garage.jobs.values()].map((job) => [job.id, jobNet(garage, job, known)]));
}

function jobNet(garage: Garage, job: Job, known: Masses): JobNet {
  const lines = (garage.parts_of.get(job.id) ?? []).map((jobPart) => lineOf(garage, jobPart, known));
  return {
    job: job.id,
    state: stateOf(job),
    trim: (job.trim ?? "both") as Trim,
    stage: job.stage,
    in_car: stateOf(job) === "fitted" && inTrim(job, garage.trim),
    total: { mass: massTotal(lines), effort: effortOf([job]) },
    lines,
    unweighed: unweighedOf(lines),
  };
}

function lineOf(garage: Garage, jobPart: JobPart, known: Masses): Line {
  const { mass, basis, weighings } = known.of.get(jobPart.part) as Mass;
  const count = jobPart.count ?? garage.parts.get(jobPart.part)?.count ?? 1;
  const signed = jobPart.way === "on" ? count : -count;
  return {
    id: jobPart.id,
    job: jobPart.job,
    part: jobPart.part,
    way: jobPart.way,
    count,
    mass: mass && scale(mass, signed),
    basis,
    weighings,
  };
}

/** The parts of lines without a mass, by id. */
export function unweighedOf(lines: readonly Line[]): string[] {
  return [...new Set(lines.filter((line) => line.mass === null).map((line) => line.part))].sort(order);
}

/** The sum of the lines that have a mass. */
export function massTotal(lines: readonly Line[]): MassTotal {
  const weighed = lines.filter((line): line is Line & { mass: Uncertain } => line.mass !== null);
  const of = (way: string) => weighed.filter((line) => line.way === way).map((line) => line.mass);
  const [taken, on] = [of("off"), total(of("on"))];
  const off = weightedSum(
    taken,
    taken.map(() => -1),
  );
  return { net: subtract(on, off), off, on, lines: weighed.map((line) => line.id) };
}

export function effortOf(jobs: readonly Job[]): Effort {
  return {
    hours: jobs.reduce((sum, job) => (job.hours ? add(sum, job.hours) : sum), ZERO),
    money: jobs.reduce((sum, job) => (job.money ? add(sum, job.money) : sum), ZERO),
    jobs: jobs.map((job) => job.id),
  };
}
