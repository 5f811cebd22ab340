/** What ballast is looked for in, and what the car comes to with it: shares, centre and cross weight. */

import "../../laterErrors";
import { type Warned, warned } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { add, divide, fsum, subtract, type Uncertain, uncertain } from "../numbers/uncertain";

export type Share = readonly [number, number];

/** Where blocks may be fixed: `most` blocks of `block` kg, their middle at x, y, z (m). */
export type Place = {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly block: number;
  readonly most: number;
};

/**
 * The car in the condition it is weighed in, without the ballast looked for. kg and m; null where unknown.
 *
 * `front`, `left`: loads of that axle and side. `height` of its centre. `roll_front`: κ.
 */
export type Carried = {
  readonly total: Uncertain;
  readonly front: Uncertain | null;
  readonly left: Uncertain | null;
  readonly height: number | null;
  readonly wheelbase: number | null;
  readonly track_front: number | null;
  readonly track_rear: number | null;
  readonly roll_front: number | null;
};

/**
 * `least`: minimum + guard, kg; `most`: ceiling of the total. `front`, `left`: shares from, to.
 *
 * `prefer`: what is made least first. Without a ceiling that is always the mass, unless the ballast may be so many kg
 * `more` than the least for it.
 */
export type Wanted = {
  readonly least: number;
  readonly most: number | null;
  readonly front: Share | null;
  readonly left: Share | null;
  readonly prefer: "mass" | "centre" | "cross";
  readonly more: number | null;
};

/**
 * `put`: blocks by place. `front`, `left`: shares afterwards; `height` of the centre (m). `cross`: Σ w y (kg m);
 * `cross_load`: what it moves RF + LR by (kg). `missing`: what even this, the nearest there is, does not reach.
 */
export type Ballast = {
  readonly put: Readonly<Record<string, number>>;
  readonly added: number;
  readonly total: Uncertain;
  readonly front: Uncertain | null;
  readonly left: Uncertain | null;
  readonly height: number | null;
  readonly cross: number;
  readonly cross_load: number | null;
  readonly missing: readonly Warned[];
  readonly proven: boolean;
  readonly warnings: readonly Warned[];
};

/** kg in RF + LR that nobody would feel or measure: common practice, no source. */
export const HARDLY = 0.05;

/** How far the car with it stands above a minimum, kg. */
export const overMinimum = ({ total }: Ballast, minimum: number): Uncertain => subtract(total, uncertain(minimum));

/** kg of so many blocks. */
export const massIn = (block: Quantity, count: number): number => block.value * count;

/** The shares of the car without the ballast looked for, as far as they are known. */
export function sharesOf({ total, front, left }: Carried): { front: Uncertain | null; left: Uncertain | null } {
  return { front: front && divide(front, total), left: left && divide(left, total) };
}

type Put = readonly { readonly place: Place; readonly count: number }[];

export function toldOf(
  car: Carried,
  places: readonly Place[],
  counts: readonly number[],
  missing: Warned[],
  proven: boolean,
): Ballast {
  const put = places.map((place, at) => ({ place, count: counts[at] as number }));
  const added = fsum(put.map(({ place, count }) => place.block * count));
  const total = add(car.total, uncertain(added));
  const cross = fsum(put.map(({ place, count }) => place.block * count * place.y));
  return {
    put: Object.fromEntries(put.filter(({ count }) => count > 0).map(({ place, count }) => [place.id, count])),
    added,
    total,
    front: frontOf(car, put, total),
    left: leftOf(car, put, total),
    height: heightOf(car, put, total),
    cross,
    cross_load: crossLoad(car, cross),
    missing,
    proven,
    warnings: warningsOf(car, proven),
  };
}

function frontOf({ front, wheelbase }: Carried, put: Put, total: Uncertain): Uncertain | null {
  if (front === null || !wheelbase) return null;
  const onto = fsum(put.map(({ place, count }) => place.block * count * (1 - place.x / wheelbase)));
  return divide(add(front, uncertain(onto)), total);
}

function leftOf(car: Carried, put: Put, total: Uncertain): Uncertain | null {
  const track = meanTrack(car);
  if (car.left === null || !track) return null;
  const onto = fsum(put.map(({ place, count }) => place.block * count * (0.5 - place.y / track)));
  return divide(add(car.left, uncertain(onto)), total);
}

function heightOf({ total: { value }, height }: Carried, put: Put, total: Uncertain): number | null {
  if (height === null) return null;
  const raised = fsum(put.map(({ place, count }) => place.block * count * place.z));
  return (value * height + raised) / total.value;
}

function crossLoad({ roll_front, track_front, track_rear }: Carried, cross: number): number | null {
  if (roll_front === null || !track_front || !track_rear) return null;
  return cross * (roll_front / track_front - (1 - roll_front) / track_rear);
}

export function meanTrack({ track_front, track_rear }: Carried): number | null {
  return track_front && track_rear ? 0.5 * (track_front + track_rear) : null;
}

function warningsOf(car: Carried, proven: boolean): Warned[] {
  const unlike = car.left !== null && car.track_front !== car.track_rear && meanTrack(car) !== null;
  return [...(unlike ? [warned("tracks_unequal")] : []), ...(proven ? [] : [warned("ballast_not_proven")])];
}
