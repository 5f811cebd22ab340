/** What does the scale's display show? Its unit and its step, by tapping a drawn display; any other one is typed. */
import "./Displays.css";
import { useId, useState } from "preact/hooks";
import { massUnit } from "../../garage/units";
import { Choice } from "../controls/Choice";
import { QuantityField } from "../controls/QuantityField";
import { labelOf, optionsOf, toldOf } from "../words/fieldWords";
import { type Display, displaysFor, isOf, type MassUnit, type Said } from "./drawnDisplays";

type Props = { of: Said; thinksIn?: string; onUnit: (unit: MassUnit) => void; onDivision: (division: string) => void };

export function Displays({ of, thinksIn = massUnit(), onUnit, onDivision }: Props) {
  const name = useId();
  const [other, setOther] = useState(false);
  const drawn = displaysFor(thinksIn);
  const chosen = drawn.find((each) => isOf(of, each));
  const isOther = other || (!chosen && !!(of.unit || of.division));
  const pick = (display: Display) => {
    setOther(false);
    onUnit(display.unit);
    onDivision(display.division);
  };
  return (
    <>
      <fieldset class="field">
        <legend class="label small">What does its display show, and in which steps?</legend>
        <div class="displays">
          {drawn.map((each) => (
            <label key={each.division + each.unit} class="display-door">
              <input
                type="radio"
                name={name}
                aria-label={`${each.sample}, steps of ${each.division}`}
                checked={!isOther && each === chosen}
                onChange={() => pick(each)}
              />
              <span class="display-shown num">{each.sample}</span>
              <span class="display-step">{each.division}</span>
            </label>
          ))}
          <label class="display-door another">
            <input type="radio" name={name} checked={isOther} onChange={() => setOther(true)} />
            <span class="display-step">Another</span>
          </label>
        </div>
      </fieldset>
      {isOther && <Typed of={of} onUnit={onUnit} onDivision={onDivision} />}
    </>
  );
}

function Typed({ of, onUnit, onDivision }: Props) {
  return (
    <>
      <Choice
        label="It shows"
        value={of.unit ?? null}
        options={optionsOf("scale", "unit")}
        onValue={(unit) => onUnit(unit as MassUnit)}
      />
      <QuantityField
        kind="mass"
        label={labelOf("scale", "division")}
        hint={toldOf("scale", "division").hint}
        value={of.division ?? ""}
        unit={of.unit ?? null}
        onValue={onDivision}
      />
    </>
  );
}
