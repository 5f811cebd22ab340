/** Moving one weight on the drawing: the centre of gravity goes along while the finger slides; where it lets go counts. */

import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Mark } from "../../parts/drawing/marks";
import { type Mover, newMover } from "../../parts/drawing/mover";
import { PlaceOnCar } from "../../parts/drawing/PlaceOnCar";
import type { Spot } from "../../parts/drawing/view";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import { centreOf, centresWith, type Told } from "./told";
import { STATE_WORDS } from "./words";

type Props = {
  told: Told;
  mark: Mark;
  closeUp: Mover<Record<string, Spot>>;
  onDone: () => void;
  children: ComponentChildren;
};

const isKnown = ({ x, y, z }: Spot) => [x, y, z].every(Number.isFinite);

export function Placing({ told, mark, closeUp, onDone, children }: Props) {
  const form = useForm("part", mark.part);
  const [mover] = useState(() => newMover());
  const [centreMover] = useState(() => newMover());
  const others = useMemo(() => told.marks.filter(({ part }) => part !== mark.part), [told.marks, mark.part]);
  useEffect(
    () =>
      mover.follow((spot) => {
        const centres = centresWith(told, mark.part, mark.spot, spot);
        if (centres.now && isKnown(centres.now)) centreMover.move(centres.now);
        const known = Object.entries(centres).filter(([, each]) => isKnown(each));
        closeUp.move(
          Object.fromEntries(known.map(([name, each]) => [STATE_WORDS[name as keyof typeof centres], each])),
        );
      }),
    [mover, told, mark],
  );
  return (
    <section class="stack" aria-label={`Move ${mark.name}`}>
      <p class="spread">
        <strong>{mark.name}</strong>
        <strong class="num">{mark.says}</strong>
      </p>
      <PlaceOnCar
        form={form}
        mass={mark.mass}
        marks={others}
        mover={mover}
        centre={centreOf(told, "now")}
        centreMover={centreMover}
      >
        {children}
      </PlaceOnCar>
      <Button look="wide" label="Back to all weights" onClick={onDone} />
      <FormDock form={form} />
    </section>
  );
}
