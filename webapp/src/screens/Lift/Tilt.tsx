/** The car seen from its left with one axle raised: what stands, what is lifted, what is measured. To its own scale. */
import { book } from "../../answers";
import { sideLines } from "../../parts/drawing/outline";
import { type Shape, shapeOf } from "../../parts/drawing/shape";
import { sideView, type View } from "../../parts/drawing/view";
import type { Raised } from "./form";

const [WIDE, EDGE, PAD] = [360, 52, 6];
type Point = readonly [number, number];
type Frame = { view: View; floor: number; height: number };

/** `rise` in metres; a car without a wheelbase is not drawn. */
export function Tilt({ raised, rise }: { raised: Raised; rise: number }) {
  const shape = shapeOf(book.value.car);
  if (!shape) return null;
  const { view, floor, height } = frameOf(shape, rise);
  const axles = { front: centre(view, 0, shape.radiusFront), rear: centre(view, shape.wheelbase, shape.radiusRear) };
  const [pivot, up] = raised === "rear" ? [axles.front, axles.rear] : [axles.rear, axles.front];
  const angle = Math.asin(Math.min(rise / shape.wheelbase, 0.7)) * (raised === "rear" ? -1 : 1);
  const at = turned(up, pivot, angle);
  const [stays, goes] =
    raised === "rear" ? [shape.radiusFront, shape.radiusRear] : [shape.radiusRear, shape.radiusFront];
  const { body, glass } = sideLines(shape, view);
  return (
    <svg class="tilt" viewBox={`0 0 ${WIDE} ${height}`} role="img" aria-label={words(raised)}>
      <path class="ground" d={`M8 ${floor} H${WIDE - 8}`} />
      <path class="pad" d={`M${pivot[0] - 18} ${floor} v${-PAD} h36 v${PAD} z`} />
      <Chocks at={pivot[0]} floor={floor - PAD} r={stays * view.scale} />
      <path
        class="stand"
        d={`M${at[0] - 12} ${floor} L${at[0] - 7} ${at[1] + goes * view.scale} h14 L${at[0] + 12} ${floor} z`}
      />
      <circle class="before" cx={up[0]} cy={up[1]} r={goes * view.scale} />
      <g transform={`rotate(${(angle * 180) / Math.PI} ${pivot[0]} ${pivot[1]})`}>
        <path class="body" d={body} />
        <path class="glass" d={glass} />
        <circle class="wheel" cx={axles.front[0]} cy={axles.front[1]} r={shape.radiusFront * view.scale} />
        <circle class="wheel" cx={axles.rear[0]} cy={axles.rear[1]} r={shape.radiusRear * view.scale} />
        <path class="hub" d={`M${up[0] - 4} ${up[1]} h8 M${up[0]} ${up[1] - 4} v8`} />
      </g>
      <Rise from={up} to={at} beside={raised === "rear" ? WIDE - 14 : 14} />
    </svg>
  );
}

/** The car with room at both ends for what is measured, and above for the tail in the air. */
function frameOf(shape: Shape, rise: number): Frame {
  const scale = (WIDE - 2 * EDGE) / (shape.rear - shape.front);
  const floor = 12 + (shape.height + 0.8 * rise) * scale;
  const toPoint: View["toPoint"] = ({ x, z }) => [EDGE + (x - shape.front) * scale, floor - PAD - z * scale];
  return { view: { ...sideView(shape), scale, toPoint }, floor, height: floor + 8 };
}

const centre = (view: View, x: number, z: number): Point => view.toPoint({ x, y: 0, z });

function turned([u, v]: Point, [pivotU, pivotV]: Point, angle: number): Point {
  const [du, dv] = [u - pivotU, v - pivotV];
  return [pivotU + du * Math.cos(angle) - dv * Math.sin(angle), pivotV + du * Math.sin(angle) + dv * Math.cos(angle)];
}

function Chocks({ at, floor, r }: { at: number; floor: number; r: number }) {
  const [left, right] = [at - 0.8 * r, at + 0.8 * r];
  return <path class="chock" d={`M${left} ${floor} h-9 l9 -9 z M${right} ${floor} h9 l-9 -9 z`} />;
}

/** From the wheel's middle as it stood level to where it is now, measured beside the car. */
function Rise({ from, to, beside }: { from: Point; to: Point; beside: number }) {
  return (
    <>
      <path class="rise" d={`M${from[0]} ${from[1]} H${beside} M${to[0]} ${to[1]} H${beside}`} />
      <path
        class="measure"
        d={`M${beside} ${from[1]} V${to[1]} M${beside - 5} ${from[1]} h10 M${beside - 5} ${to[1]} h10`}
      />
    </>
  );
}

function words(raised: Raised): string {
  const other = raised === "rear" ? "front" : "rear";
  return `The ${raised} axle raised on stands, the ${other} axle on its pads with chocks; the rise is measured at the middle of the raised wheel.`;
}
