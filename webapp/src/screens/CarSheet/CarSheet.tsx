/** The car's own figures. None of them is needed to weigh; each lets the weigh-in say more. */
import { car } from "../../answers";
import { chooseCar } from "../../garage/choices";
import { garage } from "../../garage/garage";
import { Pick } from "../../parts/controls/Field";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { Screen, Section } from "../../parts/frame/Screen";
import { optionsFrom } from "../../parts/words/fieldWords";
import { to } from "../../route";

export function CarSheet() {
  const cars = garage.value.of("car");
  const id = car.value?.id ?? "new";
  return (
    <Screen title="Car" back={to("more")}>
      {cars.length > 1 && (
        <Pick label="Which car" value={id} options={optionsFrom(cars)} onValue={(value) => void chooseCar(value)} />
      )}
      <CarForm key={id} id={id} />
    </Screen>
  );
}

function missing(form: Form<"car">): string | null {
  if (!form.text("name").trim()) return "Give the car a name.";
  return form.text("power") && !form.text("power_unit") ? "Say what the power is in." : null;
}

function CarForm({ id }: { id: string }) {
  const form = useForm("car", id);
  return (
    <div class="stack">
      <FieldsOf form={form} names={["name", "book_weight", "book_weight_from"]} />
      <Section title="Dimensions">
        <FieldsOf form={form} names={["wheelbase", "track_front", "track_rear"]} />
        <FieldsOf form={form} names={["tyre_radius_front", "tyre_radius_rear", "beltline"]} />
        <FieldsOf form={form} names={["length", "front_overhang", "width", "height"]} />
        <FieldsOf form={form} names={["driver_x", "driver_y", "driver_z"]} />
      </Section>
      <Section title="Fuel and its tank">
        <FieldsOf form={form} names={["fuel_kind", "tank_size", "fuel_per_lap", "tank_x", "tank_y", "tank_z"]} />
      </Section>
      <Section title="Power">
        <FieldOf form={form} name="power" />
        <FieldOf form={form} name="power_unit" />
      </Section>
      <FieldOf form={form} name="note" />
      <FormDock form={form} missing={missing(form)} />
    </div>
  );
}
