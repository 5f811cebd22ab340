/** The car seen from its left with one axle raised: what stands, what is lifted, what is measured. To its own scale. */
import { axlesOf } from "../../core/lift";
import { isWarned } from "../../core/condition";
import { book } from "../../answers";
import type { Raised } from "./form";

const [LEFT, RIGHT, FLOOR] = [70, 290, 150]; // the axles and the ground of the drawing, which is 360 wide

/** `rise` in metres; a car without its lengths is drawn of common size. */
export function Tilt({ raised, rise }: { raised: Raised; rise: number }) {
  const axles = axlesOf(book.value.car);
  const [wheelbase, radius] = isWarned(axles) ? [2.4, 0.29] : [axles.wheelbase.value, axles.radius_front.value];
  const scale = (RIGHT - LEFT) / wheelbase;
  const r = radius * scale;
  const axle = FLOOR - 6 - r;
  const angle = (Math.asin(Math.min(rise / wheelbase, 0.7)) * 180) / Math.PI;
  const [pivot, up] = raised === "rear" ? [LEFT, RIGHT] : [RIGHT, LEFT];
  const lifted = raised === "rear" ? -angle : angle;
  const length = RIGHT - LEFT;
  const run = Math.cos((angle * Math.PI) / 180) * length;
  const at = { x: raised === "rear" ? pivot + run : pivot - run, y: axle - Math.min(rise, 0.7 * wheelbase) * scale };
  const beside = raised === "rear" ? up + 2.2 * r : up - 2.2 * r;
  return (
    <svg class="tilt" viewBox="0 -20 360 190" role="img" aria-label={words(raised)}>
      <path class="ground" d={`M8 ${FLOOR} H352`} />
      <path class="pad" d={`M${pivot - 18} ${FLOOR} v-6 h36 v6 z`} />
      <path class="chock" d={`M${pivot - r} ${FLOOR - 6} l-9 0 l9 -9 z M${pivot + r} ${FLOOR - 6} l9 0 l-9 -9 z`} />
      <path class="stand" d={`M${at.x - 12} ${FLOOR} L${at.x - 7} ${at.y + r} h14 L${at.x + 12} ${FLOOR} z`} />
      <circle class="before" cx={up} cy={axle} r={r} />
      <g transform={`rotate(${lifted} ${pivot} ${axle})`}>
        <path class="body" d={outline(axle, length)} />
        <circle class="wheel" cx={LEFT} cy={axle} r={r} />
        <circle class="wheel" cx={RIGHT} cy={axle} r={r} />
        <path class="hub" d={`M${up - 4} ${axle} h8 M${up} ${axle - 4} v8`} />
      </g>
      <path class="rise" d={`M${up} ${axle} H${beside} M${at.x} ${at.y} H${beside}`} />
      <path class="measure" d={`M${beside} ${axle} V${at.y} M${beside - 4} ${axle} h8 M${beside - 4} ${at.y} h8`} />
    </svg>
  );
}

/** A closed car of no make: nose to the left, all of it in shares of the wheelbase. */
function outline(axle: number, length: number): string {
  const x = (share: number) => (LEFT + share * length).toFixed(1);
  const y = (share: number) => (axle - share * length).toFixed(1);
  return [
    `M${x(-0.27)} ${y(-0.02)}`,
    `C${x(-0.3)} ${y(0.1)} ${x(-0.2)} ${y(0.16)} ${x(0.2)} ${y(0.2)}`,
    `C${x(0.38)} ${y(0.38)} ${x(0.45)} ${y(0.42)} ${x(0.62)} ${y(0.42)}`,
    `C${x(0.9)} ${y(0.42)} ${x(1)} ${y(0.27)} ${x(1.2)} ${y(0.22)}`,
    `C${x(1.26)} ${y(0.15)} ${x(1.27)} ${y(0.05)} ${x(1.24)} ${y(-0.02)} Z`,
  ].join(" ");
}

function words(raised: Raised): string {
  const other = raised === "rear" ? "front" : "rear";
  return `The ${raised} axle raised on stands, the ${other} axle on its pads with chocks; the rise is measured at the middle of the raised wheel.`;
}
