/** A job that was in the car at a weigh-in: what is added to it now counts as having been there then. */
import { weighIns } from "../../answers";
import { Notice } from "../../parts/frame/Notice";
import { sayMoment } from "../../parts/words/moments";

export function WeighedAlready({ job }: { job: string }) {
  const weighed = weighIns.value.filter((weighIn) => weighIn.values.jobs?.includes(job));
  if (!weighed.length) return null;
  const last = weighed[weighed.length - 1]!;
  return (
    <Notice>
      <p class="small">
        This job was in the car at the weigh-in of {sayMoment(last.values.at)}. What you add to it now counts as having
        been there then; if it came later, make it a job of its own.
      </p>
    </Notice>
  );
}
