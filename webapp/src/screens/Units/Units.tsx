/** The units figures are shown in. What was typed stays as typed. */
import { MASS_UNITS } from "../../generated/kinds";
import { Choice, type Option, TextField } from "../../parts/controls/Field";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Screen } from "../../parts/frame/Screen";
import { to } from "../../route";
import { session } from "../../store/session";

const LENGTHS: Option<string>[] = [
  { value: "mm", label: "Millimetres" },
  { value: "in", label: "Inches" },
];
const VOLUMES: Option<string>[] = [
  { value: "L", label: "Litres" },
  { value: "gal_us", label: "US gallons" },
  { value: "gal_imp", label: "Imperial gallons" },
];
const MASSES: Option<string>[] = MASS_UNITS.map((unit) => ({ value: unit, label: unit }));

export function Units() {
  const form = useForm("garage", session.value.garage ?? null, {
    name: "Garage",
    mass_unit: "kg",
    length_unit: "mm",
    volume_unit: "L",
  });
  const choose = (field: string) => (value: string) => {
    form.set(field, value);
    void form.save(); // a unit is seen at once on every figure: nobody looks for a button
  };
  return (
    <Screen title="Units" back={to("more")}>
      <div class="stack">
        <p class="quiet">Figures are shown in these units. A reading stays exactly as you typed it, in its own unit.</p>
        <Choice label="Mass" value={form.text("mass_unit")} options={MASSES} onValue={choose("mass_unit")} />
        <Choice label="Length" value={form.text("length_unit")} options={LENGTHS} onValue={choose("length_unit")} />
        <Choice label="Fuel" value={form.text("volume_unit")} options={VOLUMES} onValue={choose("volume_unit")} />
        <TextField
          label="Money is in"
          value={form.text("currency")}
          onValue={(value) => form.set("currency", value)}
          most={8}
          hint="A sign or three letters, written after amounts. Amounts stay the numbers they are."
        />
        <TextField
          label="Name of this garage"
          value={form.text("name")}
          onValue={(value) => form.set("name", value)}
          most={120}
        />
        <FormDock form={form} />
      </div>
    </Screen>
  );
}
