/**
 * The first start: the car's name, then the scale at hand, then straight to the first weighing.
 *
 * Five things are needed in all: the car's name, what the scale's display shows and its kind, what is weighed and what
 * the display shows then. The minimum may wait; nothing else is asked.
 */

import { useState } from "preact/hooks";
import { Button } from "../../parts/frame/Button";
import "./Welcome.css";
import { garage } from "../../garage/garage";
import { session } from "../../garage/session";
import { type Change, newId, save } from "../../garage/write";
import { Choice } from "../../parts/controls/Choice";
import { TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { showFirstTrouble } from "../../parts/forms/firstTrouble";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useDraft } from "../../parts/forms/useDraft";
import { Displays } from "../../parts/weighing/Displays";
import { choiceWord, optionsOf } from "../../parts/words/fieldWords";
import { typedOf } from "../../parts/words/reading";
import { replace, to } from "../../route";
import { bare, type MassUnit, minimumTrouble, type ScaleKind, type Start, scaleTrouble } from "./form";

const MASS_UNITS: { value: MassUnit; label: string }[] = [
  { value: "kg", label: "Kilograms" },
  { value: "lb", label: "Pounds" },
  { value: "lb oz", label: "Pounds and ounces" },
];
const blank = (): Start => ({
  car: "",
  massUnit: navigator.language === "en-US" ? "lb" : "kg",
  minimum: "",
  kind: null,
  unit: null,
  division: "",
});

export function Welcome() {
  const { form, change, name } = useDraft<Start>("welcome", blank);
  const [step, setStep] = useState<"car" | "scale">("car");
  if (!form) return null;
  const begin = async () => {
    await save(changesOf(form), [], name);
    replace(to("weigh-part"));
  };
  return (
    <div class="welcome">
      {step === "car" ? (
        <TheCar form={form} change={change} onNext={() => setStep("scale")} />
      ) : (
        <TheScale form={form} change={change} onBack={() => setStep("car")} />
      )}
      {step === "scale" && <SaveDock label="Weigh the first part" missing={scaleTrouble(form)} onSave={begin} />}
    </div>
  );
}

type Half = { form: Start; change: (patch: Partial<Start>) => void };

function TheCar({ form, change, onNext }: Half & { onNext: () => void }) {
  const [asked, setAsked] = useState(false);
  const named = form.car.trim() !== "";
  const unread = minimumTrouble(form);
  const next = () => {
    setAsked(true);
    if (named && !unread) onNext();
    else setTimeout(showFirstTrouble); // once the fields say what is wrong
  };
  return (
    <>
      <header class="welcome-head">
        <h1>What does the car weigh?</h1>
        <p>
          Weigh parts on whatever is at hand. Tarebook adds up, says how sure it is, and how far the car is from its
          minimum.
        </p>
      </header>
      <TextField
        label="What is the car called?"
        value={form.car}
        most={120}
        onValue={(car) => change({ car })}
        trouble={asked && !named ? "Give it a name, any name." : null}
      />
      <Choice
        label="You think in"
        value={form.massUnit}
        options={MASS_UNITS}
        onValue={(massUnit) => change({ massUnit })}
      />
      <QuantityField
        kind="mass"
        label="The class minimum, if you know it"
        value={form.minimum}
        unit={bare(form.massUnit)}
        onValue={(minimum) => change({ minimum })}
        hint="It can wait."
        trouble={asked ? unread : null}
      />
      <div class="dock">
        <Button look="main" label="Next: your scale" onClick={next} />
      </div>
    </>
  );
}

function TheScale({ form, change, onBack }: Half & { onBack: () => void }) {
  return (
    <>
      <header class="welcome-head">
        <Button look="plain" label="Back" onClick={onBack} />
        <h1>Which scale is at hand?</h1>
        <p class="quiet">More can be added later.</p>
      </header>
      <Displays
        of={form}
        thinksIn={form.massUnit}
        onUnit={(unit) => change({ unit })}
        onDivision={(division) => change({ division })}
      />
      <div class="scale-doors" role="group" aria-label="Kind of scale">
        {optionsOf("scale", "kind").map(({ value, label }) => (
          <ScaleDoor
            key={value}
            label={label}
            chosen={form.kind === value}
            onTap={() => change({ kind: value as ScaleKind })}
          />
        ))}
        <ScaleDoor
          label="Not sure yet"
          chosen={form.kind === null && !form.unit}
          onTap={() => change({ kind: null, unit: null, division: "" })}
        />
      </div>
    </>
  );
}

function ScaleDoor({ label, chosen, onTap }: { label: string; chosen: boolean; onTap: () => void }) {
  return (
    <button type="button" class="scale-door" aria-pressed={chosen} onClick={onTap}>
      {label}
    </button>
  );
}

function changesOf(form: Start): Change[] {
  const car = newId();
  const name = form.car.trim();
  return [
    { kind: "car", record: car, set: { name }, base: [] },
    unitChange(form),
    ...sheetOf(form, car),
    ...scaleOf(form),
  ];
}

/** The garage's own record has the garage's id; its name is required when it is made. */
function unitChange({ massUnit }: Start): Change {
  const record = session.value.garage ?? newId();
  const isNew = !garage.value.byId.has(record);
  return { kind: "garage", record, set: { ...(isNew && { name: "Garage" }), mass_unit: massUnit } };
}

function sheetOf(form: Start, car: string): Change[] {
  if (!form.minimum.trim()) return [];
  return [
    {
      kind: "class_sheet",
      set: { car, name: "My class", minimum: typedOf("mass", form.minimum, bare(form.massUnit)) },
      base: [],
    },
  ];
}

function scaleOf({ kind, unit, division }: Start): Change[] {
  if (!kind) return [];
  const step = division.trim() ? typedOf("mass", division, unit) : null;
  const set = { name: choiceWord("scale", "kind", kind), kind, ...(unit && { unit }), ...(step && { division: step }) };
  return [{ kind: "scale", set, base: [] }];
}
