/** What there is to ask of a job that was written down late, and what the weight now makes of an answer or an edit. */
import { book, bookWith, car, known, lists, say, stand, trim } from "../../answers";
import { readGarage } from "../../core/garage/garage";
import { scale, subtract, type Uncertain, u } from "../../core/numbers/uncertain";
import { standing } from "../../core/standing/standing";
import { masses } from "../../core/weighing/weighing";
import { listing, unlisted } from "../../core/wholeCar/late";
import { garage } from "../../garage/garage";
import { historyOf } from "../../garage/undo";
import type { Change } from "../../garage/write";
import type { Value } from "../../journal/types";
import { lineOf } from "../../parts/weighIn/relisted";
import { momentOf, sayMoment } from "../../parts/words/moments";

/** The weigh-ins that a job's date says it was in the car at, and that do not list it: the first is asked about. */
export function toAsk(job: string): string[] {
  const record = book.value.jobs.get(job);
  if (!record) return [];
  const said = historyOf(job).find(({ entry: { set } }) => "state" in set || "fitted_on" in set);
  const answered = garage.value.one("job", job)?.values.not_in ?? [];
  return unlisted(book.value, record, (id) => {
    const line = lineOf(id).map((each) => each.id);
    const made = historyOf(line.at(-1)!).at(-1)?.entry.made_at ?? "";
    return line.some((each) => answered.includes(each)) || (said?.entry.made_at ?? "") <= made;
  });
}

/** That the job was not in the car at these weigh-ins: nobody asks again, also not of what takes their place. */
export function notIn(job: string, weighIns: readonly string[]): Change {
  const before = garage.value.one("job", job)?.values.not_in ?? [];
  return { kind: "job", record: job, set: { not_in: [...new Set([...before, ...weighIns])] } };
}

export const listedBy = (job: string): string[] => listing(book.value, job);

/** "12 Sept": the day of a weigh-in, within a sentence. */
export function dayOf(weighIn: string): string {
  const rec = garage.value.one("weigh_in", weighIn);
  const moment = rec && momentOf(rec);
  return rec && moment ? sayMoment(moment.slice(0, 10)) : "a day nobody noted";
}

/** What the answer is for, beside the weigh-in that is asked about. */
export function alsoFor(weighIns: readonly string[]): string {
  const more = weighIns.length - 1;
  if (more < 1) return "";
  return more === 1
    ? " The answer holds for the weigh-in after it too."
    : ` The answer holds for the ${more} after it too.`;
}

type Records = Record<"jobs" | "job_parts", ({ id: string } & Record<string, Value>)[]>;

/** A job and its parts as they are now, to be held against later. */
export function asItIs(job: string): Records {
  const { jobs = [], job_parts = [] } = lists.value;
  return { jobs: jobs.filter(({ id }) => id === job), job_parts: job_parts.filter((line) => line.job === job) };
}

/** "falls by 1.2 kg" since the job was like that, also that it stays; null where nothing that weighs has changed. */
export function movedSince(job: string, then: Records): string | null {
  if (whatWeighs(asItIs(job)) === whatWeighs(then)) return null;
  const { jobs = [], job_parts = [] } = lists.value;
  const before = readGarage({
    ...lists.value,
    jobs: [...jobs.filter(({ id }) => id !== job), ...then.jobs],
    job_parts: [...job_parts.filter((line) => line.job !== job), ...then.job_parts],
    car: car.value?.id,
    trim: trim.value,
  });
  return moved(standing(before, masses(before)).weight, stand.value.weight) ?? "stays as it is";
}

function whatWeighs({ jobs, job_parts }: Records): string {
  const lines = job_parts.map(({ id, part, way, count }) => [id, part, way, count]);
  return JSON.stringify([jobs.map(({ state, trim }) => [state, trim]), lines]);
}

/** What weight now would do if these weigh-ins were saved. */
export function movedBy(corrections: readonly Change[]): string | null {
  const weigh_ins = corrections.map(({ record, set }) => ({ ...set, id: record! }));
  return moved(stand.value.weight, standing(bookWith({ weigh_ins }), known.value).weight);
}

function moved(from: Uncertain | null, to: Uncertain | null): string | null {
  if (!from || !to) return null;
  const by = subtract(to, from);
  const isNothing = Math.abs(by.value) < 1e-6 && u(by) < 1e-6; // kg: the last bits of two sums
  return isNothing ? null : `${by.value < 0 ? "falls" : "rises"} by ${say(scale(by, by.value < 0 ? -1 : 1))}`;
}
