/** A donor part as if it were on the car in place of yours: what the standing would be, and the job that does it. */
import { bookWith, car, type Lists } from "../../answers";
import type { Comparison } from "../../core/ledger/compare";
import { type Standing, standing } from "../../core/standing/standing";
import { garage, type Rec } from "../../garage/garage";
import { isOnCar } from "../../parts/controls/partOffers";

const TRIAL = "trial";

/** The standing with yours off and this one on; null when that is no swap: yours is off already, or this one on. */
export function standingWith({ part, instead_of: old, count }: Comparison, over: Lists = {}): Standing | null {
  if (!old || !isOnCar(old) || isOnCar(part)) return null;
  const line = (way: string, which: string) => ({ id: `${TRIAL}-${way}`, job: TRIAL, part: which, way, count });
  const job = { id: TRIAL, name: "", car: car.value?.id ?? null, state: "fitted", trim: "both" };
  return standing(bookWith({ ...over, jobs: [job], job_parts: [line("off", old), line("on", part)] }));
}

/** A job that takes the old part off and puts this one on, if somebody wrote one down already. */
export function swapJob(part: string, old: string): Rec<"job"> | null {
  const lines = garage.value.of("job_part");
  const moves = (job: Rec<"job">, which: string, way: string) =>
    lines.some(({ values }) => values.job === job.id && values.part === which && values.way === way);
  return garage.value.of("job").find((job) => moves(job, old, "off") && moves(job, part, "on")) ?? null;
}
