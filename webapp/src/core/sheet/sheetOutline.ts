/**
 * What can be cut: outlines and holes that are no shape, or holes that cannot lie in their outline, and why.
 *
 * A drawn hole lies where it is drawn, on the axes of its outline: across from the left and up from the bottom, a
 * rectangle's from its lower left corner, a circle's from that of the square around it. A hole given by its sizes alone
 * lies anywhere, so it is only refused when nothing so large could lie inside at all.
 */

import "../../laterErrors";
import { type Warned, warned } from "../garage/records";
import type { Quantity } from "../numbers/quantity";
import { add, compare, multiply, negate, type Ratio, ratio, ZERO } from "../numbers/ratio";
import { apart, crossing, inside, onGrid, type Point, type Spot } from "./polygon";
import type { Corner } from "./sheetCorners";

export const MOST_CORNERS = 200;
const LONGEST_SIDE = ratio(10n); // m; no sheet that goes into a car is longer

/** `form`: "rectangle" (`sizes`: width, height), "circle" (`sizes`: diameter) or "polygon" (`corners`: x, y). */
export type Shape = {
  readonly form: "rectangle" | "circle" | "polygon";
  readonly sizes: readonly Quantity[];
  readonly corners: readonly Corner[];
  readonly count: number;
};

/**
 * Why these shapes, the outline first and its holes after it, cannot be cut; null when they can.
 *
 * In `data`, shape 0 is the outline and the holes are counted from 1; so are sides.
 */
export function outlineTrouble(shapes: readonly Shape[]): Warned | null {
  for (const [at, shape] of shapes.entries()) {
    const trouble = shapeTrouble(at, shape);
    if (trouble) return trouble;
  }
  const points = shapes.map(pointsOf);
  const { spots } = onGrid(points);
  for (const [at, outline] of spots.entries()) {
    const sides = crossing(outline);
    if (sides) return warned("sheet_crosses", { shape: at, side: sides[0] + 1, other: sides[1] + 1 });
  }
  const [outline, ...holes] = shapes as [Shape, ...Shape[]];
  const tooLarge = holes.findIndex((hole, at) => !couldFit(hole, points[at + 1]!, outline, points[0]!));
  if (tooLarge >= 0) return warned("sheet_hole_outside", { hole: tooLarge + 1 });
  return holeTrouble(shapes, spots);
}

function shapeTrouble(at: number, { form, sizes, corners }: Shape): Warned | null {
  if (form === "polygon" && !(corners.length >= 3 && corners.length <= MOST_CORNERS)) {
    return warned("sheet_corners", { shape: at, corners: corners.length, most: MOST_CORNERS });
  }
  const huge = [...sizes, ...corners.flat()].find(({ exact }) => isBeyond(exact, LONGEST_SIDE));
  return huge ? warned("sheet_huge", { shape: at, text: huge.reads }) : null;
}

function isBeyond(size: Ratio, most: Ratio): boolean {
  return compare(size, most) > 0 || compare(size, negate(most)) < 0;
}

/** Where its corners lie; nothing for a circle. */
function pointsOf({ form, sizes, corners }: Shape): Point[] {
  if (form === "polygon") return corners.map(([across, up]) => [across.exact, up.exact] as const);
  if (form === "circle") return [];
  const [width, height] = sizes.map(({ exact }) => exact) as [Ratio, Ratio];
  return [
    [ZERO, ZERO],
    [width, ZERO],
    [width, height],
    [ZERO, height],
  ];
}

/** False for a drawn hole beyond a round outline, and for a sized one that is as wide or as long as its outline. */
function couldFit(hole: Shape, at: readonly Point[], outline: Shape, around: readonly Point[]): boolean {
  if (hole.form === "polygon") {
    return outline.form !== "circle" || at.every((point) => isInCircle(point, outline.sizes[0]!.exact));
  }
  const [mine, its] = [extentOf(hole, at), extentOf(outline, around)];
  return compare(mine.narrow, its.narrow) < 0 && compare(mine.reach, its.reach) < 0;
}

function isInCircle([x, y]: Point, across: Ratio): boolean {
  const [dx, dy] = [x, y].map((size) => add(add(size, size), negate(across))) as [Ratio, Ratio];
  return compare(add(multiply(dx, dx), multiply(dy, dy)), multiply(across, across)) < 0;
}

/** The smaller side of the box around it, and the square of the longest line in it or in the box. */
function extentOf({ form, sizes }: Shape, points: readonly Point[]): { narrow: Ratio; reach: Ratio } {
  if (form === "circle") {
    const across = sizes[0]!.exact;
    return { narrow: across, reach: multiply(across, across) };
  }
  const [wide, high] = ([0, 1] as const).map((axis) => spanOf(points.map((point) => point[axis]))) as [Ratio, Ratio];
  const narrow = compare(wide, high) < 0 ? wide : high;
  return { narrow, reach: add(multiply(wide, wide), multiply(high, high)) };
}

function spanOf(places: readonly Ratio[]): Ratio {
  const sorted = [...places].sort(compare);
  return add(sorted.at(-1)!, negate(sorted[0]!));
}

/** Of the drawn holes: whether each is inside a straight-sided outline, and whether two overlap. */
function holeTrouble(shapes: readonly Shape[], spots: readonly (readonly Spot[])[]): Warned | null {
  const drawn = shapes.flatMap(({ form }, at) => (at > 0 && form === "polygon" ? [at] : []));
  const around = spots[0]!;
  for (const [place, at] of drawn.entries()) {
    const hole = spots[at]!;
    const fits = !around.length || (apart(hole, around) && inside(hole[0]!, around));
    if (!fits) return warned("sheet_hole_outside", { hole: at });
    const other = drawn.slice(0, place).find((before) => overlap(hole, spots[before]!));
    if (other !== undefined) return warned("sheet_holes_overlap", { hole: other, other: at });
  }
  return null;
}

function overlap(a: readonly Spot[], b: readonly Spot[]): boolean {
  return !apart(a, b) || inside(a[0]!, b) || inside(b[0]!, a);
}
