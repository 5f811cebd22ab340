/** The car itself in a view: outline, wheels, levels, and which way is which. It is drawn once and never moves. */
import type { ComponentChildren } from "preact";
import { sideLines, topLines } from "./outline";
import type { Shape } from "./shape";
import type { View } from "./view";

export function CarBody({ shape, view }: { shape: Shape; view: View }) {
  const { body, glass } = view.side === "top" ? topLines(shape, view) : sideLines(shape, view);
  return (
    <g class="car-body">
      <path class="body" d={body} />
      <path class="glass" d={glass} />
      <Wheels shape={shape} view={view} />
      {view.side === "side" && <Levels shape={shape} view={view} />}
      <Directions view={view} />
    </g>
  );
}

function Wheels({ shape, view }: { shape: Shape; view: View }) {
  const { wheelbase, radiusFront, radiusRear, trackFront, trackRear } = shape;
  const axles = [
    [0, radiusFront, trackFront],
    [wheelbase, radiusRear, trackRear],
  ] as const;
  if (view.side === "side") {
    return (
      <>
        {axles.map(([x, r]) => {
          const [u, v] = view.toPoint({ x, y: 0, z: r });
          return <circle key={x} class="wheel" cx={u} cy={v} r={r * view.scale} />;
        })}
      </>
    );
  }
  return (
    <>
      {axles.flatMap(([x, r, track]) =>
        [-0.5, 0.5].map((side) => {
          const [u, v] = view.toPoint({ x, y: side * track, z: 0 });
          const [wide, long] = [0.6 * r * view.scale, 2 * r * view.scale];
          return (
            <rect
              key={`${x}${side}`}
              class="wheel"
              x={u - wide / 2}
              y={v - long / 2}
              width={wide}
              height={long}
              rx="3"
            />
          );
        }),
      )}
    </>
  );
}

/** The ground, and the beltline where somebody measured it. */
function Levels({ shape, view }: { shape: Shape; view: View }) {
  const level = (z: number) => view.toPoint({ x: 0, y: 0, z })[1];
  return (
    <>
      <path class="ground" d={`M0 ${level(0)}H${view.width}`} />
      {shape.beltline !== null && <path class="beltline" d={`M2 ${level(shape.beltline)}H${view.width - 2}`} />}
      {shape.beltline !== null && (
        <Words at={[view.width - 2, level(shape.beltline) - 4]} anchor="end">
          beltline
        </Words>
      )}
    </>
  );
}

/** Which way is which: what is placed on the wrong side is the classic slip. */
function Directions({ view }: { view: View }) {
  const [left, top, width, height] = view.body;
  if (view.side === "side") {
    return (
      <>
        <Words at={[2, top + 10]} anchor="start">
          FRONT
        </Words>
        <Words at={[view.width - 2, top + 10]} anchor="end">
          REAR
        </Words>
      </>
    );
  }
  return (
    <>
      <Words at={[left - 8, top + 10]} anchor="end">
        LEFT
      </Words>
      <Words at={[left + width + 8, top + 10]} anchor="start">
        RIGHT
      </Words>
      <Words at={[view.width / 2, top - 6]} anchor="middle">
        FRONT
      </Words>
      <path class="middle" d={`M${view.width / 2} ${top + 2}V${top + height}`} />
    </>
  );
}

type WordsProps = {
  at: readonly [number, number];
  anchor: "start" | "middle" | "end";
  children: ComponentChildren;
  strong?: boolean;
};

export function Words({ at: [x, y], anchor, children, strong }: WordsProps) {
  return (
    <text class={strong ? "strong" : undefined} x={x} y={y} text-anchor={anchor}>
      {children}
    </text>
  );
}
