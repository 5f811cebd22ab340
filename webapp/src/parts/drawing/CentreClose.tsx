/**
 * The centre of gravity close up: what a few kilograms do to it is a millimetre on the whole car.
 *
 * Each state is a mark with the ellipse it lies in with 95 %, seen from above with the front up, over a grid whose step is said.
 */
import { showLength } from "../../core/numbers/shown";
import { type Centre, QuarteredCircle } from "./CentreMark";
import { spread } from "./labels";
import { type Mover, useFollowing } from "./mover";
import type { Spot } from "./view";
import "./drawing.css";

export type Named = { name: string; sort: "then" | "now" | "after"; centre: Centre };
type Window = { scale: number; left: number; front: number };

const [WIDE, HIGH, EDGE] = [358, 230, 26];
const NAMES = 96; // points at the right kept for names
const STEPS: Readonly<Record<string, readonly number[]>> = {
  mm: [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5],
  in: [0.25, 0.5, 1, 2, 5, 10, 20].map((inches) => inches * 0.0254),
};

export function CentreClose({
  states,
  unit,
  mover,
}: {
  states: readonly Named[];
  unit: string;
  mover: Mover<Record<string, Spot>> | null;
}) {
  const known = states.filter(({ centre: { spot } }) => Number.isFinite(spot.x) && Number.isFinite(spot.y));
  if (!known.length) return null;
  const window = windowOf(known);
  const steps = STEPS[unit] ?? STEPS.mm!;
  const step = steps.find((each) => each * window.scale >= 24) ?? steps[steps.length - 1]!;
  const names = namesOf(known, window);
  return (
    <figure class="stack">
      <svg
        class="car-view close"
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        role="img"
        aria-label={`The centre of gravity close up, from above: ${known.map(({ name }) => name).join(", ")}`}
      >
        <Grid window={window} step={step} />
        {known.map(({ name, sort, centre }) => (
          <Ellipse key={name} centre={centre} window={window} sort={sort} />
        ))}
        {names.map(({ name, from, y }) => (
          <path key={name} class="leader" d={`M${WIDE - NAMES + 6} ${y - 4}L${from[0]} ${from[1]}`} />
        ))}
        {known.map((each) => (
          <State key={each.name} state={each} window={window} mover={mover} />
        ))}
        {names.map(({ name, y }) => (
          <text key={name} class="strong" x={WIDE - NAMES + 10} y={y}>
            {name}
          </text>
        ))}
        <text x="4" y="14">
          FRONT ↑
        </text>
        <Middle window={window} />
      </svg>
      <figcaption class="small quiet">
        Close up, from above. One square is {showLength(step, unit)}; the ellipse is where it lies with 95 %.
      </figcaption>
    </figure>
  );
}

/** The smallest window that holds every ellipse, or a hand's breadth. */
function windowOf(states: readonly Named[]): Window {
  const ends = (axis: "x" | "y") => {
    const all = states.flatMap(({ centre: { spot, within } }) => [
      spot[axis] - within[axis],
      spot[axis] + within[axis],
    ]);
    return [Math.min(...all), Math.max(...all)] as const;
  };
  const [[front, rear], [left, right]] = [ends("x"), ends("y")];
  const room = [WIDE - NAMES - 2 * EDGE, HIGH - 2 * EDGE] as const;
  const scale = Math.min(room[0] / Math.max(right - left, 0.04), room[1] / Math.max(rear - front, 0.04));
  return {
    scale,
    left: (left + right) / 2 - (WIDE - NAMES) / 2 / scale,
    front: (front + rear) / 2 - HIGH / 2 / scale,
  };
}

/** Names the car's middle line, where it is in sight. */
function Middle({ window: { scale, left } }: { window: Window }) {
  const u = -left * scale;
  return u > 0 && u < WIDE - NAMES - 90 ? (
    <text class="middle-words" x={u + 4} y={HIGH - 6}>
      centreline
    </text>
  ) : null;
}

const at = ({ scale, left, front }: Window, { x, y }: Spot) => [(y - left) * scale, (x - front) * scale] as const;

function Grid({ window, step }: { window: Window; step: number }) {
  const { scale, left, front } = window;
  const lines = (from: number, points: number) => {
    const first = Math.ceil(from / step);
    return Array.from({ length: Math.floor((from + points / scale) / step) - first + 1 }, (_, i) => (first + i) * step);
  };
  const [right, down] = [WIDE - NAMES, HIGH];
  return (
    <g class="grid">
      {lines(front, down).map((x) => (
        <path key={`x${x}`} d={`M0 ${(x - front) * scale}H${right}`} />
      ))}
      {lines(left, right).map((y) => (
        <path
          key={`y${y}`}
          class={Math.abs(y) < step / 2 ? "middle" : undefined}
          d={`M${(y - left) * scale} 0V${down}`}
        />
      ))}
    </g>
  );
}

function Ellipse({ centre: { spot, within }, window, sort }: { centre: Centre; window: Window; sort: Named["sort"] }) {
  const [u, v] = at(window, spot);
  return <ellipse class={`sure ${sort}`} cx={u} cy={v} rx={within.y * window.scale} ry={within.x * window.scale} />;
}

function State({
  state: { name, sort, centre },
  window,
  mover,
}: {
  state: Named;
  window: Window;
  mover: Mover<Record<string, Spot>> | null;
}) {
  const placed = (spot: Spot) => `translate(${at(window, spot).join(" ")})`;
  const moved = useFollowing<SVGGElement, Record<string, Spot>>(mover, (element, spots) => {
    const spot = spots[name];
    if (spot) element.setAttribute("transform", placed(spot));
  });
  return (
    <g class="centre" ref={moved} transform={placed(centre.spot)}>
      {sort === "now" ? (
        <QuarteredCircle r={8} />
      ) : sort === "then" ? (
        <circle class="disc" r="7" />
      ) : (
        <path class="disc ahead" d="M0 -8L8 0L0 8L-8 0Z" />
      )}
    </g>
  );
}

function namesOf(states: readonly Named[], window: Window) {
  const down = [...states].sort((a, b) => a.centre.spot.x - b.centre.spot.x);
  const tops = spread(
    down.map(({ centre }) => at(window, centre.spot)[1] + 4),
    18,
    30,
    HIGH - 8,
  );
  return down.map(({ name, centre }, i) => ({ name, from: at(window, centre.spot), y: tops[i]! }));
}
