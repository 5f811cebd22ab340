/**
 * A garage as it would be with one weighing, check or weigh-in more that comes out as expected.
 *
 * What is expected is what is believed now: the car at its weight, a scale with the gain it is believed to have today
 * and the zero the weigh-ins tell of. So nothing moves but the doubt, and that is what one who asks wants to know.
 */

import { type Group, groups } from "../fusion/behaviour";
import { believed, zeroBelieved } from "../fusion/believed";
import { evidenceOf } from "../fusion/evidence";
import { type Fusion, fused } from "../fusion/fusion";
import type { First } from "../fusion/lowering";
import type { Garage, Scale, ScaleCheck, WeighIn, Weighing } from "../garage/records";
import { type Quantity, read, readMass } from "../numbers/quantity";
import { total, u, uncertain, weightedSum } from "../numbers/uncertain";
import { LAYOUTS } from "../weighing/repeats";
import type { ScaleModel } from "../weighing/scale";
import { ASSUMED_DIVISION } from "../weighing/tradeScale";
import { masses } from "../weighing/weighing";
import { isWarned } from "../wholeCar/condition";
import { POINTS } from "../wholeCar/ready";
import type { Weighed } from "../wholeCar/weighed";
import { type Given, givenBy } from "./given";

export const NEXT = "next";
const FUEL_WITHIN = "0.5 L"; // of a tank filled to the mark or drained: common practice, no source
const LAYOUT: Readonly<Record<string, WeighIn["layout"]>> = { corner_pads: "corners", axle_pads: "axles" };
const STEPS: Readonly<Record<string, number>> = { kitchen: 0.001, bench: 0.01, hanging: 0.02, bathroom: 0.1 }; // kg

/** A garage on a `day` (a date) with the fusion of all its weigh-ins, and what that was made from. */
export type Asked = {
  readonly given: Given;
  readonly fusion: Fusion;
  readonly among: readonly Group[];
  readonly risk: number;
  readonly day: string;
};

/** null while no weigh-in counts. */
export function asked(garage: Garage, day: string, risk: number, classSheet: string | null = null): Asked | null {
  const known = masses(garage);
  const given = givenBy(garage, known, classSheet);
  const looks = evidenceOf(given.weighed, given.now, given.nets, given.condition);
  if (isWarned(looks)) return null;
  const among = groups(garage, known.scales, looks.counted);
  return { given, fusion: fused(looks, among, risk), among, risk, day };
}

/** The standard uncertainty (kg) that the weight would have in this garage. */
export function doubtWith({ given, fusion, risk, day }: Asked, garage: Garage): number {
  return u((asked(garage, day, risk, given.sheet?.id ?? null)?.fusion ?? fusion).weight);
}

export const lastOf = ({ fusion }: Asked): Weighed => fusion.evidence.counted.at(-1) as Weighed;
export const modelOf = ({ given }: Asked, scale: string): ScaleModel => given.known.scales.get(scale) as ScaleModel;

/** One more weigh-in. `scale` null: a platform nobody knows. `first`: what is seen to before; `check`: made then. */
export function withWeighIn(
  asked: Asked,
  scale: string | null,
  first: readonly First[],
  check: ScaleCheck | null,
): Garage {
  const now = check ? { ...asked, given: { ...asked.given, garage: withCheck(asked, check) } } : asked;
  const last = lastOf(now).record;
  const onIt = now.fusion.evidence.counted.filter(({ record }) => scale !== null && record.scale === scale);
  let { ready } = onIt.at(-1)?.record ?? last;
  if (first.includes("zeroed")) ready = [...new Set([...(ready ?? POINTS), "zeroed" as const])];
  const record: WeighIn = {
    ...last,
    id: NEXT,
    at: last.at && last.at > now.day ? last.at : now.day,
    scale,
    official: scale === null,
    ready,
    jobs: now.given.now.jobs,
    ballast: ballastOf(now, last),
    fuel_within: first.includes("fuel") ? read("volume", FUEL_WITHIN) : last.fuel_within,
  };
  return weighed(now, record, ready?.includes("zeroed") ?? false);
}

