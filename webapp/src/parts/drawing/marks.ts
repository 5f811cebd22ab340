/**
 * Weights at their places: what a mark says, how large it is, and which of them a finger meant.
 *
 * The area of a mark stands for its mass. What came off is an open circle, what went on a filled square, what is only chosen has a
 * broken edge: told apart by form, colour only helps.
 */
import type { Place } from "../../core/balance/place";
import { type Uncertain, u } from "../../core/numbers/uncertain";
import type { Spot, View } from "./view";

/** `mass`: kg, on the car positive; `says` with how sure it is, `brief` without. `half`: how far to each side it may really lie, m. `apart`: m to each wheel of a pair. */
export type Mark = {
  key: string;
  part: string;
  name: string;
  mass: number;
  says: string;
  brief: string;
  planned: boolean;
  spot: Spot;
  half: Spot;
  apart: number;
};

const LARGEST = 15; // points, radius of the heaviest
const SMALLEST = 2;
const REACH = 26; // CSS pixels around a fingertip

/** Where a place is and how far off it may be; an axis nobody can tell is not a number. */
export function spotOf({ x, y, z }: Place): Spot {
  return { x: x?.value ?? NaN, y: y?.value ?? NaN, z: z?.value ?? NaN };
}

/** Half-widths of a place, m: it is somewhere within, anywhere alike. */
export function halfOf(place: Place): Spot {
  const half = (axis: Uncertain | null) => (axis ? Math.sqrt(3) * u(axis) : NaN);
  return { x: half(place.x), y: half(place.y), z: half(place.z) };
}

/** Marks this view can show, the heaviest first, so that the light ones lie on top. */
export function shownIn(marks: readonly Mark[], view: View): Mark[] {
  const shown = marks.filter(({ spot }) => view.toPoint(spot).every(Number.isFinite));
  return shown.sort((a, b) => Math.abs(b.mass) - Math.abs(a.mass));
}

export function heaviestOf(marks: readonly Mark[]): number {
  return marks.reduce((most, { mass }) => Math.max(most, Math.abs(mass)), 0);
}

function radiusOf(mass: number, heaviest: number): number {
  return Math.max(SMALLEST, LARGEST * Math.sqrt(Math.abs(mass) / (heaviest || 1)));
}

/** Its classes: what its form says to the eye. */
export function kindOf({ mass, planned }: Pick<Mark, "mass"> & { planned?: boolean }): string {
  return `mark ${mass > 0 ? "on" : "off"}${planned ? " planned" : ""}`;
}

/** The mark as a path around nought: a circle or a square of one area, with its sign where there is room. */
export function markPath(
  { mass, apart }: Pick<Mark, "mass" | "apart">,
  heaviest: number,
  view: Pick<View, "side" | "scale">,
): string {
  const beside = view.side === "top" ? apart * view.scale : 0;
  if (!beside) return shapePath(0, radiusOf(mass, heaviest), mass > 0);
  const each = radiusOf(mass / 2, heaviest);
  return shapePath(-beside, each, mass > 0) + shapePath(beside, each, mass > 0);
}

function shapePath(at: number, r: number, on: boolean): string {
  const side = r * Math.sqrt(Math.PI);
  const edge = on
    ? `M${at - side / 2} ${-side / 2}h${side}v${side}h${-side}z`
    : `M${at - r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
  if (r < 5) return edge;
  const arm = r * 0.5;
  return `${edge}M${at - arm} 0h${2 * arm}${on ? `M${at} ${-arm}v${2 * arm}` : ""}`;
}

/** The marks within a finger's reach of a point, the nearest first. `zoom`: CSS pixels a point. */
export function under(
  marks: readonly Mark[],
  view: View,
  [right, down]: readonly [number, number],
  zoom: number,
): Mark[] {
  const reach = REACH / zoom;
  const far = (mark: Mark) => Math.min(...centresOf(mark, view).map(([a, b]) => Math.hypot(a - right, b - down)));
  const near = shownIn(marks, view)
    .map((mark) => ({ mark, far: far(mark) }))
    .filter((each) => each.far <= reach);
  return near.sort((a, b) => a.far - b.far).map(({ mark }) => mark);
}

/** Where the mark is drawn: two places for a pair of wheels seen from above. */
export function centresOf({ spot, apart }: Mark, view: View): (readonly [number, number])[] {
  const [right, down] = view.toPoint(spot);
  const beside = view.side === "top" ? apart * view.scale : 0;
  return beside
    ? [
        [right - beside, down],
        [right + beside, down],
      ]
    : [[right, down]];
}
