/**
 * A place along one axis of the car, by tape measure: how far, and to which side of where the axis begins.
 *
 * What is kept is one typed length, with a minus for the first side ("-330 mm" is 330 mm left); a thumb never types the minus.
 */
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { unitOf } from "../../garage/units";
import { placed, sidesOf, tooFar } from "../words/place";
import { Choice } from "./Choice";
import { QuantityField } from "./QuantityField";

type Props = {
  label: string;
  value: string;
  onValue: (text: string) => void;
  /** The words for the side below nothing and the one above it, such as left and right. */
  sides: readonly [minus: string, plus: string];
  hint?: ComponentChildren;
};

export function PlaceField({ label, value, onValue, sides, hint }: Props) {
  const [chosen, setChosen] = useState(false); // a side may be chosen before anything is typed
  const typed = sidesOf(value);
  const isMinus = value.trim() ? typed.minus : chosen;
  const turn = (side: string) => {
    setChosen(side === "minus");
    onValue(placed(typed.far, side === "minus"));
  };
  return (
    <div class="stack">
      <QuantityField
        kind="length"
        label={label}
        value={typed.far}
        onValue={(text) => onValue(placed(text, isMinus))}
        hint={hint}
        trouble={tooFar(value, unitOf("length"))}
      />
      <Choice
        label={`${label}: which side`}
        hideLabel
        value={isMinus ? "minus" : "plus"}
        options={[
          { value: "minus", label: sides[0] },
          { value: "plus", label: sides[1] },
        ]}
        onValue={turn}
      />
    </div>
  );
}
