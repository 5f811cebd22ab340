/** A weigh-in's list of jobs put right: an ordinary correction, a new weigh-in that replaces it with all else equal. */
import { garage, type Rec } from "../../garage/garage";
import type { Change } from "../../garage/write";
import { newId } from "../../garage/write";
import { momentOf } from "../words/moments";

/** The corrections of these weigh-ins by which a job is on their lists, or is not. */
export function relisted(weighIns: readonly string[], job: string, isIn: boolean): Change[] {
  return weighIns.flatMap((id) => {
    const rec = garage.value.one("weigh_in", id);
    if (!rec) return [];
    const others = (rec.values.jobs ?? []).filter((each) => each !== job);
    const at = momentOf(rec); // a correction is no newer weigh-in: the order of weigh-ins stays
    const set = { ...rec.values, at, jobs: isIn ? [...others, job] : others, replaces: id };
    return [{ kind: "weigh_in", record: newId(), set, base: [] }];
  });
}

/** A weigh-in and those it took the place of, the latest first. */
export function lineOf(id: string): Rec<"weigh_in">[] {
  const line: Rec<"weigh_in">[] = [];
  for (let rec = garage.value.one("weigh_in", id); rec && !line.includes(rec); ) {
    line.push(rec);
    rec = garage.value.one("weigh_in", rec.values.replaces);
  }
  return line;
}
