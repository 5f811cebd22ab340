/** A sheet drawn to scale with its dimensions; where sides cross they are drawn thick, as the words beside it say. */
import type { Warned } from "../../core/garage/records";
import { showLength } from "../../core/numbers/shown";
import type { Piece } from "../../core/sheet/sheet";
import { unitOf } from "../../garage/units";
import { type Drawing, drawingOf, type Line, type Side, type Spot, sidesOf } from "./geometry";
import "./SheetDrawing.css";

const READABLE = 46; // a shorter side has no room for its length
const MANY = 12; // sides; more lengths than these would be a thicket

type Props = { piece: Piece; label: string; trouble?: Warned | null };

export function SheetDrawing({ piece, label, trouble = null }: Props) {
  const drawing = drawingOf(piece);
  const isOutlines = trouble?.code === "sheet_crosses" && trouble.data.shape === 0;
  return (
    <figure class="sheet-drawing">
      <svg viewBox={`0 0 ${drawing.width} ${Math.ceil(drawing.height)}`} role="img" aria-label={label}>
        <Outlined line={drawing.outline} kind="outline" />
        {drawing.placed.map((line, at) => (
          <Outlined key={at} line={line} kind="hole" />
        ))}
        {drawing.loose.map((each, at) => (
          <g key={at}>
            <Outlined line={each.line} kind="hole" />
            <text x={each.at[0]} y={each.at[1]}>
              {each.words}
            </text>
          </g>
        ))}
        <Overall drawing={drawing} round={piece.outline.form === "circle"} />
        {piece.outline.form === "polygon" && <Lengths drawing={drawing} />}
        {isOutlines && <Crossing sides={sidesOf(drawing)} data={trouble.data} />}
      </svg>
      {drawing.loose.length > 0 && (
        <figcaption class="small quiet">Holes without a place stand below, to the same scale.</figcaption>
      )}
    </figure>
  );
}

function Outlined({ line, kind }: { line: Line; kind: "outline" | "hole" }) {
  if ("spots" in line) return <path class={kind} d={pathOf(line.spots)} />;
  return <circle class={kind} cx={line.middle[0]} cy={line.middle[1]} r={line.radius} />;
}

export function pathOf(spots: readonly Spot[]): string {
  return spots.length ? `M${spots.map(([x, y]) => `${x} ${y}`).join("L")}Z` : "";
}

/** How wide and how high it is overall, between two ticks; a circle's width alone. */
function Overall({ drawing: { box, size }, round }: { drawing: Drawing; round: boolean }) {
  const [below, beside] = [box.bottom + 12, box.left - 12];
  const unit = unitOf("length");
  return (
    <g class="dimension">
      <path d={`M${box.left} ${below - 4}v8M${box.left} ${below}H${box.right}M${box.right} ${below - 4}v8`} />
      <text
        x={(box.left + box.right) / 2}
        y={below + 15}
      >{`${round ? "⌀ " : ""}${showLength(size.across, unit)}`}</text>
      {!round && (
        <>
          <path d={`M${beside - 4} ${box.top}h8M${beside} ${box.top}V${box.bottom}M${beside - 4} ${box.bottom}h8`} />
          <Along at={[beside - 11, (box.top + box.bottom) / 2]} turn={-90} words={showLength(size.up, unit)} />
        </>
      )}
    </g>
  );
}

/** The length of each side that has room for it, along the side. */
function Lengths({ drawing }: { drawing: Drawing }) {
  const sides = sidesOf(drawing);
  if (sides.length > MANY) return null;
  const isLong = ({ from, to }: Side) => Math.hypot(to[0] - from[0], to[1] - from[1]) >= READABLE;
  return (
    <g class="dimension">
      {sides.filter(isLong).map(({ from, to, metres, inward }, at) => {
        const middle: Spot = [(from[0] + to[0]) / 2 + 10 * inward[0], (from[1] + to[1]) / 2 + 10 * inward[1]];
        return <Along key={at} at={middle} turn={upright(from, to)} words={showLength(metres, unitOf("length"))} />;
      })}
    </g>
  );
}

/** Which way words along a side run, in degrees: never upside down. */
function upright(from: Spot, to: Spot): number {
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  if (turn >= 89) return turn - 180;
  return turn < -91 ? turn + 180 : turn;
}

function Along({ at, turn, words }: { at: Spot; turn: number; words: string }) {
  return (
    <text class="along" transform={`translate(${at[0]} ${at[1]}) rotate(${turn})`}>
      {words}
    </text>
  );
}

function Crossing({ sides, data }: { sides: readonly Side[]; data: Warned["data"] }) {
  const bad = [data.side, data.other].flatMap((number) => sides[Number(number) - 1] ?? []);
  return <path class="crossing" d={bad.map(({ from, to }) => `M${from[0]} ${from[1]}L${to[0]} ${to[1]}`).join("")} />;
}
