/** A check being noted: a doubtful one is asked about before it is kept. */
import { useState } from "preact/hooks";
import { readMass } from "../../core/numbers/quantity";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { type Doubt, Question } from "../../parts/weighing/Question";
import { typedOf } from "../../parts/words/reading";
import { doubtOf, type Masses } from "./doubt";

export function NewCheck({ scale }: { scale: string }) {
  const form = useForm("scale_check", "new", { scale });
  const [asked, setAsked] = useState<Doubt<Masses> | null>(null);
  const shows = garage.value.one("scale", scale)?.values.unit ?? massUnit();
  const set: Form<"scale_check">["set"] = (name, value) => {
    setAsked(null);
    form.set(name, value);
  };
  const masses = (change: Masses = {}) => ({
    known: change.known ?? form.text("known"),
    shown: typedOf("mass", change.shown ?? form.text("shown"), shows),
  });
  const doubtIn = ({ known, shown }: Required<Masses>) =>
    doubtOf(scale, readMass(known, massUnit(), true), readMass(shown, shows));
  const keep = async ({ known, shown }: Required<Masses>) => {
    form.set("known", known);
    form.set("shown", shown);
    setAsked(null);
    await form.save();
  };
  const correct = async (change: Masses) => {
    const doubt = asked?.sort === "display" ? doubtIn(masses(change)) : null;
    if (!doubt) return keep(masses(change));
    for (const [name, text] of Object.entries(change)) form.set(name as keyof Masses, text);
    setAsked(doubt);
  };
  const ready = form.text("known") && form.text("shown");
  return (
    <div class="stack notice">
      <FieldsOf form={{ ...form, set }} names={["known_name", "known", "known_within"]} />
      <FieldOf form={{ ...form, set }} name="shown" unit={shows} />
      {asked ? (
        <Question of={asked} onLikely={correct} onKeep={() => keep(masses())} onBack={() => setAsked(null)} />
      ) : (
        <FormDock
          form={form}
          label="Note this check"
          missing={ready ? null : "The true mass and what the scale showed are needed."}
          onSave={async () => {
            const doubt = doubtIn(masses());
            if (doubt) setAsked(doubt);
            else await keep(masses());
          }}
        />
      )}
    </div>
  );
}
