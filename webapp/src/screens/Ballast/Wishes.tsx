/** What the driver wants of it: what to keep least, and the shares on the front axle and the left side. */
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import type { Form } from "../../parts/forms/form";
import { Section } from "../../parts/frame/Screen";

const HINTS = {
  mass: "The least ballast that reaches the minimum and the shares wanted; of equal ways the lowest, then the most even.",
  centre: "The lowest centre of gravity, for a little more weight if you allow some.",
  cross: "The least pull on cross weight, for a little more weight if you allow some.",
} as const;

export function Wishes({ form }: { form: Form<"car"> }) {
  const aim = form.values.ballast_for ?? "mass";
  return (
    <Section title="What is wanted">
      <FieldOf form={form} name="ballast_for" taken="mass" hint={HINTS[aim]} />
      {aim !== "mass" && <FieldOf form={form} name="ballast_more" />}
      <div class="pair">
        <FieldsOf form={form} names={["front_from", "front_to", "left_from", "left_to"]} />
      </div>
      <p class="small quiet">
        Shares of the car's weight with driver and fuel as the class weighs it. Empty means any.
      </p>
    </Section>
  );
}
