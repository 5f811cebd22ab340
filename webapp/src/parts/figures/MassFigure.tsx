/** A mass, or a length, as the figure of a screen: big brass digits, small units, and how sure it is. */
import { layOut, type Shown } from "../../core/numbers/shown";
import { expanded, type Uncertain } from "../../core/numbers/uncertain";
import { massUnit, unitOf } from "../../garage/units";

type Props = {
  mass: Uncertain;
  unit?: string;
  signed?: boolean;
  /** Under the minimum: the one use of vermilion; the words beside it say so too. */ under?: boolean;
};

export function MassFigure({ mass, unit = massUnit(), signed = false, under = false }: Props) {
  return <Figure shown={layOut("mass", mass.value, unit, expanded(mass), signed)} under={under} />;
}

export function LengthFigure({ length, unit = unitOf("length") }: { length: Uncertain; unit?: string }) {
  return <Figure shown={layOut("length", length.value, unit, expanded(length))} />;
}

function Figure({ shown: { sign, parts, within }, under = false }: { shown: Shown; under?: boolean }) {
  return (
    <p class="figure num">
      <span class={under ? "under" : "brass"}>
        {sign}
        {parts.map(([digits, word]) => (
          <span key={word}>
            {digits}
            <span class="unit">{word} </span>
          </span>
        ))}
      </span>
      {within.length > 0 && <span class="sure">± {within.map(([digits, word]) => `${digits} ${word}`).join(" ")}</span>}
    </p>
  );
}
