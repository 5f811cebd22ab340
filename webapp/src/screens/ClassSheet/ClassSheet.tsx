/** The class: its minimum, how it weighs, and the clauses noted in the driver's own words. The rule book itself decides. */
import { useState } from "preact/hooks";
import { car, sheets } from "../../answers";
import { garage } from "../../journal/garage";
import type { Rec } from "../../journal/types";
import { Choice, TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Row } from "../../parts/figures/Row";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Notice } from "../../parts/frame/Notice";
import { Screen, Section } from "../../parts/frame/Screen";
import { unitOf } from "../../parts/words/units";
import { to } from "../../route";

const DRIVER = [
  { value: "in", label: "With the driver" },
  { value: "out", label: "Without" },
];
const FUEL = [
  { value: "as_it_is", label: "As it comes" },
  { value: "empty", label: "Empty" },
  { value: "full", label: "Full" },
  { value: "stated", label: "A stated amount" },
];
const ROUNDING = [
  { value: "nearest", label: "To the nearest step" },
  { value: "unknown", label: "Not known" },
];
const RISKS = [
  { value: "0.05", label: "1 in 20" },
  { value: "0.01", label: "1 in 100" },
  { value: "0.001", label: "1 in 1000" },
];

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
  const form = useForm("class_sheet", id, {
    car: car.value?.id ?? null,
    driver: "in",
    fuel: "as_it_is",
    scale_rounding: "unknown",
    risk: "0.01",
  });
  return (
    <div class="stack">
      <TextField label="Class" value={form.text("name")} onValue={(value) => form.set("name", value)} most={120} />
      <QuantityField
        label="Minimum weight"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("minimum")}
        onValue={(value) => form.set("minimum", value)}
      />
      <Choice
        label="Weighed"
        value={form.text("driver")}
        options={DRIVER}
        onValue={(value) => form.set("driver", value)}
      />
      <Choice
        label="Fuel when weighed"
        value={form.text("fuel")}
        options={FUEL}
        onValue={(value) => form.set("fuel", value)}
      />
      {form.text("fuel") === "stated" && (
        <QuantityField
          label="How much fuel"
          kind="volume"
          unit={unitOf("volume")}
          value={form.text("fuel_stated")}
          onValue={(value) => form.set("fuel_stated", value)}
        />
      )}
      <QuantityField
        label="Added to the minimum for this car"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("adders")}
        onValue={(value) => form.set("adders", value)}
        hint="Success weight, wide tyres and the like, as your class has it."
      />
      <QuantityField
        label="Steps of the official scale"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("scale_division")}
        onValue={(value) => form.set("scale_division", value)}
      />
      <Choice
        label="It rounds"
        value={form.text("scale_rounding")}
        options={ROUNDING}
        onValue={(value) => form.set("scale_rounding", value)}
      />
      <Choice
        label="Chance of being found under that you accept"
        value={form.text("risk")}
        options={RISKS}
        onValue={(value) => form.set("risk", value)}
        hint="Sets how much to keep in hand."
      />
      <TextField
        label="Finish the class asks for"
        long
        value={form.text("finish")}
        onValue={(value) => form.set("finish", value)}
        most={4000}
      />
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
      <TextField
        label="Where it stands"
        value={form.text("reference")}
        onValue={(value) => form.set("reference", value)}
        most={80}
        hint="A number or a page."
      />
      <TextField
        label="What it says, in your words"
        long
        value={form.text("text")}
        onValue={(value) => form.set("text", value)}
        most={4000}
      />
      <FormDock
        form={form}
        missing={form.text("text").trim() ? null : "Say what it asks."}
        after={async () => onDone()}
        remove={{ label: "Delete this clause", warning: "Delete this note?", next: to("class-sheet") }}
      />
    </div>
  );
}
