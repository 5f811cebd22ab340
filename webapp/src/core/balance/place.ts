/**
 * Where in the car a part sits: measured, or the default place of its zone with a stated width.
 *
 * Axes: x rearward from the front axle, y to the car's right of the centreline, z up from the ground; metres. Each axis
 * is taken on its own: a part may have x from a tape measure and z from its zone. A zone's place is a table of shares of
 * the car's own wheelbase (x) and mean track (y and z), each "middle ± half-width" of a rectangle. The table is common
 * practice, no source: a rough drawing of a front-engined closed car, wide enough to hold most of them. On a car whose
 * own outside is known, the middle of a zone stays inside it.
 *
 * What was measured is good to `place_within` of the part, and to a tape measure's own where nobody said how well.
 *
 * The place of a part is an error source of its own for each axis (`place:<part>:x`), so that a part taken off and put
 * back cancels, and a part moved by two jobs moves its doubt with it.
 */

import type { Car, Part } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { rectangular, type Uncertain, uncertain } from "../numbers/uncertain";

export type Axis = "x" | "y" | "z";
export const AXES: readonly Axis[] = ["x", "y", "z"];
/** Middle and half-width. */
export type Span = readonly [number, number];
type Spans = readonly [Span, Span, Span];

/** x in wheelbases, y and z in mean tracks. Common practice, no source. */
export const ZONE_PLACES: Readonly<Record<string, Spans>> = {
  nose: [
    [-0.25, 0.12],
    [0, 0.25],
    [0.35, 0.12],
  ],
  "engine bay": [
    [0, 0.2],
    [0, 0.25],
    [0.42, 0.15],
  ],
  bulkhead: [
    [0.27, 0.1],
    [0, 0.3],
    [0.5, 0.15],
  ],
  dash: [
    [0.37, 0.1],
    [0, 0.3],
    [0.6, 0.12],
  ],
  "cabin front": [
    [0.5, 0.15],
    [0, 0.35],
    [0.35, 0.2],
  ],
  "cabin rear": [
    [0.78, 0.15],
    [0, 0.35],
    [0.4, 0.2],
  ],
  "left door": [
    [0.48, 0.2],
    [-0.5, 0.07],
    [0.45, 0.25],
  ],
  "right door": [
    [0.48, 0.2],
    [0.5, 0.07],
    [0.45, 0.25],
  ],
  roof: [
    [0.6, 0.25],
    [0, 0.35],
    [0.88, 0.08],
  ],
  glass: [
    [0.55, 0.45],
    [0, 0.45],
    [0.75, 0.15],
  ],
  floor: [
    [0.5, 0.4],
    [0, 0.4],
    [0.2, 0.08],
  ],
  boot: [
    [1.12, 0.15],
    [0, 0.35],
    [0.42, 0.15],
  ],
  tail: [
    [1.28, 0.12],
    [0, 0.35],
    [0.38, 0.15],
  ],
  "front wheels": [
    [0, 0.05],
    [0, 0.5],
    [0.21, 0.05],
  ],
  "rear wheels": [
    [1, 0.05],
    [0, 0.5],
    [0.21, 0.05],
  ],
  "underneath front": [
    [0.15, 0.25],
    [0, 0.3],
    [0.14, 0.07],
  ],
  "underneath rear": [
    [0.85, 0.25],
    [0, 0.3],
    [0.15, 0.08],
  ],
};
export const ANYWHERE: Spans = [
  [0.5, 0.75],
  [0, 0.5],
  [0.45, 0.4],
]; // a part nobody gave a zone
const WHEEL_ZONES: readonly (string | null)[] = ["front wheels", "rear wheels"];
const PAIRED_WITHIN = 0.02; // half-width of y, in tracks, of an even number of pieces shared between both wheels
/** m, half-width of a part's centre found with a tape measure: common practice, no source. */
export const MEASURED_WITHIN = 0.025;
/** How far a car may reach whose own outside nobody measured, in the same shares: common practice, no source. */
export const OUTLINE: Spans = [
  [-0.5, 1.6],
  [-0.7, 0.7],
  [0, 1.3],
];

/**
 * Where a part's centre is, m; an axis is null when the car's own dimensions to scale it by are not known.
 *
 * `by`: for each known axis "measured", "zone" or "anywhere" (no zone either). `apart`: what two halves of the pieces
 * being one on each side adds to the square of their radius of gyration, m². `outside`: axes on which it lies beyond
 * the car's outline, by more than how well the place is known: a slip of the tape, or a wrong sign.
 */
