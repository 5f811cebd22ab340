/** The class: its minimum, how it weighs, and the clauses noted in the driver's own words. The rule book itself decides. */
import { car, sheets } from "../../answers";
import { garage } from "../../garage/garage";
import { Row } from "../../parts/figures/Row";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { OpenList } from "../../parts/forms/OpenList";
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
      <FieldsOf form={form} names={["name", "minimum", "driver", "fuel"]} />
      {form.values.fuel === "stated" && <FieldOf form={form} name="fuel_stated" />}
      <FieldsOf form={form} names={["adders", "scale_division", "scale_rounding", "risk", "finish"]} />
      <FormDock form={form} missing={form.text("name").trim() ? null : "Give the class a name."} />
    </div>
  );
}

function Clauses({ sheet }: { sheet: string }) {
  return (
    <Section title="Clauses">
      <OpenList
        of={garage.value.of("clause").filter((clause) => clause.values.class_sheet === sheet)}
        row={({ values }, onTap) => <Row name={values.reference ?? "Clause"} note={values.text} onTap={onTap} />}
        form={(id, onDone) => <ClauseForm id={id} sheet={sheet} onDone={onDone} />}
        add="Note a clause"
      />
    </Section>
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
        onDone={onDone}
        remove={{ label: "Delete this clause", next: to("class-sheet") }}
      />
    </div>
  );
}
