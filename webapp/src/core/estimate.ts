/**
 * The door to the estimator: what the car weighs now, from what was weighed and what was done to it.
 *
 * `estimate` is asked by `core/standing` and by nobody else; it may be replaced by a better estimator without any other
 * room noticing. This one takes the last weigh-in and the jobs since. "Since" is the difference of two lists, the jobs
 * in the car now and the jobs stored with the weigh-in; no clock decides it. The net of the jobs since is one sum over
 * its lines, so that a part put on after the weigh-in and one taken off share what their weighings share.
 */

import { type Condition, atCondition, driverIn, fuelIn, isWarned } from "./condition";
import { type JobNet, jobsInCar, order } from "./net";
import { type Garage, type Warned, type WeighIn, warned } from "./records";
import { type Uncertain, add, resolution, scale, u, uncertain, weightedSum } from "./uncertain";
import type { Loads } from "./weighIn";
import type { Masses } from "./weighing";

export type Nets = ReadonlyMap<string, JobNet>;

/** One weigh-in with its loads. `jobs`: those then in the car; null when nobody confirmed any list. */
export type Weighed = {
  readonly record: WeighIn;
  readonly loads: Loads;
  readonly jobs: readonly string[] | null;
};

/**
 * What was done since the weigh-in the weight rests on: jobs `put_in` (fitted) and `taken_out` (undone), by id.
 *
 * `changes`: kg by job, as it changed the car; `net`: their sum. `unweighed`: parts among them that count zero;
 * `unweighed_out`: those of which the car has fewer than at the weigh-in, `unweighed_in`: more.
 */
export type Since = {
  readonly weigh_in: string;
  readonly put_in: readonly string[];
  readonly taken_out: readonly string[];
  readonly changes: Readonly<Record<string, Uncertain>>;
  readonly net: Uncertain;
  readonly unweighed: readonly string[];
  readonly unweighed_out: readonly string[];
  readonly unweighed_in: readonly string[];
};

/** `weight`: the car now at the condition, kg. */
export type Estimate = { readonly weight: Uncertain; readonly since: Since };

/** What two weigh-ins say beside the jobs between them: `difference` kg more in the car than written down. */
export type Gap = { readonly first: string; readonly second: string; readonly difference: Uncertain };

/** Whether a gap is beyond its own expanded uncertainty (k = 2). */
export function isSignificant(gap: Gap): boolean {
  return Math.abs(gap.difference.value) > 2 * u(gap.difference);
}

/** Weigh-ins as they were made: by their stated time (those without one last), then by id. */
export function inOrder(garage: Garage): WeighIn[] {
  return [...garage.weigh_ins.values()].sort((a, b) => {
    const undated = Number(a.at === null) - Number(b.at === null);
    return undated || order(a.at ?? "", b.at ?? "") || order(a.id, b.id);
  });
}

/** The weight now from the last of the weigh-ins given, or why there is none. */
export function estimate(
  garage: Garage, known: Masses, nets: Nets, weighed: readonly Weighed[], condition: Condition,
): Estimate | Warned {
  const usable = weighed.filter(({ loads }) => loads.loads.total);
  const last = usable.at(-1);
  if (!last?.loads.loads.total) return warned(weighed.length > 0 ? "weigh_in_incomplete" : "no_weigh_in");
  if (last.jobs === null) return warned("jobs_not_confirmed", { weigh_in: last.record.id });
  const whole = atCondition(garage, last.record, last.loads.loads.total, condition, known);
  if (isWarned(whole)) return whole;
  const now = jobsInCar(garage).map((job) => job.id);
  const since = sinceWeighIn(last.record.id, last.jobs, now, nets);
  return { weight: add(whole, since.net), since };
}

