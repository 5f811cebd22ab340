/**
 * What leads from one list of jobs to another, as loads at places, and what that changes in the car.
 *
 * The difference of two lists: jobs only the second has are put in, jobs only the first has are taken back, with every
 * line's sign turned. What both have is not there at all, with its doubt. Weights above and below the beltline,
 * unsprung and rotating need no weigh-in; the change in yaw inertia does, for it is about the car's own centre.
 */

import "../../laterErrors";
import { type Garage, type Part, type Warned, warned } from "../garage/records";
import type { JobNet, Line } from "../ledger/net";
import { scale, total, type Uncertain, u } from "../numbers/uncertain";
import { type Body, type Load, ownOf, yawChange } from "./body";
import { type Place, placeOf } from "./place";

/** Part id → [length along x, width along y] in m. */
export type Sizes = Readonly<Record<string, readonly [number, number]>>;

/** One line that has a mass: `load` is signed, on the car positive, of all its pieces. */
export type Moved = { readonly line: Line; readonly place: Place; readonly load: Load };

/**
 * What some moves change, kg: `net`, and of it `above` and `below` the beltline, `unsprung`, `rotating`.
 *
 * `yaw`: the change in yaw inertia about the car's own centre, kg m². A figure is null for the reason in `reasons`.
 * `unsure`: parts whose height is within its standard uncertainty of the beltline.
 */
export type Change = {
  readonly net: Uncertain;
  readonly above: Uncertain | null;
  readonly below: Uncertain | null;
  readonly unsprung: Uncertain;
  readonly rotating: Uncertain;
  readonly yaw: Uncertain | null;
  readonly unsure: readonly string[];
  readonly reasons: Readonly<Record<string, Warned>>;
};

/** What leads from the jobs `then` to the jobs `now`. `sizes` are taken in place of the parts' own. */
export function movedBetween(
  garage: Garage,
  nets: ReadonlyMap<string, JobNet>,
  then: readonly string[],
  now: readonly string[],
  sizes: Sizes,
): Moved[] {
  const signs = [
    ...now.filter((job) => !then.includes(job)).map((job) => [job, 1] as const),
    ...then.filter((job) => !now.includes(job)).map((job) => [job, -1] as const),
  ];
  return signs.flatMap(([job, sign]) => {
    const lines = nets.get(job)?.lines ?? [];
    return lines.flatMap((line) => (line.mass ? [movedOf(garage, line, line.mass, sign, sizes)] : []));
  });
}

function movedOf(garage: Garage, line: Line, mass: Uncertain, sign: number, sizes: Sizes): Moved {
  const part = partOf(garage, line);
  const place = placeOf(garage.car, part, line.count);
  const size = Object.hasOwn(sizes, line.part) ? sizes[line.part] : undefined;
  const own = ownOf(...(size ?? sizeOf(part)));
  return { line, place, load: { mass: scale(mass, sign), x: place.x, y: place.y, z: place.z, own: own + place.apart } };
}

/** A part nobody measured is a point; of one length known it is a rod. */
function sizeOf({ length, width }: Part): readonly [number, number] {
  return [length?.value ?? 0, width?.value ?? 0];
}

function partOf(garage: Garage, line: Line): Part {
  return garage.parts.get(line.part) as Part;
}

/** Part id → what all moves of it come to, kg, and where it sits. */
export function byPart(moves: readonly Moved[]): Map<string, { mass: Uncertain; place: Place }> {
  const parts = new Map<string, Moved[]>();
  for (const move of moves) parts.set(move.line.part, [...(parts.get(move.line.part) ?? []), move]);
  return new Map([...parts].map(([part, all]) => [part, { mass: sum(all), place: all[0]!.place }]));
}

/** What the moves change in the body they start from; without one there is no yaw inertia to tell. */
export function changeOf(garage: Garage, body: Body | null, moves: readonly Moved[]): Change {
  const beltline = garage.car?.beltline?.value ?? null;
  const levels = levelsOf(moves, beltline);
  const yaw = body
    ? yawChange(
        body,
        moves.map(({ load }) => load),
      )
    : null;
  return {
    net: sum(moves),
    above: levels?.above ?? null,
    below: levels?.below ?? null,
    unsprung: sum(moves.filter(({ line }) => partOf(garage, line).unsprung)),
    rotating: sum(moves.filter(({ line }) => partOf(garage, line).rotating)),
    yaw,
    unsure: unsureOf(moves, beltline),
    reasons: {
      ...(levels ? {} : { beltline: warned("beltline_unknown") }),
      ...(yaw ? {} : { yaw: warned("yaw_unknown") }),
    },
  };
}

function sum(moves: readonly Moved[]): Uncertain {
  return total(moves.map(({ load }) => load.mass));
}

/** Null when the beltline or the height of a part is not known. */
function levelsOf(moves: readonly Moved[], beltline: number | null): { above: Uncertain; below: Uncertain } | null {
  if (beltline === null || moves.some(({ place }) => !place.z)) return null;
  const isAbove = ({ place }: Moved) => (place.z as Uncertain).value > beltline;
  return { above: sum(moves.filter(isAbove)), below: sum(moves.filter((each) => !isAbove(each))) };
}

function unsureOf(moves: readonly Moved[], beltline: number | null): string[] {
  if (beltline === null) return [];
  const near = moves.filter(({ place }) => place.z && Math.abs(place.z.value - beltline) < u(place.z));
  return [...new Set(near.map(({ line }) => line.part))].sort();
}
