/** One place for ballast: where it is, what one block weighs, how many it takes and how many are in. */
import { book, car } from "../../answers";
import { unitOf } from "../../garage/units";
import { Pick, TextField } from "../../parts/controls/Field";
import { PlaceField } from "../../parts/controls/PlaceField";
import { QuantityField } from "../../parts/controls/QuantityField";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { Screen, Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import { SPOTS, typedAt } from "./spots";

const OPTIONS = SPOTS.map(({ name }) => ({ value: name, label: name }));

export function PlaceForm({ id }: { id: string }) {
  const form = useForm("ballast_place", id, { car: car.value?.id ?? null });
  return (
    <Screen title={form.isNew ? "New ballast place" : form.text("name")} back={to("ballast")}>
      <div class="stack">
        {form.isNew && <CommonSpot form={form} />}
        <TextField label="Name" value={form.text("name")} onValue={(value) => form.set("name", value)} most={120} />
        <QuantityField
          kind="mass"
          label="One block weighs"
          value={form.text("block")}
          onValue={(value) => form.set("block", value)}
          needed
          hint="With its bolts and plates, to the last digit the scale shows: 2.50 kg says more than 2.5 kg."
        />
        <div class="pair">
          <Count form={form} field="most" label="Takes at most" hint="Blocks" />
          <Count form={form} field="fitted" label="Fitted now" hint="Blocks" />
        </div>
        <Section title="Where the middle of the blocks is">
          <PlaceField
            label="From the front axle"
            sides={["Ahead of it", "Behind it"]}
            value={form.text("x")}
            onValue={(value) => form.set("x", value)}
          />
          <PlaceField
            label="From the centreline"
            sides={["Left", "Right"]}
            value={form.text("y")}
            onValue={(value) => form.set("y", value)}
            hint="Left and right as you sit in the car; 0 on the middle."
          />
          <QuantityField
            kind="length"
            label="Above the ground"
            value={form.text("z")}
            onValue={(value) => form.set("z", value)}
            needed
          />
        </Section>
        <TextField
          label="Note"
          long
          value={form.text("note")}
          onValue={(value) => form.set("note", value)}
          most={4000}
        />
        <FormDock
          form={form}
          missing={missingIn(form)}
          next={() => to("ballast")}
          remove={{
            label: "Delete this place",
            warning: "Its blocks no longer count, fitted ones neither. Delete it?",
            next: to("ballast"),
          }}
        />
      </div>
    </Screen>
  );
}

/** A first guess at name and place, to be measured. */
function CommonSpot({ form }: { form: Form }) {
  const { wheelbase, track_front: front, track_rear: rear } = book.value.car ?? {};
  const track = front ?? rear;
  const sizes = { wheelbase: wheelbase?.value ?? null, track: track?.value ?? null, unit: unitOf("length") };
  const choose = (name: string) => {
    const spot = SPOTS.find((each) => each.name === name);
    if (spot) for (const [field, value] of Object.entries(typedAt(spot, sizes))) form.set(field, value);
  };
  return (
    <Pick
      label="Start from a common place"
      value={form.text("name")}
      options={OPTIONS}
      none="Another place"
      onValue={choose}
      hint="Sets a rough place for a car of this size. Measure it with a tape."
    />
  );
}

function Count({ form, field, label, hint }: { form: Form; field: string; label: string; hint: string }) {
  const toCount = (text: string) => (/^\d{1,3}$/.test(text.trim()) ? Number(text) : null);
  return (
    <TextField
      label={label}
      mode="numeric"
      most={3}
      value={form.text(field)}
      onValue={(value) => form.set(field, toCount(value))}
      hint={hint}
    />
  );
}

function missingIn(form: Form): string | null {
  if (!form.text("name").trim()) return "Give the place a name.";
  const open = (
    [
      ["block", "what one block weighs"],
      ["most", "how many it takes"],
      ["x", "how far it is from the front axle"],
      ["y", "how far it is from the centreline"],
      ["z", "how high it is"],
    ] as const
  ).filter(([field]) => form.text(field).trim() === "");
  return open.length ? `Still needed: ${open.map(([, words]) => words).join(", ")}.` : null;
}
