/**
 * What does not fit, told: between which weigh-ins, how much, and what it most likely is.
 *
 * The causes are codes of `core/fusion/fusionWords`, the likeliest first. Nothing is accused: the weights cannot tell a
 * spare wheel from a misread tank of the same size.
 */

import type { FUSION_SENTENCES } from "../../generated/fusionSentences";
import type { Garage } from "../garage/records";
import { type Nets, piecesBetween } from "../ledger/since";
import type { Uncertain } from "../numbers/uncertain";
import type { Weighed } from "../wholeCar/weighed";
import { besideOthers, type Fusion, sizeOf } from "./fusion";
import { BEYOND_CHANCE, Candidates, lookOf } from "./misfit";
import { leastTelling } from "./precision";

const SOMEBODY = [35, 130] as const; // kg: a person, or what may be taken for one; common practice, no source
const TANK = 60; // kg a tank of unknown size may hold: common practice, no source
const ROUGH = new Set<string | null>(["guessed", "quoted"]);

/**
 * Something named that does not fit: `size` kg more in the car than written down.
 *
 * `kind` "step": it went in or came out between the weigh-ins `first` and `second`; at least between `earliest` and
 * `latest` (95 %). "outlier": the weigh-in `first`, which is `second` too, is off by itself. "either": a step next to the
 * first or the last weigh-in, or that weigh-in is off; the weights cannot tell. `causes`: codes, likeliest first.
 */
export type Change = {
  readonly kind: "step" | "outlier" | "either";
  readonly first: string;
  readonly second: string;
  readonly earliest: string;
  readonly latest: string;
  readonly size: Uncertain;
  readonly causes: readonly Cause[];
};

/** All the causes there are sentences for. */
export type Cause = Coded<keyof typeof FUSION_SENTENCES>;
type Coded<Code> = Code extends `cause_${infer Cause}` ? Cause : never;

/** What is named, in order of time. */
export function changesOf(garage: Garage, nets: Nets, fusion: Fusion): Change[] {
  const count = fusion.values.length;
  const when = (name: number) => (name < count - 1 ? name : lookOf(count, name));
  const names = [...fusion.names].sort((a, b) => when(a) - when(b) || a - b);
  return names.map((name) => changeOf(garage, nets, fusion, name));
}

function changeOf(garage: Garage, nets: Nets, fusion: Fusion, name: number): Change {
  const { counted } = fusion.evidence;
  const count = counted.length;
  const size = sizeOf(fusion, name);
  const idOf = (look: number) => (counted[look] as Weighed).record.id;
  if (name >= count - 1) {
    const here = idOf(lookOf(count, name));
    const causes = ofLook(garage, counted[lookOf(count, name)] as Weighed, size);
    return { kind: "outlier", first: here, second: here, earliest: here, latest: here, size, causes };
  }
  const [low, high] = within(fusion, name);
  const [first, second] = [counted[name] as Weighed, counted[name + 1] as Weighed];
  const alone = name === count - 2 ? second : name === 0 ? first : null;
  const causes = [...ofStep(nets, first, second, size), ...(alone ? ofLook(garage, alone, size) : [])];
  return {
    kind: alone ? "either" : "step",
    first: first.record.id,
    second: second.record.id,
    earliest: idOf(low),
    latest: idOf(high + 1),
    size,
    causes: [...new Set(causes)],
  };
}

/** The first and the last step that fit nearly as well as the named one. */
function within(fusion: Fusion, name: number): [number, number] {
  const found = new Candidates(besideOthers(fusion, name), fusion.values, leastTelling(fusion.told.matrix));
  const enough = found.better(name) - BEYOND_CHANCE;
  const near = Array.from({ length: found.count - 1 }, (_, n) => n).filter((n) => found.better(n) >= enough);
  return [Math.min(...near), Math.max(...near)];
}

type WithJobs = Pick<Weighed, "record" | "jobs">;

/** What `size` kg more at the second of two weigh-ins than written down most likely is, as far as it is between them. */
export function ofStep(nets: Nets, first: WithJobs, second: WithJobs, size: Uncertain): Cause[] {
  const [then, now] = [first.jobs ?? [], second.jobs ?? []];
  const between = [...then.filter((job) => !now.includes(job)), ...now.filter((job) => !then.includes(job))];
  const causes: Cause[] = [size.value > 0 ? "put_in" : "taken_out"];
  if ([...piecesBetween(now, then, nets).values()].some((pieces) => pieces !== 0)) causes.push("moved_unweighed");
  if (between.some((job) => nets.get(job)?.lines.some(({ basis }) => ROUGH.has(basis)))) causes.push("rough_parts");
  causes.push("job_list");
  if (first.record.scale !== second.record.scale) causes.push("scale_changed");
  return causes;
}

function ofLook(garage: Garage, { record }: Weighed, size: Uncertain): Cause[] {
  const off = Math.abs(size.value);
  const causes: Cause[] = [];
  if (SOMEBODY[0] <= off && off <= SOMEBODY[1]) causes.push(size.value > 0 ? "somebody_in" : "driver_missing");
  if (record.fuel !== null && off <= tankful(garage)) causes.push("fuel_misread");
  causes.push("not_zeroed");
  if (garage.scales.size > 1) causes.push("wrong_scale");
  return causes;
}

/** What a tank may hold, kg; a litre weighs a little less. */
function tankful({ car }: Garage): number {
  return car?.tank_size ? 1000 * car.tank_size.value : TANK;
}
