/** Where in the car the part sits, and how large it is: opened when wanted, for most parts do well with their zone. */

import { useState } from "preact/hooks";
import { book, known } from "../../answers";
import { Disclosure } from "../../parts/controls/Disclosure";
import { PlaceOnCar } from "../../parts/drawing/PlaceOnCar";
import { FieldOf } from "../../parts/forms/FieldOf";
import type { Form } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";

export function Place({ form }: { form: Form<"part"> }) {
  const [open, setOpen] = useState(false);
  if (!open) return <Button look="wide" label="Show where it sits in the car" onClick={() => setOpen(true)} />;
  return (
    <div class="stack">
      <PlaceOnCar form={form} mass={massOf(form.id)} />
      <Disclosure title="How large it is">
        <FieldOf form={form} name="length" />
        <FieldOf form={form} name="width" />
      </Disclosure>
    </div>
  );
}

/** Kilograms of all its pieces; one that is not on the car is drawn as taken off. */
function massOf(id: string): number {
  const part = book.value.parts.get(id);
  const each = known.value.of.get(id)?.mass?.value ?? 1;
  return each * (part?.count ?? 1) * (part?.whereabouts === "car" ? 1 : -1);
}
