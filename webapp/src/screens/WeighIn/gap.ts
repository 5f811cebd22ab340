/** What a weigh-in found beside the jobs written down since the one before it: the two changes, side by side. */
import { account, book, stand } from "../../answers";
import { add, type Uncertain } from "../../core/numbers/uncertain";
import type { Gap } from "../../core/standing/gap";
import { netBetween } from "../../core/standing/since";

/** `written`: the jobs between, kg; `found`: what the scales say changed. Both without fuel, driver and ballast. */
export type GapTrail = {
  gap: Gap;
  put_in: readonly string[];
  taken_out: readonly string[];
  written: Uncertain;
  found: Uncertain;
  /** Parts moved between that have no weight, and so count as nothing. */
  unweighed: readonly string[];
};

/** Null unless the weigh-in is the later one of the two that are compared. */
export function gapAt(weighIn: string): GapTrail | null {
  const { gap } = stand.value;
  if (gap?.second !== weighIn) return null;
  const [then, now] = [jobsAt(gap.first), jobsAt(gap.second)];
  const nets = account.value.jobs;
  const put_in = now.filter((job) => !then.includes(job));
  const taken_out = then.filter((job) => !now.includes(job));
  const written = netBetween(now, then, nets);
  const unweighed = new Set([...put_in, ...taken_out].flatMap((job) => nets.get(job)?.unweighed ?? []));
  return { gap, put_in, taken_out, written, found: add(gap.difference, written), unweighed: [...unweighed] };
}

function jobsAt(weighIn: string): string[] {
  const { jobs, weigh_ins } = book.value;
  return (weigh_ins.get(weighIn)?.jobs ?? []).filter((job) => jobs.has(job));
}
