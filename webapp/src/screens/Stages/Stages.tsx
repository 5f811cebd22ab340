/** Stages: named groups of jobs, in the order they are done. */
import { useState } from "preact/hooks";
import { car, stages } from "../../answers";
import { garage } from "../../garage/garage";
import { TextField } from "../../parts/controls/Field";
import { Row } from "../../parts/figures/Row";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Screen } from "../../parts/frame/Screen";
import { to } from "../../route";

export function Stages() {
  const [open, setOpen] = useState<string | null>(null);
  return (
    <Screen title="Stages" back={to("more")}>
      <p class="quiet">A stage is a group of jobs with its own subtotal, such as one winter's work.</p>
      {stages.value.map((stage) =>
        open === stage.id ? (
          <StageForm key={stage.id} id={stage.id} onDone={() => setOpen(null)} />
        ) : (
          <Row key={stage.id} name={String(stage.values["name"])} onTap={() => setOpen(stage.id)} />
        ),
      )}
      {open === "new" ? (
        <StageForm id="new" onDone={() => setOpen(null)} />
      ) : (
        <button type="button" class="button wide" onClick={() => setOpen("new")}>
          Add a stage
        </button>
      )}
    </Screen>
  );
}

function StageForm({ id, onDone }: { id: string; onDone: () => void }) {
  const last = Math.max(0, ...garage.value.of("stage").map((stage) => Number(stage.values["rank"] ?? 0)));
  const form = useForm("stage", id, { car: car.value?.id ?? null, rank: last + 1 });
  const isUsed = garage.value.of("job").some((job) => job.values["stage"] === id);
  return (
    <div class="stack notice">
      <TextField
        label="Name of the stage"
        value={form.text("name")}
        onValue={(value) => form.set("name", value)}
        most={120}
      />
      <TextField
        label="Place in the order"
        mode="numeric"
        value={form.text("rank")}
        onValue={(value) => form.set("rank", /^\d{1,4}$/.test(value) ? Number(value) : null)}
      />
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Give it a name."}
        after={async () => onDone()}
        remove={
          isUsed
            ? undefined
            : { label: "Delete this stage", warning: "No job is in it. Delete it?", next: to("stages") }
        }
      />
    </div>
  );
}
