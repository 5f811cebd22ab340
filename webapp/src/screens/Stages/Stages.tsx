/** Stages: named groups of jobs, in the order they are done. */
import { car, stages } from "../../answers";
import { garage } from "../../garage/garage";
import { Row } from "../../parts/figures/Row";
import { FieldOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { OpenList } from "../../parts/forms/OpenList";
import { Screen } from "../../parts/frame/Screen";
import { to } from "../../route";

export function Stages() {
  return (
    <Screen title="Stages" back={to("more")}>
      <p class="quiet">A stage is a group of jobs with its own subtotal, such as one winter's work.</p>
      <OpenList
        of={stages.value}
        row={(stage, onTap) => <Row name={stage.values.name} onTap={onTap} />}
        form={(id, onDone) => <StageForm id={id} onDone={onDone} />}
        add="Add a stage"
      />
    </Screen>
  );
}

function StageForm({ id, onDone }: { id: string; onDone: () => void }) {
  const last = Math.max(0, ...garage.value.of("stage").map((stage) => stage.values.rank ?? 0));
  const form = useForm("stage", id, { car: car.value?.id ?? null, rank: last + 1 });
  const isUsed = garage.value.of("job").some((job) => job.values.stage === id);
  const remove = { label: "Delete this stage", next: to("stages") };
  return (
    <div class="stack notice">
      <FieldOf form={form} name="name" />
      <FieldOf form={form} name="rank" />
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Give it a name."}
        onDone={onDone}
        remove={isUsed ? undefined : remove}
      />
    </div>
  );
}
