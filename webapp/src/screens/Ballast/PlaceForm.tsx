/** One place for ballast: where it is, what one block weighs, how many it takes and how many are in. */
import { book, car } from "../../answers";
import { unitOf } from "../../garage/units";
import { Pick } from "../../parts/controls/Field";
import { FieldOf } from "../../parts/forms/FieldOf";
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
        <FieldOf form={form} name="name" />
        <FieldOf form={form} name="block" needed />
        <div class="pair">
          <FieldOf form={form} name="most" />
          <FieldOf form={form} name="fitted" />
        </div>
        <Section title="Where the middle of the blocks is">
          <FieldOf form={form} name="x" />
          <FieldOf form={form} name="y" />
          <FieldOf form={form} name="z" needed />
        </Section>
        <FieldOf form={form} name="note" />
        <FormDock
          form={form}
          missing={missingIn(form)}
          next={(made) => to("ballast", made)}
          remove={{ label: "Delete this place", next: to("ballast") }}
        />
      </div>
    </Screen>
  );
}

type Place = { form: Form<"ballast_place"> };

/** A first guess at name and place, to be measured. */
function CommonSpot({ form }: Place) {
  const { wheelbase, track_front: front, track_rear: rear } = book.value.car ?? {};
  const track = front ?? rear;
  const sizes = { wheelbase: wheelbase?.value ?? null, track: track?.value ?? null, unit: unitOf("length") };
  const choose = (name: string) => {
    const spot = SPOTS.find((each) => each.name === name);
    const typed = spot ? typedAt(spot, sizes) : {};
    for (const field of ["name", "x", "y", "z"] as const) if (typed[field]) form.set(field, typed[field]);
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

const NEEDED = {
  block: "what one block weighs",
  most: "how many it takes",
  x: "how far it is from the front axle",
  y: "how far it is from the centreline",
  z: "how high it is",
} as const;

function missingIn(form: Place["form"]): string | null {
  if (!form.text("name").trim()) return "Give the place a name.";
  const open = (Object.keys(NEEDED) as (keyof typeof NEEDED)[]).filter((field) => form.text(field).trim() === "");
  return open.length ? `Still needed: ${open.map((field) => NEEDED[field]).join(", ")}.` : null;
}
