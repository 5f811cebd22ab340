/**
 * One view of the car with weights at their places: outline, wheels, beltline, marks, names of the heaviest, the centre.
 *
 * What stands still is drawn once and kept; what moves (the mark being placed, the centre) gets its place written straight into
 * its attributes, so that three hundred marks cost nothing while a finger drags one.
 */
import { useMemo, useRef } from "preact/hooks";
import { CarBody, Words } from "./CarBody";
import { type Centre, CentreMark } from "./CentreMark";
import type { Placing } from "./dragging";
import { type Label, LINE, labelsOf } from "./labels";
import { heaviestOf, kindOf, type Mark, markPath, shownIn, under } from "./marks";
import type { Mover } from "./mover";
import { PlacingMark } from "./PlacingMark";
import type { Shape } from "./shape";
import { pointAt, type Spot, type View, zoomOf } from "./view";
import "./drawing.css";

export type CarViewProps = {
  shape: Shape;
  view: View;
  label: string;
  marks: readonly Mark[];
  /** The mark that is looked at. */
  picked?: Mark | null;
  onPick?: (near: Mark[]) => void;
  centre?: Centre | null;
  centreMover?: Mover | null;
  /** While a mark is being placed; `picked` is then that mark, where it stood before. */
  placing?: (Placing & { mass: number }) | null;
};

export function CarView({ shape, view, label, marks, picked, onPick, centre, centreMover, placing }: CarViewProps) {
  const svg = useRef<SVGSVGElement>(null);
  const still = useMemo(() => <CarBody shape={shape} view={view} />, [shape, view]);
  const layer = useMemo(() => <Marks marks={marks} view={view} named={!placing} />, [marks, view, !placing]);
  const pick = (event: MouseEvent) => {
    if (!svg.current || !onPick || placing) return;
    const near = under(
      marks,
      view,
      pointAt(svg.current, view, event.clientX, event.clientY),
      zoomOf(svg.current, view),
    );
    if (near.length) onPick(near);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: what a tap picks, the list below the drawing picks by keys
    <svg
      ref={svg}
      class="car-view"
      viewBox={`0 0 ${view.width} ${view.height}`}
      role="img"
      aria-label={label}
      onClick={pick}
    >
      {still}
      {picked && <Doubt mark={picked} view={view} />}
      {layer}
      {picked && !placing && <Ring mark={picked} view={view} />}
      {centre && <CentreMark centre={centre} view={view} mover={centreMover ?? null} />}
      {placing && <PlacingMark view={view} placing={placing} mass={placing.mass} heaviest={heaviestOf(marks)} />}
    </svg>
  );
}

function Marks({ marks, view, named }: { marks: readonly Mark[]; view: View; named: boolean }) {
  const shown = shownIn(marks, view);
  const heaviest = heaviestOf(marks);
  const labels = named ? labelsOf(marks, view) : [];
  const rough = new Set(shown.map((mark) => whiskersOf(mark, view)).filter(Boolean)); // those of one zone are all alike
  return (
    <g class="marks">
      {[...rough].map((d) => (
        <path key={d} class="doubt" d={d} />
      ))}
      {labels.map((label) => (
        <Leader key={label.mark.key} label={label} />
      ))}
      {shown.map((mark) => (
        <path
          key={mark.key}
          class={kindOf(mark)}
          d={markPath(mark, heaviest, view)}
          transform={`translate(${view.toPoint(mark.spot).join(" ")})`}
        />
      ))}
      {labels.map((label) => (
        <Name key={label.mark.key} label={label} />
      ))}
    </g>
  );
}

const BESIDE = 82; // points that words at the side take

function Leader({ label: { from, at, anchor } }: { label: Label }) {
  const [x, y] =
    anchor === "middle"
      ? [at[0], at[1] + 2 * LINE + 2]
      : [at[0] + (anchor === "start" ? 1 : -1) * BESIDE, at[1] + LINE - 4];
  return <path class="leader" d={`M${x} ${y}L${from[0]} ${from[1]}`} />;
}

function Name({
  label: {
    at: [x, y],
    anchor,
    lines,
  },
}: {
  label: Label;
}) {
  return (
    <g>
      {lines.map((line, i) => (
        <Words key={i} at={[x, y + i * LINE]} anchor={anchor} strong={i === lines.length - 1}>
          {line}
        </Words>
      ))}
    </g>
  );
}

const LARGE = 10; // points: a doubt smaller than a mark says nothing

/** The corners of where it may be, left, top, width and height; null where that is no larger than a mark. */
function doubtOf({ spot, half }: Mark, view: View): readonly [number, number, number, number] | null {
  const reach = (sign: number): Spot => ({
    x: spot.x + sign * half.x,
    y: spot.y + sign * half.y,
    z: spot.z + sign * half.z,
  });
  const [a, b] = [view.toPoint(reach(-1)), view.toPoint(reach(1))];
  const [wide, high] = [Math.abs(b[0] - a[0]), Math.abs(b[1] - a[1])];
  return Math.max(wide, high) > 2 * LARGE ? [Math.min(a[0], b[0]), Math.min(a[1], b[1]), wide, high] : null;
}

/** Two dotted lines as long as the doubt, crossing at the mark. */
function whiskersOf(mark: Mark, view: View): string {
  const box = doubtOf(mark, view);
  if (!box) return "";
  const [left, top, wide, high] = box;
  return `M${left} ${top + high / 2}h${wide}M${left + wide / 2} ${top}v${high}`;
}

function Doubt({ mark, view }: { mark: Mark; view: View }) {
  const box = doubtOf(mark, view);
  return box && <rect class="doubt" x={box[0]} y={box[1]} width={box[2]} height={box[3]} />;
}

function Ring({ mark, view }: { mark: Mark; view: View }) {
  const [u, v] = view.toPoint(mark.spot);
  return <path class="ring" d={`M${u - 20} ${v}a20 20 0 1 0 40 0a20 20 0 1 0 -40 0z`} />;
}