/** The difference of two lists of jobs, and what it weighs. */
function sinceWeighIn(id: string, then: readonly string[], now: readonly string[], nets: Nets): Since {
  const putIn = now.filter((job) => !then.includes(job));
  const takenOut = then.filter((job) => !now.includes(job));
  const netOf = (job: string) => nets.get(job) as JobNet;
  const changes = [
    ...putIn.map((job) => [job, scale(netOf(job).total.mass.net, 1)] as const),
    ...takenOut.map((job) => [job, scale(netOf(job).total.mass.net, -1)] as const),
  ];
  const moved = unweighedPieces(putIn.map(netOf), takenOut.map(netOf));
  return {
    weigh_in: id,
    put_in: putIn,
    taken_out: takenOut,
    changes: Object.fromEntries(changes),
    net: netBetween(now, then, nets),
    unweighed: moved.map(([part]) => part),
    unweighed_out: moved.flatMap(([part, pieces]) => (pieces < 0 ? [part] : [])),
    unweighed_in: moved.flatMap(([part, pieces]) => (pieces > 0 ? [part] : [])),
  };
}

/** Parts without a mass, with how many pieces more of it the car has, in order of id; put off and back on, none. */
function unweighedPieces(putIn: readonly JobNet[], takenOut: readonly JobNet[]): [string, number][] {
  const pieces = new Map<string, number>();
  const take = (net: JobNet, wayIn: "on" | "off") => {
    for (const { part, way, count, mass } of net.lines) {
      if (mass === null) pieces.set(part, (pieces.get(part) ?? 0) + (way === wayIn ? count : -count));
    }
  };
  for (const net of putIn) take(net, "on");
  for (const net of takenOut) take(net, "off");
  return [...pieces].sort(([a], [b]) => order(a, b));
}

/** Net of the jobs of one list less that of the other, kg, as one sum: what the two have in common cancels. */
export function netBetween(now: readonly string[], then: readonly string[], nets: Nets): Uncertain {
  const masses: Uncertain[] = [];
  const signs: number[] = [];
  const take = (job: string, sign: number) => {
    for (const { mass } of nets.get(job)?.lines ?? []) {
      if (mass) signs.push(sign), masses.push(mass);
    }
  };
  for (const job of now) if (!then.includes(job)) take(job, 1);
  for (const job of then) if (!now.includes(job)) take(job, -1);
  return weightedSum(masses, signs);
}

/** The car of a weigh-in without fuel, driver or ballast, kg. */
function bare(garage: Garage, weighed: Weighed, known: Masses): Uncertain | Warned {
  const { record } = weighed;
  const whole = weighed.loads.loads.total;
  if (!whole) return warned("weigh_in_incomplete", { weigh_in: record.id });
  const fuel = fuelIn(garage, record);
  if (!fuel) return warned("fuel_unknown", { weigh_in: record.id });
  const driver = driverIn(record, known);
  if (!driver) return warned("driver_unknown", { weigh_in: record.id });
  return weightedSum([whole, fuel, driver, ballastIn(record)], [1, -1, -1, -1]);
}

/** The ballast on board at a weigh-in, kg, known to its last digit. */
function ballastIn(record: WeighIn): Uncertain {
  if (record.ballast === null) return uncertain(0);
  return uncertain(record.ballast.value, { [`ballast:${record.id}`]: resolution(record.ballast.last_digit) });
}

/** What the later of two weigh-ins found beside the jobs between them; more in the car is positive. */
export function gapBetween(
  garage: Garage, first: Weighed, second: Weighed, known: Masses, nets: Nets,
): Gap | Warned {
  const before = bare(garage, first, known);
  if (isWarned(before)) return before;
  const after = bare(garage, second, known);
  if (isWarned(after)) return after;
  for (const { jobs, record } of [first, second]) {
    if (jobs === null) return warned("jobs_not_confirmed", { weigh_in: record.id });
  }
  const written = netBetween(second.jobs ?? [], first.jobs ?? [], nets);
  const difference = weightedSum([after, before, written], [1, -1, -1]);
  return { first: first.record.id, second: second.record.id, difference };
}
