/** Before the scales are read: what makes a weighing repeat, one tap each or one for all. */
import { POINTS } from "../../core/wholeCar/ready";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Tick } from "../../parts/controls/Field";
import { Button } from "../../parts/frame/Button";
import { choiceWord } from "../../parts/words/fieldWords";
import type { OfCar } from "./form";

export function Ready({ form, change }: OfCar) {
  const { ready } = form;
  if (!ready || form.official) return null;
  const isAll = ready.length === POINTS.length;
  return (
    <div class="stack">
      {!isAll && (
        <Button
          look="wide"
          label="Zeroed, level, rolled, pressures, nobody leaning"
          onClick={() => change({ ready: [...POINTS] })}
        />
      )}
      <Disclosure
        title={isAll ? "Before you read: all seen to" : `Before you read: ${ready.length} of ${POINTS.length} seen to`}
      >
        {POINTS.map((point) => (
          <Tick
            key={point}
            label={choiceWord("weigh_in", "ready", point)}
            value={ready.includes(point)}
            onValue={(done) =>
              change({ ready: POINTS.filter((each) => (each === point ? done : ready.includes(each))) })
            }
          />
        ))}
        <p class="small quiet">What was not seen to makes the ± wider.</p>
      </Disclosure>
    </div>
  );
}
