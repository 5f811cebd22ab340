/** What holds for the whole garage: the units figures are shown in, and how guesses count. What was typed stays as typed. */

import { session } from "../../garage/session";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Screen } from "../../parts/frame/Screen";
import { to } from "../../route";

export function Units() {
  const form = useForm("garage", session.value.garage ?? null);
  return (
    <Screen title="Units" back={to("more")}>
      <div class="stack">
        <p class="quiet">Figures are shown in these units. A reading stays exactly as you typed it, in its own unit.</p>
        <FieldsOf form={form} names={["mass_unit", "length_unit", "volume_unit"]} />
        <FieldOf form={form} name="currency" />
        <FieldOf form={form} name="claims" taken="learned" />
        <FieldOf form={form} name="name" />
        <FormDock form={form} />
      </div>
    </Screen>
  );
}
