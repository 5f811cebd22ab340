/** What a weigh-in found beside the jobs written down since the one before it: the two changes, side by side. */
import { account, book, stand } from "../../answers";
import { type Cause, ofStep } from "../../core/fusion/causes";
import { type Since, sinceWeighIn } from "../../core/ledger/since";
import type { Uncertain } from "../../core/numbers/uncertain";
import { byScales, type Gap } from "../../core/standing/gap";

/** `since`: the jobs between; `found`: what the scales say changed, kg. Both without fuel, driver and ballast. */
export type GapTrail = {
  gap: Gap;
  since: Since;
  found: Uncertain;
  /** What it most likely is, the likeliest first. */
  causes: readonly Cause[];
};

/** Null unless the weigh-in is the later one of the two that are compared. */
export function gapAt(weighIn: string): GapTrail | null {
  const { gap } = stand.value;
  if (gap?.second !== weighIn) return null;
  const [first, second] = [withJobs(gap.first), withJobs(gap.second)];
  const [then, now] = [first.jobs, second.jobs];
  const nets = account.value.jobs;
  const since = sinceWeighIn(gap.first, then, now, nets);
  const causes: Cause[] = [...ofStep(nets, first, second, gap.difference), "misnoted", "not_zeroed"];
  return { gap, since, found: byScales(gap, since.net), causes };
}

function withJobs(weighIn: string) {
  const { jobs, weigh_ins } = book.value;
  const record = weigh_ins.get(weighIn)!;
  return { record, jobs: (record.jobs ?? []).filter((job) => jobs.has(job)) };
}
