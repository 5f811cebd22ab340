/** Lifting an axle, one step at a time: what to do in large words, the two numbers it gives, and the answer. */

import { useMemo } from "preact/hooks";
import { car } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { bareUnit } from "../../garage/units";
import { newId, save } from "../../garage/write";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useDraft } from "../../parts/forms/useDraft";
import { Button } from "../../parts/frame/Button";
import { shotsOf } from "../../parts/photos/Shots";
import { replace, to } from "../../route";
import { changesOf, emptyForm, formFrom, type LiftForm, missing } from "./form";
import { MEASURING, STEPS } from "./steps";

type Props = { weighIn: Rec<"weigh_in">; replaces: string | null };

export function Guide({ weighIn, replaces }: Props) {
  const start = useMemo(() => () => startOf(weighIn, replaces), [weighIn.id, replaces]);
  const name = `lift:${weighIn.id}:${replaces ?? ""}`;
  const { form, change } = useDraft<LiftForm>(name, start, (kept) => garage.value.byId.has(kept.id));
  if (!form) return null;
  const { title, Body } = STEPS[form.step]!;
  return (
    <>
      <section class="lift-step" aria-label={title} key={form.step}>
        <Progress step={form.step} />
        <h2>{title}</h2>
        <Body form={form} change={change} weighIn={weighIn} />
      </section>
      <Steps form={form} change={change} weighIn={weighIn} replaces={replaces} draft={name} />
    </>
  );
}

function startOf({ values: { scale, layout } }: Rec<"weigh_in">, replaces: string | null): LiftForm {
  const before = garage.value.one("lift", replaces)?.values;
  const unit = garage.value.one("scale", scale)?.values.unit ?? bareUnit();
  if (before) return formFrom(newId(), before, unit, MEASURING);
  return emptyForm(newId(), unit, scale ?? null, layout === "corners");
}

function Progress({ step }: { step: number }) {
  return (
    <div>
      <ol class="lift-progress" aria-hidden="true">
        {STEPS.map((each, i) => (
          <li key={each.title} class={i <= step ? "done" : ""} />
        ))}
      </ol>
      <p class="small quiet">
        Step {step + 1} of {STEPS.length}
      </p>
    </div>
  );
}

type StepsProps = Props & { form: LiftForm; change: (patch: Partial<LiftForm>) => void; draft: string };

/** On with the next step, or back; at the last one the lift is saved. */
function Steps({ form, change, weighIn, replaces, draft }: StepsProps) {
  const turn = (by: number) => {
    change({ step: form.step + by });
    scrollTo(0, 0);
  };
  const back = <Button look="wide" label="Back" disabled={form.step === 0} onClick={() => turn(-1)} />;
  if (form.step < STEPS.length - 1) {
    return (
      <div class="dock">
        {back}
        <Button look="main" label={STEPS[form.step]!.done} onClick={() => turn(1)} />
      </div>
    );
  }
  const keep = async () => {
    const changes = changesOf(form, { car: car.value?.id ?? null, weighIn: weighIn.id, replaces });
    await save(changes, shotsOf(form.id, form), draft);
    replace(to("lift", form.id, { saved: "yes" }));
  };
  return (
    <SaveDock label="Save this lift" missing={missing(form)} onSave={keep}>
      {back}
    </SaveDock>
  );
}
