/** The class: its minimum, how it weighs, and the clauses noted in the driver's own words. The rule book itself decides. */
import { useState } from "preact/hooks";
import { car, sheets } from "../../answers";
import { garage } from "../../garage/garage";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { FieldOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Notice } from "../../parts/frame/Notice";
import { Screen, Section } from "../../parts/frame/Screen";
import { to } from "../../route";

export function ClassSheet() {
  const id = sheets.value[0]?.id ?? null;
  return (
    <Screen title="Class sheet" back={to("more")}>
      <div class="stack">
        <Notice>
          <p>
            This is your own note of the rules, to work with. At scrutineering the rule book and the officials decide.
          </p>
        </Notice>
        <SheetForm key={id ?? "new"} id={id ?? "new"} />
        {id && <Clauses sheet={id} />}
      </div>
    </Screen>
  );
}

function SheetForm({ id }: { id: string }) {
  const form = useForm("class_sheet", id, { car: car.value?.id ?? null });
  return (
    <div class="stack">
      <FieldOf form={form} name="name" />
      <FieldOf form={form} name="minimum" />
      <FieldOf form={form} name="driver" />
      <FieldOf form={form} name="fuel" />
      {form.values.fuel === "stated" && <FieldOf form={form} name="fuel_stated" />}
      <FieldOf form={form} name="adders" />
      <FieldOf form={form} name="scale_division" />
      <FieldOf form={form} name="scale_rounding" />
      <FieldOf form={form} name="risk" />
      <FieldOf form={form} name="finish" />
      <FormDock form={form} missing={form.text("name").trim() ? null : "Give the class a name."} />
    </div>
  );
}

function Clauses({ sheet }: { sheet: string }) {
  const [open, setOpen] = useState<string | null>(null);
  const clauses = garage.value.of("clause").filter((clause) => clause.values["class_sheet"] === sheet);
  return (
    <Section title="Clauses">
      {clauses.map((clause) =>
        open === clause.id ? (
          <ClauseForm key={clause.id} id={clause.id} sheet={sheet} onDone={() => setOpen(null)} />
        ) : (
          <ClauseRow key={clause.id} clause={clause} onTap={() => setOpen(clause.id)} />
        ),
      )}
      {open === "new" ? (
        <ClauseForm id="new" sheet={sheet} onDone={() => setOpen(null)} />
      ) : (
        <button type="button" class="button wide" onClick={() => setOpen("new")}>
          Note a clause
        </button>
      )}
    </Section>
  );
}

function ClauseRow({ clause, onTap }: { clause: Rec; onTap: () => void }) {
  return (
    <Row name={String(clause.values["reference"] ?? "Clause")} note={String(clause.values["text"])} onTap={onTap} />
  );
}

function ClauseForm({ id, sheet, onDone }: { id: string; sheet: string; onDone: () => void }) {
  const form = useForm("clause", id, { class_sheet: sheet });
  return (
    <div class="stack notice">
      <FieldOf form={form} name="reference" />
      <FieldOf form={form} name="text" />
      <FormDock
        form={form}
        missing={form.text("text").trim() ? null : "Say what it asks."}
        after={async () => onDone()}
        remove={{ label: "Delete this clause", warning: "Delete this note?", next: to("class-sheet") }}
      />
    </div>
  );
}
