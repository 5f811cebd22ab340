/** What the forms on the drawing mean. */
import { QuarteredCircle } from "./CentreMark";
import { kindOf, markPath } from "./marks";

const FORMS: readonly [words: string, mass: number, planned: boolean][] = [
  ["taken off", -1, false],
  ["put on", 1, false],
  ["chosen, not done", -1, true],
];
const PLAIN = { side: "side", scale: 1 } as const;

export function MarkKey() {
  return (
    <div class="mark-key">
      {FORMS.map(([words, mass, planned]) => (
        <span key={words}>
          <svg class="car-view" viewBox="-18 -18 36 36" aria-hidden="true">
            <path class={kindOf({ mass, planned })} d={markPath({ mass, apart: 0 }, 1, PLAIN)} />
          </svg>
          {words}
        </span>
      ))}
      <span>
        <svg class="car-view" viewBox="-18 -18 36 36" aria-hidden="true">
          <g class="centre">
            <QuarteredCircle r={13} />
          </g>
        </svg>
        centre of gravity
      </span>
      <span>The larger, the heavier. Dotted lines: it is somewhere along them.</span>
    </div>
  );
}
