/**
 * What was written down, as the search for slips reads it: the weigh-ins that count, and which jobs were in the car.
 *
 * A job or part has a course: what was in the car of it at each look and now. An error of one kilogram in it moves a
 * look by what the car has of it now less what it had then.
 */

import type { Evidence } from "../fusion/evidence";
import { order } from "../garage/order";
import type { Garage } from "../garage/records";
import type { Line } from "../ledger/net";
import type { Nets } from "../ledger/since";
import type { Masses } from "../weighing/weighing";
import type { Weighed } from "../wholeCar/weighed";
import type { Shape } from "./looks";

export type Course = readonly number[];

/** `counted`: the weigh-ins that count, in order. `jobs`: those in the car at any look or now, one while there. */
export type Trail = {
  readonly garage: Garage;
  readonly known: Masses;
  readonly nets: Nets;
  readonly evidence: Evidence;
  readonly counted: readonly Weighed[];
  readonly jobs: ReadonlyMap<string, Course>;
  /** Parts that some job puts on. */
  readonly coming: ReadonlySet<string>;
  /** The lines of these jobs that have a mass. */
  readonly lines: readonly Line[];
  /** Parts with a mass that such jobs move: pieces more in the car than before any job. */
  readonly pieces: ReadonlyMap<string, Course>;
};

/** `now`: the jobs in the car now. */
export function trailOf(
  { garage, known, nets }: Pick<Trail, "garage" | "known" | "nets">,
  now: readonly string[],
  evidence: Evidence,
): Trail {
  const { counted } = evidence;
  const lists = [...counted.map(({ jobs }) => new Set(jobs ?? [])), new Set(now)];
  const every = [...new Set(lists.flatMap((each) => [...each]))].filter((job) => nets.has(job)).sort(order);
  const jobs = new Map(every.map((job) => [job, lists.map((each) => Number(each.has(job)))]));
  const lines = every.flatMap((job) => nets.get(job)?.lines.filter(({ mass }) => mass) ?? []);
  const coming = new Set(
    [...nets.values()].flatMap((net) => net.lines.flatMap(({ way, part }) => (way === "on" ? [part] : []))),
  );
  return { garage, known, nets, evidence, counted, jobs, coming, lines, pieces: piecesOf(lines, jobs) };
}

function piecesOf(lines: readonly Line[], jobs: ReadonlyMap<string, Course>): Map<string, number[]> {
  const found = new Map<string, number[]>();
  for (const { job, part, way, count } of lines) {
    const there = jobs.get(job) as Course;
    const course = found.get(part) ?? there.map(() => 0);
    found.set(
      part,
      course.map((pieces, at) => pieces + (way === "on" ? count : -count) * (there[at] as number)),
    );
  }
  return found;
}

/** How an error of one kilogram in each piece of a course moves the looks. */
export function movedBy(course: Course): Shape {
  const now = course.at(-1) as number;
  return course.slice(0, -1).map((then) => now - then);
}
