/** The looks at the display with the keypad that writes into them, what comes out of two, and how it is weighed. */
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { garage } from "../../garage/garage";
import { KEYPAD_UNITS, takesFractions, unitWord } from "../../garage/units";
import { Keypad } from "../controls/Keypad";
import { type Key, press, unitWritten } from "../controls/typing";
import { showsFractions } from "../weighing/drawnDisplays";
import { methodRow } from "../weighing/methods";
import { frozen, type OfPart, type PartForm } from "./form";
import { How } from "./How";
import { type LookName, Looks } from "./Looks";
import { MeAlone } from "./MeAlone";
import { Net } from "./Net";
import "./weighPart.css";

export function ByKeypad({ form, change }: OfPart) {
  const { second } = methodRow(form.method);
  return (
    <div class="weigh-looks">
      <TypedLooks
        form={form}
        change={change}
        between={second === "shown_empty" && <MeAlone form={form} change={change} />}
      />
      <Net form={form} />
      <How form={form} change={change} />
    </div>
  );
}

/** The looks and the keypad alone. `between` stands above the keys. */
export function TypedLooks({ form, change, between }: OfPart & { between?: ComponentChildren }) {
  const [active, setActive] = useState<LookName>("shown");
  const { second } = methodRow(form.method);
  const now = second ? active : "shown";
  const counts = now === "second" && second === "pieces";
  const inForce = counts ? "" : (unitWritten(form[now]) ?? unitWord(form.unit));
  const onKey = (key: Key) => change(afterKey(form, now, key));
  return (
    <>
      <Looks form={form} active={now} onActive={setActive} onText={(name, text) => change({ [name]: text })} />
      {between}
      <Keypad
        units={counts ? [] : KEYPAD_UNITS.mass}
        unit={inForce}
        fractions={!counts && needsFractions(form)}
        onKey={onKey}
      />
    </>
  );
}

/** As the scale's own display needs them; of one whose steps nobody noted, by its unit. */
function needsFractions({ scale, unit }: PartForm): boolean {
  const display = garage.value.one("scale", scale)?.values;
  return display?.division && display.unit === unit ? showsFractions(display) : takesFractions(unitWord(unit));
}

/** What was typed before in another unit keeps that unit. */
function afterKey(form: PartForm, now: LookName, key: Key): Partial<PartForm> {
  const unit = unitAfter(form.unit, key);
  return { ...(unit.unit ? frozen(form) : {}), [now]: press(form[now], key).slice(0, 64), ...unit };
}

/** A unit key also says what bare numbers are from now on; on a scale that shows pounds and ounces both stay. */
function unitAfter(unit: string, key: Key): Partial<PartForm> {
  return key.sort === "unit" && !unit.split(" ").includes(key.text) ? { unit: key.text } : {};
}
