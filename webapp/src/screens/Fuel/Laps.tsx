/** How many laps: a step less, a step more, or typed. */

import { useId } from "preact/hooks";
import { Button } from "../../parts/frame/Button";
import { lapsWithin } from "./form";

export function Laps({ laps, onLaps }: { laps: number; onLaps: (laps: number) => void }) {
  const id = useId();
  const step = (by: number) => onLaps(lapsWithin(laps + by));
  return (
    <div class="field laps">
      <label class="label" for={id}>
        Laps
      </label>
      <div class="stepper">
        <Button label="−" aria-label="A lap less" disabled={laps === 0} onClick={() => step(-1)} />
        <input
          id={id}
          class="input num"
          inputMode="numeric"
          autocomplete="off"
          maxLength={3}
          value={String(laps)}
          onInput={(event) => onLaps(lapsWithin(Number(event.currentTarget.value)))}
        />
        <Button label="+" aria-label="A lap more" onClick={() => step(1)} />
      </div>
    </div>
  );
}
