/** The car's own figures. None of them is needed to weigh; each lets the weigh-in say more. */
import { car } from "../../answers";
import { chooseCar } from "../../garage/choices";
import { garage } from "../../garage/garage";
import { Pick } from "../../parts/controls/Field";
import { FieldOf } from "../../parts/forms/FieldOf";
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
      <FieldOf form={form} name="name" />
      <FieldOf form={form} name="book_weight" />
      <FieldOf form={form} name="book_weight_from" />
      <Section title="Dimensions">
        <FieldOf form={form} name="wheelbase" />
        <FieldOf form={form} name="track_front" />
        <FieldOf form={form} name="track_rear" />
        <FieldOf form={form} name="tyre_radius_front" />
        <FieldOf form={form} name="tyre_radius_rear" />
        <FieldOf form={form} name="beltline" />
        <FieldOf form={form} name="length" />
        <FieldOf form={form} name="front_overhang" />
        <FieldOf form={form} name="width" />
        <FieldOf form={form} name="height" />
        <FieldOf form={form} name="driver_x" />
        <FieldOf form={form} name="driver_y" />
        <FieldOf form={form} name="driver_z" />
      </Section>
      <Section title="Fuel and its tank">
        <FieldOf form={form} name="fuel_kind" />
        <FieldOf form={form} name="tank_size" />
        <FieldOf form={form} name="fuel_per_lap" />
        <FieldOf form={form} name="tank_x" />
        <FieldOf form={form} name="tank_y" />
        <FieldOf form={form} name="tank_z" />
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