export type Place = {
  readonly part: string;
  readonly x: Uncertain | null;
  readonly y: Uncertain | null;
  readonly z: Uncertain | null;
  readonly by: Readonly<Partial<Record<Axis, "measured" | "zone" | "anywhere">>>;
  readonly apart: number;
  readonly outside: readonly Axis[];
};

/** The mean of both tracks, m, or the one that is known. */
export function meanTrack(car: Car | null): number | null {
  const tracks = [car?.track_front, car?.track_rear].flatMap((track) => (track ? [track.value] : []));
  return tracks.length > 0 ? tracks.reduce((sum, track) => sum + track, 0) / tracks.length : null;
}

/** What each axis is scaled by: wheelbase, mean track, mean track; m. */
export function scalesOf(car: Car | null): readonly [number | null, number | null, number | null] {
  const track = meanTrack(car);
  return [car?.wheelbase?.value ?? null, track, track];
}

/** [low, high] of each axis that the car's outside keeps within, m: its own dimensions, else what cars reach. */
export function outlineOf(car: Car | null): readonly [Span | null, Span | null, Span | null] {
  const [x, y, z] = scalesOf(car).map((scale, at) => {
    const [low, high] = OUTLINE[at] as Span;
    return scale === null ? null : ([low * scale, high * scale] as const);
  }) as [Span | null, Span | null, Span | null];
  const front = car?.front_overhang?.value ?? null;
  return [
    car?.length && front !== null ? [-front, car.length.value - front] : x,
    car?.width ? [-0.5 * car.width.value, 0.5 * car.width.value] : y,
    car?.height ? [0, car.height.value] : z,
  ];
}

/** The place of a part of which `count` pieces are moved together. */
export function placeOf(car: Car | null, part: Part, count: number): Place {
  const track = meanTrack(car);
  const paired = WHEEL_ZONES.includes(part.zone) && part.y === null && count % 2 === 0 && track !== null;
  const zone = ZONE_PLACES[part.zone ?? ""] ?? ANYWHERE;
  const spans: Spans = paired ? [zone[0], [0, PAIRED_WITHIN], zone[2]] : zone;
  const otherwise = part.zone ? "zone" : "anywhere";
  const typed = [part.x, part.y, part.z] as const;
  const [scales, outline] = [scalesOf(car), outlineOf(car)];
  const [x, y, z] = [0, 1, 2].map((at) => {
    const rough = inZone(spans[at] as Span, scales[at] ?? null, outline[at] ?? null);
    return onAxis(`place:${part.id}:${AXES[at]}`, typed[at] ?? null, part.place_within, rough);
  }) as [Uncertain | null, Uncertain | null, Uncertain | null];
  const known = AXES.flatMap((axis, at) =>
    [x, y, z][at] ? [[axis, typed[at] ? "measured" : otherwise] as const] : [],
  );
  const apart = paired ? 0.5 * track * (0.5 * track) : 0;
  return {
    part: part.id,
    x,
    y,
    z,
    by: Object.fromEntries(known),
    apart,
    outside: outside(typed, part.place_within, outline),
  };
}

/** [middle, half-width] of a zone on one axis, m, its middle no farther out than the car. */
function inZone(span: Span, scale: number | null, outline: Span | null): Span | null {
  if (scale === null || !outline) return null;
  return [Math.min(Math.max(span[0] * scale, outline[0]), outline[1]), span[1] * scale];
}

function onAxis(source: string, typed: Quantity | null, within: Quantity | null, rough: Span | null): Uncertain | null {
  if (typed) return uncertain(typed.value, { [source]: rectangular(halfWidth(typed, within)) });
  return rough && uncertain(rough[0], { [source]: rectangular(rough[1]) });
}

/** How well a measured place is known, m: as somebody said, else a tape measure's, no finer than the last digit. */
function halfWidth(typed: Quantity, within: Quantity | null): number {
  return within ? within.value : Math.max(MEASURED_WITHIN, 0.5 * typed.last_digit);
}

/** The axes on which what was typed lies beyond the outline; a zone's place never does. */
function outside(
  typed: readonly (Quantity | null)[],
  within: Quantity | null,
  outline: readonly (Span | null)[],
): Axis[] {
  const slack = within ? within.value : MEASURED_WITHIN;
  return AXES.filter((_, at) => {
    const [quantity, span] = [typed[at] ?? null, outline[at] ?? null];
    return !!quantity && !!span && (quantity.value + slack < span[0] || quantity.value - slack > span[1]);
  });
}
