/** A job that was in the car at a weigh-in: what is changed of it now counts as having been so then. */
import { useMemo } from "preact/hooks";
import { Notice } from "../../parts/frame/Notice";
import { asItIs, dayOf, listedBy, movedSince } from "./late";

export function WeighedAlready({ job }: { job: string }) {
  const atOpening = useMemo(() => asItIs(job), [job]);
  const last = listedBy(job).at(-1);
  if (!last) return null;
  const effect = movedSince(job, atOpening);
  return (
    <Notice>
      <p class="small">
        {effect ? (
          <strong>
            Weight now {effect}: the weigh-in of {dayOf(last)} listed this job.
          </strong>
        ) : (
          `The weigh-in of ${dayOf(last)} lists this job: what you change of it counts as having been so then.`
        )}
      </p>
    </Notice>
  );
}
