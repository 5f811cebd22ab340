/** The mark being placed: it follows the finger with lines across the car, so that a thumb hides nothing of where it is. */
import { type Placing, useDragging } from "./dragging";
import { kindOf, markPath } from "./marks";
import { useFollowing } from "./mover";
import type { Spot, View } from "./view";

type Props = { view: View; placing: Placing; mass: number; heaviest: number };

const GRIP = 14; // points around the car that still take a finger

export function PlacingMark({ view, placing, mass, heaviest }: Props) {
  const at = (spot: Spot) =>
    `translate(${view
      .toPoint(spot)
      .map((point) => (Number.isFinite(point) ? point : -99))
      .join(" ")})`;
  const follow = (element: SVGGElement, spot: Spot) => element.setAttribute("transform", at(spot));
  const mark = useFollowing<SVGGElement, Spot>(placing.mover, follow);
  const hands = useDragging(view, placing);
  const [left, top, width, height] = view.body;
  return (
    <>
      <g ref={mark} class="placing" transform={at(placing.spot)}>
        <path class="cross" d={`M${-view.width} 0H${view.width}M0 ${-view.height}V${view.height}`} />
        <path class={kindOf({ mass })} d={markPath({ mass, apart: 0 }, Math.max(heaviest, Math.abs(mass)), view)} />
        <circle class="grip" r="20" />
      </g>
      <rect
        class="ground-under"
        data-view={view.side}
        x={left - GRIP}
        y={top - GRIP}
        width={width + 2 * GRIP}
        height={height + 2 * GRIP}
        {...hands}
      />
    </>
  );
}
