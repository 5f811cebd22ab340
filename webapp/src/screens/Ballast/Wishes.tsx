/** What the driver wants of it: what to keep least, and the shares on the front axle and the left side. */
import { Choice, TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import type { Form } from "../../parts/forms/form";
import { Section } from "../../parts/frame/Screen";
import { fractionOf, percentOf } from "../../parts/words/percent";

const AIMS = [
  { value: "mass", label: "Least weight" },
  { value: "centre", label: "Lowest" },
  { value: "cross", label: "Even left to right" },
];

const HINTS: Record<string, string> = {
  mass: "The least ballast that reaches the minimum and the shares wanted; of equal ways the lowest, then the most even.",
  centre: "The lowest centre of gravity, for a little more weight if you allow some.",
  cross: "The least pull on cross weight, for a little more weight if you allow some.",
};

export function Wishes({ form }: { form: Form }) {
  const aim = form.text("ballast_for") || "mass";
  return (
    <Section title="What is wanted">
      <Choice
        label="What counts first"
        value={aim}
        options={AIMS}
        onValue={(value) => form.set("ballast_for", value)}
        hint={HINTS[aim]}
      />
      {aim !== "mass" && (
        <QuantityField
          kind="mass"
          label="May weigh so much more than the least"
          value={form.text("ballast_more")}
          onValue={(value) => form.set("ballast_more", value)}
          hint="Left empty, the weight still comes first."
        />
      )}
      <div class="pair">
        <Percent form={form} field="front_from" label="Front, at least %" />
        <Percent form={form} field="front_to" label="Front, at most %" />
        <Percent form={form} field="left_from" label="Left, at least %" />
        <Percent form={form} field="left_to" label="Left, at most %" />
      </div>
      <p class="small quiet">
        Shares of the car's weight with driver and fuel as the class weighs it. Empty means any.
      </p>
    </Section>
  );
}

export function Percent({ form, field, label, hint }: { form: Form; field: string; label: string; hint?: string }) {
  return (
    <TextField
      label={label}
      mode="decimal"
      most={9}
      value={percentOf(form.text(field))}
      onValue={(value) => form.set(field, fractionOf(value))}
      hint={hint}
    />
  );
}
