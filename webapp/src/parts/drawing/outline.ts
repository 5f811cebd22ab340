/** A closed car in outline, of no make: lines of its body as SVG paths, in the points of a view. */
import type { Shape } from "./shape";
import type { Spot, View } from "./view";

/** A path through spots: each step is a letter of SVG's path language and the spots it takes. */
type Step = readonly [letter: "M" | "L" | "Q" | "Z", ...spots: Spot[]];

function path(view: View, steps: readonly Step[]): string {
  const points = (spots: readonly Spot[]) => spots.map((spot) => view.toPoint(spot).map(short).join(" ")).join(" ");
  return steps.map(([letter, ...spots]) => `${letter}${points(spots)}`).join(" ");
}

const short = (points: number) => Math.round(points * 10) / 10;

/** The body, and the lines of its glass: seen from above. */
export function topLines(shape: Shape, view: View): { body: string; glass: string } {
  const { front, rear, half, wheelbase } = shape;
  const long = rear - front;
  const at = (x: number, y: number): Spot => ({ x, y, z: 0 });
  const ahead = front + 0.13 * long;
  const behind = rear - 0.1 * long;
  const across = (x: number, share: number, bend: number): Step[] => [
    ["M", at(x, -share * half)],
    ["Q", at(x + bend * long, 0), at(x, share * half)],
  ];
  return {
    body: path(view, [
      ["M", at(ahead, -half)],
      ["Q", at(front, -0.94 * half), at(front, -0.35 * half)],
      ["L", at(front, 0.35 * half)],
      ["Q", at(front, 0.94 * half), at(ahead, half)],
      ["L", at(behind, half)],
      ["Q", at(rear, 0.96 * half), at(rear, 0.5 * half)],
      ["L", at(rear, -0.5 * half)],
      ["Q", at(rear, -0.96 * half), at(behind, -half)],
      ["Z"],
    ]),
    glass: path(view, [
      ...across(0.26 * wheelbase, 0.88, -0.05),
      ...across(0.5 * wheelbase, 0.7, -0.03),
      ...across(0.9 * wheelbase, 0.7, 0.02),
      ...across(1.1 * wheelbase, 0.84, 0.03),
      ["M", at(0.26 * wheelbase, -0.88 * half)],
      ["L", at(0.5 * wheelbase, -0.7 * half)],
      ["L", at(0.9 * wheelbase, -0.7 * half)],
      ["L", at(1.1 * wheelbase, -0.84 * half)],
      ["M", at(0.26 * wheelbase, 0.88 * half)],
      ["L", at(0.5 * wheelbase, 0.7 * half)],
      ["L", at(0.9 * wheelbase, 0.7 * half)],
      ["L", at(1.1 * wheelbase, 0.84 * half)],
    ]),
  };
}

/** The body, and its side windows: seen from the left. */
export function sideLines(shape: Shape, view: View): { body: string; glass: string } {
  const { front, rear, height, wheelbase, radiusFront } = shape;
  const long = rear - front;
  const belt = shape.beltline ?? 0.68 * height;
  const sill = 0.55 * radiusFront;
  const at = (x: number, z: number): Spot => ({ x, y: 0, z });
  return {
    body: path(view, [
      ["M", at(front + 0.03 * long, sill)],
      ["Q", at(front, 0.4 * belt), at(front + 0.02 * long, 0.66 * belt)],
      ["Q", at(front + 0.05 * long, 0.88 * belt), at(0.22 * wheelbase, belt)],
      ["Q", at(0.38 * wheelbase, 0.97 * height), at(0.6 * wheelbase, height)],
      ["Q", at(0.85 * wheelbase, 0.99 * height), at(1.12 * wheelbase, 1.04 * belt)],
      ["Q", at(rear - 0.02 * long, belt), at(rear - 0.01 * long, 0.9 * belt)],
      ["Q", at(rear, 0.5 * belt), at(rear - 0.03 * long, sill)],
      ["Z"],
    ]),
    glass: path(view, [
      ["M", at(0.3 * wheelbase, 1.01 * belt)],
      ["Q", at(0.42 * wheelbase, 0.92 * height), at(0.62 * wheelbase, 0.94 * height)],
      ["Q", at(0.82 * wheelbase, 0.93 * height), at(1.0 * wheelbase, 1.03 * belt)],
      ["Z"],
      ["M", at(0.66 * wheelbase, 0.94 * height)],
      ["L", at(0.66 * wheelbase, 1.01 * belt)],
    ]),
  };
}
