/**
 * What was written down late: weigh-ins that were made after a job's date and do not list it, and those that list it.
 *
 * A weigh-in's list was confirmed beside the car, so it stands until a person says otherwise; here is only what to ask.
 */

import type { Garage, Job } from "../garage/records";
import { inTrim, stateOf } from "../ledger/net";
import { inOrder } from "./weighed";

/**
 * The weigh-ins to ask about, in order: made on a later day than the job's, in a trim that has it, their list confirmed
 * without it. Of a job that is undone again only the first: it may have come out before the next.
 *
 * `isSettled`: whether its maker knew the job as it is, or a person has answered since.
 */
export function unlisted(garage: Garage, job: Job, isSettled: (weighIn: string) => boolean): string[] {
  const state = stateOf(job);
  const day = job.fitted_on?.slice(0, 10);
  if (!day || (state !== "fitted" && state !== "undone")) return [];
  const found = inOrder(garage).filter(({ id, at, jobs, trim }) => {
    const isLater = at !== null && at.slice(0, 10) > day;
    return isLater && jobs !== null && !jobs.includes(job.id) && inTrim(job, trim) && !isSettled(id);
  });
  return found.slice(0, state === "fitted" ? found.length : 1).map(({ id }) => id);
}

/** The weigh-ins that list a job, in order. */
export function listing(garage: Garage, job: string): string[] {
  return inOrder(garage).flatMap(({ id, jobs }) => (jobs?.includes(job) ? [id] : []));
}
