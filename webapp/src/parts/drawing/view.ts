/**
 * The two views a car is drawn in, and the way between its axes and the drawing's points.
 *
 * From above with the front up, so that left is left as the driver sits; and from its left side, with the front to the left. One
 * point of a drawing is about one CSS pixel on a phone.
 */
import type { Shape } from "./shape";

export type Spot = { x: number; y: number; z: number };
export type Side = "top" | "side";

/** `scale`: points a metre. `body`: left, top, width and height of the car in it. `toPoint` and `toSpot` lead there and back. */
export type View = {
  side: Side;
  width: number;
  height: number;
  scale: number;
  body: readonly [number, number, number, number];
  toPoint: (spot: Spot) => readonly [number, number];
  /** The spot under a point; what this view does not show is taken from `from`. */
  toSpot: (u: number, v: number, from: Spot) => Spot;
};

export const WIDTH = 358;
const LONGEST = 430;
const WIDEST = 190; // leaves room for names at both sides
const EDGE = 12;
const NOSE = 20; // room for a word above the front
export const SIDE_LABELS = 56; // room for names above the car

export function topView(shape: Shape): View {
  const long = shape.rear - shape.front;
  const scale = Math.min(LONGEST / long, WIDEST / (2 * shape.half));
  const middle = WIDTH / 2;
  const width = 2 * shape.half * scale;
  return {
    side: "top",
    width: WIDTH,
    height: long * scale + NOSE + EDGE,
    scale,
    body: [middle - width / 2, NOSE, width, long * scale],
    toPoint: ({ x, y }) => [middle + y * scale, NOSE + (x - shape.front) * scale],
    toSpot: (u, v, { z }) => ({ x: (v - NOSE) / scale + shape.front, y: (u - middle) / scale, z }),
  };
}

export function sideView(shape: Shape): View {
  const scale = (WIDTH - 2 * EDGE) / (shape.rear - shape.front);
  const ground = SIDE_LABELS + EDGE + shape.height * scale;
  return {
    side: "side",
    width: WIDTH,
    height: ground + EDGE,
    scale,
    body: [EDGE, ground - shape.height * scale, WIDTH - 2 * EDGE, shape.height * scale],
    toPoint: ({ x, z }) => [EDGE + (x - shape.front) * scale, ground - z * scale],
    toSpot: (u, v, { y }) => ({ x: (u - EDGE) / scale + shape.front, y, z: Math.max(0, (ground - v) / scale) }),
  };
}

/** Points of the drawing under a place on the glass. */
export function pointAt(svg: SVGSVGElement, view: View, clientX: number, clientY: number): readonly [number, number] {
  const box = svg.getBoundingClientRect();
  return [((clientX - box.left) / box.width) * view.width, ((clientY - box.top) / box.height) * view.height];
}

/** How many CSS pixels one point is now. */
export function zoomOf(svg: SVGSVGElement, view: View): number {
  return svg.getBoundingClientRect().width / view.width;
}
