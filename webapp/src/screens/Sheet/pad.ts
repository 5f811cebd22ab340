/**
 * The field that corners are tapped on: how wide it is, which step it snaps to, and where a tap lands.
 *
 * Widths and steps are plain decimals in the garage's unit of length. A tapped corner is written to the step, so the
 * record holds what a person would have typed.
 */

import { factor } from "../../core/numbers/quantity";
import { toNumber } from "../../core/numbers/ratio";
import { showStepped } from "../../core/numbers/shownLater";
import type { CornerText } from "../../core/sheet/sheetCorners";
import type { Spot } from "../../parts/sheet/geometry";
import { readingOf } from "../../parts/words/reading";

export const FIELDS: Readonly<Record<string, readonly number[]>> = {
  mm: [100, 200, 500, 1000, 2000],
  in: [4, 8, 20, 40, 80],
};
export const STEPS: Readonly<Record<string, readonly string[]>> = {
  mm: ["1", "5", "10", "50"],
  in: ["0.125", "0.25", "0.5", "1.0"],
};
export const SIDE = 340; // the drawing's units across the pad
export const EDGE = 22; // of them, left and below, for the numbers
export const SPAN = SIDE - EDGE - 10; // and what is left for the field
const NEAR = 22; // a finger's width

/** Units to a metre on a field so many length units wide. */
export function scaleOf(field: number, unit: string): number {
  return SPAN / (field * metreOf(unit));
}

function metreOf(unit: string): number {
  return toNumber(factor("length", unit));
}

export function toPad([across, up]: Spot, scale: number): Spot {
  return [EDGE + across * scale, SIDE - EDGE - up * scale];
}

/** Where a tap lands, snapped, as typed text; never left of or below the axes. */
export function snapped([x, y]: Spot, scale: number, unit: string, step: string): CornerText {
  const across = Math.max(0, Math.min(SPAN, x - EDGE)) / scale;
  const up = Math.max(0, Math.min(SPAN, SIDE - EDGE - y)) / scale;
  return [showStepped(across, unit, step), showStepped(up, unit, step)];
}

/** The corner under a finger, or null. */
export function cornerAt(spot: Spot, corners: readonly (Spot | null)[], scale: number): number | null {
  let best: number | null = null;
  let near = NEAR;
  for (const [at, corner] of corners.entries()) {
    if (!corner) continue;
    const [x, y] = toPad(corner, scale);
    const far = Math.hypot(spot[0] - x, spot[1] - y);
    if (far > near) continue;
    [best, near] = [at, far];
  }
  return best;
}

/** Each corner in metres; null for one that cannot be read. */
export function spotsOf(corners: readonly CornerText[], unit: string): (Spot | null)[] {
  return corners.map(([across, up]) => {
    const [x, y] = [readingOf("length", across, unit), readingOf("length", up, unit)];
    return x.state === "read" && y.state === "read" ? [x.value, y.value] : null;
  });
}

/** The narrowest field that holds these spots (metres); the usual one while there are none. */
export function fieldFor(spots: readonly (Spot | null)[], unit: string): number {
  const fields = FIELDS[unit]!;
  const places = spots.flatMap((spot) => spot ?? []);
  const far = Math.max(...places) / metreOf(unit);
  return places.length ? (fields.find((field) => field >= far) ?? fields.at(-1)!) : fields[2]!;
}
