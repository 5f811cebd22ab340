/** The car from above and from its left with every weight that jobs move; a tap reads one. */
import type { ComponentChildren } from "preact";
import { useMemo, useState } from "preact/hooks";
import { book } from "../../answers";
import { Disclosure } from "../../parts/controls/Disclosure";
import { CarView } from "../../parts/drawing/CarView";
import { MarkKey } from "../../parts/drawing/MarkKey";
import type { Mark } from "../../parts/drawing/marks";
import { scaleWords, shapeOf } from "../../parts/drawing/shape";
import { sideView, topView } from "../../parts/drawing/view";
import { Row } from "../../parts/figures/Row";
import { Picked } from "./Picked";
import { centreOf, type Told } from "./told";

type Props = {
  told: Told;
  onPlace: (key: string) => void /** Stands below the view from the left. */;
  children: ComponentChildren;
};

export function Looking({ told, onPlace, children }: Props) {
  const { marks } = told;
  const shape = useMemo(() => shapeOf(book.value.car), [book.value.car]);
  const views = useMemo(() => shape && [topView(shape), sideView(shape)], [shape]);
  const [near, setNear] = useState<readonly string[]>([]);
  const found = near.flatMap((key) => marks.filter((mark) => mark.key === key));
  const centre = centreOf(told, told.balance.states.now ? "now" : "weighed");
  const pick = (all: readonly Mark[]) => setNear(all.map(({ key }) => key));
  if (!shape || !views) return <>{children}</>;
  const view = { shape, marks, picked: found[0] ?? null, onPick: pick, centre };
  return (
    <>
      <div class="car-drawing">
        <CarView
          {...view}
          view={views[0]!}
          label={`The car from above with ${marks.length} weights at their places; the list below says each`}
        />
        <div class="stack">
          <CarView {...view} view={views[1]!} label="The same from its left" />
          <MarkKey />
          {children}
        </div>
      </div>
      <p class="small quiet">{scaleWords(shape)} Tap a mark to read it.</p>
      {marks.length > 0 && <EveryWeight marks={marks} onPick={pick} />}
      {found[0] && <Picked near={found} onPick={pick} onPlace={onPlace} onClose={() => setNear([])} />}
    </>
  );
}

function EveryWeight({ marks, onPick }: { marks: readonly Mark[]; onPick: (all: readonly Mark[]) => void }) {
  const heaviest = [...marks].sort((a, b) => Math.abs(b.mass) - Math.abs(a.mass));
  return (
    <Disclosure title={`Every weight on the drawing: ${marks.length}`}>
      <div>
        {heaviest.map((mark) => (
          <Row
            key={mark.key}
            name={mark.name}
            note={mark.planned ? "chosen, not done" : undefined}
            value={mark.says}
            onTap={() => onPick([mark])}
          />
        ))}
      </div>
    </Disclosure>
  );
}
