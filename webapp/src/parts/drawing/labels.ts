/** Names beside the drawing: of the few heaviest marks only, and never one over another. */
import { centresOf, type Mark, shownIn } from "./marks";
import { SIDE_LABELS, type View, WIDTH } from "./view";

/** `from`: the mark's point; `at`: where the first line of words begins, ends or has its middle. */
export type Label = {
  mark: Mark;
  from: readonly [number, number];
  at: readonly [number, number];
  anchor: "start" | "middle" | "end";
  lines: readonly string[];
};

export const LINE = 14;
const A_SIDE = 4; // names at each side of the view from above, and above the one from the left
const LONGEST = 12; // letters that fit beside the car

/** Places at least `gap` apart between `low` and `high`, each as near as can be to where it is wanted; `wanted` ascends. */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const placed: number[] = [];
  for (const want of wanted) placed.push(Math.max(want, placed.length ? placed[placed.length - 1]! + gap : low));
  for (let i = placed.length - 1, most = high; i >= 0; i--, most = placed[i + 1]! - gap)
    placed[i] = Math.min(placed[i]!, most);
  return placed;
}

/** A name in at most two short lines, with an ellipsis where it is longer still. */
export function wrapped(name: string, longest = LONGEST): string[] {
  const cut = (words: string) => (words.length > longest ? `${words.slice(0, longest - 1).trimEnd()}…` : words);
  const at = name.length > longest ? name.lastIndexOf(" ", longest) : name.length;
  if (at <= 0) return [cut(name)];
  const rest = name.slice(at + 1);
  return rest ? [name.slice(0, at), cut(rest)] : [name.slice(0, at)];
}

export function labelsOf(marks: readonly Mark[], view: View): Label[] {
  const heaviest = shownIn(marks, view).slice(0, view.side === "top" ? 2 * A_SIDE : A_SIDE);
  return view.side === "top" ? beside(heaviest, view) : above(heaviest, view);
}

const linesOf = (mark: Mark) => [...wrapped(mark.name), mark.brief];

/** Left of the car what sits left, right what sits right; what sits in the middle goes where there is room. */
function beside(marks: readonly Mark[], view: View): Label[] {
  const middle = WIDTH / 2;
  const left: Mark[] = [];
  const right: Mark[] = [];
  const sideOf = (mark: Mark) => (Math.abs(view.toPoint(mark.spot)[0] - middle) < 4 ? 0 : Math.sign(mark.spot.y));
  for (const mark of [...marks].sort((a, b) => Math.abs(sideOf(b)) - Math.abs(sideOf(a)))) {
    const goesLeft = sideOf(mark) === 0 ? left.length <= right.length : sideOf(mark) < 0;
    const wanted = goesLeft ? left : right;
    if (wanted.length < A_SIDE) wanted.push(mark);
  }
  return [...column(left, view, true), ...column(right, view, false)];
}

function column(marks: readonly Mark[], view: View, isLeft: boolean): Label[] {
  const byHeight = [...marks].sort((a, b) => view.toPoint(a.spot)[1] - view.toPoint(b.spot)[1]);
  const gap = 3 * LINE + 6;
  const tops = spread(
    byHeight.map((mark) => view.toPoint(mark.spot)[1] - LINE),
    gap,
    2.4 * LINE,
    view.height - 2.2 * LINE,
  );
  return byHeight.map((mark, i) => {
    const points = centresOf(mark, view);
    const from = points.length > 1 && !isLeft ? points[1]! : points[0]!;
    return { mark, from, at: [isLeft ? 0 : WIDTH, tops[i]!], anchor: isLeft ? "start" : "end", lines: linesOf(mark) };
  });
}

function above(marks: readonly Mark[], view: View): Label[] {
  const along = [...marks].sort((a, b) => view.toPoint(a.spot)[0] - view.toPoint(b.spot)[0]);
  const gap = WIDTH / A_SIDE;
  const middles = spread(
    along.map((mark) => view.toPoint(mark.spot)[0]),
    gap,
    gap / 2,
    WIDTH - gap / 2,
  );
  return along.map((mark, i) => {
    const lines = linesOf(mark);
    const top = SIDE_LABELS - 8 - (lines.length - 1) * LINE;
    return { mark, from: view.toPoint(mark.spot), at: [middles[i]!, top], anchor: "middle", lines };
  });
}
