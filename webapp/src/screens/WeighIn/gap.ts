/** What a weigh-in found beside the jobs written down since the one before it: the two changes, side by side. */
import { account } from "../../account";
import { book, known, stand } from "../../answers";
import { type Cause, causesOf } from "../../core/causes/search";
import { type Since, sinceWeighIn } from "../../core/ledger/since";
import type { Uncertain } from "../../core/numbers/uncertain";
import { byScales, type Gap, isSignificant } from "../../core/standing/gap";
import { nowOf } from "../../core/wholeCar/weighed";

/** `since`: the jobs between; `found`: what the scales say changed, kg. Both without fuel, driver and ballast. */
export type GapTrail = {
  gap: Gap;
  since: Since;
  found: Uncertain;
  /** What it most likely is, the likeliest first; nothing where there is nothing to look for. */
  causes: readonly Cause[];
};

/** Null unless the weigh-in is the later one of the two that are compared. */
export function gapAt(weighIn: string): GapTrail | null {
  const { gap } = stand.value;
  if (gap?.second !== weighIn) return null;
  const nets = account.value.jobs;
  const since = sinceWeighIn(gap.first, jobsOf(gap.first), jobsOf(gap.second), nets);
  return { gap, since, found: byScales(gap, since.net), causes: isSignificant(gap) ? causes() : [] };
}

/** What all weigh-ins say of it together, whether or not that is sure enough to be named. */
function causes(): Cause[] {
  const fusion = stand.value.fused?.fusion;
  const asked = { garage: book.value, known: known.value, nets: account.value.jobs, now: nowOf(book.value).jobs };
  return fusion ? causesOf(asked, fusion, fusion.leading.told.beside) : [];
}

function jobsOf(weighIn: string): string[] {
  const { jobs, weigh_ins } = book.value;
  return (weigh_ins.get(weighIn)?.jobs ?? []).filter((job) => jobs.has(job));
}
