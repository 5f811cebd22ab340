/** The centre of gravity in a view: the trade's quartered circle, and brackets for how sure it is (95 %). */
import { type Mover, useFollowing } from "./mover";
import type { Spot, View } from "./view";

/** `within`: half-width of the 95 % interval in each axis, m. */
export type Centre = { spot: Spot; within: Spot };

const R = 8;

export function CentreMark({ centre, view, mover }: { centre: Centre; view: View; mover: Mover | null }) {
  const at = (spot: Spot) => `translate(${view.toPoint(spot).join(" ")})`;
  const moved = useFollowing<SVGGElement, Spot>(mover, (element, spot) => element.setAttribute("transform", at(spot)));
  if (!view.toPoint(centre.spot).every(Number.isFinite)) return null;
  const { within } = centre;
  const [wide, high] = view.side === "top" ? [within.y, within.x] : [within.x, within.z];
  return (
    <g class="centre" ref={moved} transform={at(centre.spot)}>
      <path class="sure" d={bracket(wide * view.scale, true) + bracket(high * view.scale, false)} />
      <QuarteredCircle r={R} />
    </g>
  );
}

export function QuarteredCircle({ r }: { r: number }) {
  return (
    <>
      <circle class="disc" r={r} />
      <path class="quarters" d={`M0 0V${-r}A${r} ${r} 0 0 1 ${r} 0ZM0 0V${r}A${r} ${r} 0 0 1 ${-r} 0Z`} />
    </>
  );
}

/** A line with an end at both sides; none where it would vanish under the mark. */
function bracket(half: number, flat: boolean): string {
  if (!(half > R)) return "";
  const end = 5;
  return flat
    ? `M${-half} 0H${half}M${-half} ${-end}v${2 * end}M${half} ${-end}v${2 * end}`
    : `M0 ${-half}V${half}M${-end} ${-half}h${2 * end}M${-end} ${half}h${2 * end}`;
}
