/**
 * Where the lines of a sheet's drawing go: to scale, in the drawing's own units, y down as on a screen.
 *
 * The outline stands in its frame with room for dimensions; drawn holes lie where they are; holes known by their sizes
 * alone stand in a row below it, to the same scale, because nobody said where they are.
 */
import type { Piece } from "../../core/sheet/sheet";
import type { Shape } from "../../core/sheet/sheetOutline";

export type Spot = readonly [x: number, y: number];
export type Line = { readonly spots: readonly Spot[] } | { readonly middle: Spot; readonly radius: number };
/** A hole without a place: its line, its words, and where they stand. */
export type Loose = { readonly line: Line; readonly words: string; readonly at: Spot };
/** `inward`: one unit from the side into the outline. */
export type Side = { readonly from: Spot; readonly to: Spot; readonly metres: number; readonly inward: Spot };
export type Drawing = {
  readonly width: number;
  readonly height: number;
  /** Of the drawing's units to a metre. */
  readonly scale: number;
  readonly box: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly size: { readonly across: number; readonly up: number };
  readonly outline: Line;
  readonly placed: readonly Line[];
  readonly loose: readonly Loose[];
};

export const WIDTH = 340;
const MOST_UP = 220; // the outline is no higher than this
const ROOM = { left: 46, right: 10, top: 10, bottom: 30 };
const WORDS = 18; // the height of a line of words below a hole without a place
const LETTER = 6.8; // how wide a letter of them is, at most

type Extent = { readonly left: number; readonly bottom: number; readonly across: number; readonly up: number };

export function drawingOf({ outline, holes }: Pick<Piece, "outline" | "holes">): Drawing {
  const drawn = holes.filter(({ form }) => form === "polygon");
  const whole = extentOf([outline, ...drawn]); // a hole drawn beside the outline is to be seen there
  const sized = holes.filter(({ form }) => form !== "polygon");
  const scale = Math.min(
    (WIDTH - ROOM.left - ROOM.right) / whole.across,
    MOST_UP / whole.up,
    ...sized.map((hole) => extentOf([hole])).map(({ across, up }) => Math.min(WIDTH / across, MOST_UP / up)),
  );
  const left = ROOM.left + (WIDTH - ROOM.left - ROOM.right - whole.across * scale) / 2;
  const bottom = ROOM.top + whole.up * scale;
  const put = ([x, y]: Spot): Spot => [left + (x - whole.left) * scale, bottom - (y - whole.bottom) * scale];
  const own = extentOf([outline]);
  const [low, high] = [put([own.left, own.bottom]), put([own.left + own.across, own.bottom + own.up])];
  const { loose, height } = inRows(sized, scale, bottom + ROOM.bottom);
  return {
    width: WIDTH,
    height,
    scale,
    box: { left: low[0], right: high[0], top: high[1], bottom: low[1] },
    size: { across: own.across, up: own.up },
    outline: lineOf(outline, scale, put),
    placed: drawn.map((hole) => lineOf(hole, scale, put)),
    loose,
  };
}

/** The sides of a straight-sided outline with their true lengths; none of a circle. */
export function sidesOf({ outline, scale }: Drawing): Side[] {
  if (!("spots" in outline)) return [];
  const { spots } = outline;
  const ends = spots.map((from, at) => [from, spots[(at + 1) % spots.length]!] as const);
  const turn = Math.sign(ends.reduce((sum, [a, b]) => sum + a[0] * b[1] - b[0] * a[1], 0));
  return ends.map(([from, to]) => {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const long = Math.hypot(dx, dy) || 1;
    return { from, to, metres: Math.hypot(dx, dy) / scale, inward: [(-turn * dy) / long, (turn * dx) / long] };
  });
}

/** Corners across and up of a shape where it lies, in metres: a rectangle's from its lower left corner. */
export function cornersOf({ form, sizes, corners }: Shape): Spot[] {
  if (form === "polygon") return corners.map(([across, up]) => [across.value, up.value] as const);
  const [wide, high] = form === "circle" ? [sizes[0]!.value, sizes[0]!.value] : [sizes[0]!.value, sizes[1]!.value];
  return [
    [0, 0],
    [wide, 0],
    [wide, high],
    [0, high],
  ];
}

/** The line a shape is cut along, in metres, a circle as many short sides: what a hole drawn in it has around it. */
export function edgeOf(shape: Shape): Spot[] {
  if (shape.form !== "circle") return cornersOf(shape);
  const radius = shape.sizes[0]!.value / 2;
  return Array.from({ length: 48 }, (_, at): Spot => {
    const turn = (at * Math.PI) / 24;
    return [radius + radius * Math.cos(turn), radius + radius * Math.sin(turn)];
  });
}

function extentOf(shapes: readonly Shape[]): Extent {
  const spots = shapes.flatMap(cornersOf);
  const [left, right] = spanOf(spots.map(([x]) => x));
  const [bottom, top] = spanOf(spots.map(([, y]) => y));
  return { left, bottom, across: right - left, up: top - bottom };
}

function spanOf(places: readonly number[]): [number, number] {
  return [Math.min(...places), Math.max(...places)];
}

function lineOf(shape: Shape, scale: number, put: (spot: Spot) => Spot): Line {
  if (shape.form !== "circle") return { spots: cornersOf(shape).map(put) };
  const radius = shape.sizes[0]!.value / 2;
  return { middle: put([radius, radius]), radius: radius * scale };
}

/** "12 × ⌀ 25 mm", "2 × 40 mm × 60 mm". */
function holeWords({ form, sizes, count }: Shape): string {
  const size = form === "circle" ? `⌀ ${sizes[0]!.reads}` : sizes.map(({ reads }) => reads).join(" × ");
  return count > 1 ? `${count} × ${size}` : size;
}

/** Holes side by side, a new row when one is full. */
function inRows(holes: readonly Shape[], scale: number, top: number): { loose: Loose[]; height: number } {
  const loose: Loose[] = [];
  let [x, y, tallest] = [0, top, 0];
  for (const shape of holes) {
    const { across, up } = extentOf([shape]);
    const words = holeWords(shape);
    const [wide, high] = [Math.max(across * scale, (words.length + 1) * LETTER), up * scale];
    if (x > 0 && x + wide > WIDTH) [x, y, tallest] = [0, y + tallest + WORDS, 0];
    const corner: Spot = [x + (wide - across * scale) / 2, y + high];
    const put = ([right, above]: Spot): Spot => [corner[0] + right * scale, corner[1] - above * scale];
    loose.push({ line: lineOf(shape, scale, put), words, at: [x + wide / 2, y + high + WORDS - 4] });
    [x, tallest] = [x + wide + 8, Math.max(tallest, high)];
  }
  return { loose, height: loose.length ? y + tallest + WORDS + 4 : top };
}