/** With the readings the scale is expected to show. */
function weighed(now: Asked, record: WeighIn, isZeroed: boolean): Garage {
  const { garage } = now.given;
  const { fuel, driver } = lastOf(now).aboard;
  const named: Scale | undefined = garage.scales.get(record.scale ?? "");
  const layout = LAYOUT[named?.kind ?? ""] ?? "total";
  const aboard = [fuel, driver].filter((each) => each !== null);
  const ballast = uncertain(record.ballast?.value ?? 0);
  const car = weightedSum([now.fusion.weight, now.fusion.evidence.target, total([...aboard, ballast])], [1, -1, 1]);
  const zero = named && !isZeroed ? zeroBelieved(now.fusion, now.among, named.id) : 0;
  const shown = named ? car.value * (1 + gainOn(now, named.id)) + zero : car.value;
  const step = (named && modelOf(now, named.id).division) || ASSUMED_DIVISION;
  const looks = LAYOUTS[layout];
  const bare = { lf: null, rf: null, lr: null, rr: null, front: null, rear: null, total: null };
  const read = Object.fromEntries(looks.map((look) => [look, shownAs(shown / looks.length, step)]));
  const whole: WeighIn = { ...record, ...bare, ...read, layout };
  return { ...garage, weigh_ins: new Map([...garage.weigh_ins, [NEXT, whole]]) };
}

/** The scale of this check checked today with its known mass, as its display shows it. */
export function withCheck(now: Asked, like: ScaleCheck): Garage {
  const { garage } = now.given;
  const step = stepOf(now, modelOf(now, like.scale));
  const shown = evenly((like.known.value * (1 + gainOn(now, like.scale))) / step) * step;
  const check: ScaleCheck = { ...like, id: NEXT, shown: shownAs(shown, step), at: now.day };
  const checks = [...(garage.checks_of.get(like.scale) ?? []), check];
  return { ...garage, checks_of: new Map([...garage.checks_of, [like.scale, checks]]) };
}

/** A part or a driver weighed on this scale: it weighs what it was held to. */
export function withWeighing(now: Asked, of: string, scale: string, mass: number): Garage {
  const { garage } = now.given;
  const model = modelOf(now, scale);
  const shown = shownAs(mass * (1 + model.gain.value), stepOf(now, model));
  const nothing = { shown_empty: null, shown_far: null, pieces: null, with_bolts: null };
  const look: Weighing = { id: NEXT, of, method: "direct", shown, ...nothing, scale, at: now.day };
  return {
    ...garage,
    weighings_of: new Map([...garage.weighings_of, [of, [...(garage.weighings_of.get(of) ?? []), look]]]),
  };
}

/** The steps of a scale, kg; of one nobody noted as its kind most often has. */
export function stepOf({ given: { garage } }: Asked, { id, division }: ScaleModel): number {
  return division || STEPS[garage.scales.get(id)?.kind ?? ""] || ASSUMED_DIVISION;
}

/** The gain a scale is believed to have that day. */
function gainOn({ given: { garage, known }, fusion, among, day }: Asked, scale: string): number {
  return believed(garage, known, fusion, among, scale, day).beliefs.at(-1)?.gain ?? 0;
}

function ballastOf({ given: { now } }: Asked, last: WeighIn): Quantity | null {
  return now.ballast === null ? last.ballast : shownAs(now.ballast.value, 0.001);
}

/** A display that shows so much, to more digits than it has. */
function shownAs(kg: number, step: number): Quantity {
  return { ...readMass(`${Math.max(kg, 0).toFixed(6)} kg`), last_digit: step };
}

/** The nearest whole number, of two the even one. */
function evenly(value: number): number {
  const below = Math.floor(value);
  return value - below === 0.5 ? below + (below % 2) : Math.round(value);
}
