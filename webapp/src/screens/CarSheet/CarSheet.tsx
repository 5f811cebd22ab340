/** The car's own figures. None of them is needed to weigh; each lets the weigh-in say more. */
import { car } from "../../answers";
import { POWER_UNITS } from "../../core/balance/loadTransfer";
import { garage } from "../../journal/garage";
import type { Rec } from "../../journal/types";
import { Choice, Pick, TextField } from "../../parts/controls/Field";
import { PlaceField } from "../../parts/controls/PlaceField";
import { QuantityField } from "../../parts/controls/QuantityField";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { unlikely } from "../../parts/forms/unreadable";
import { Screen, Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import { chooseCar } from "../../store/choices";

const FUELS = [
  { value: "petrol", label: "Petrol" },
  { value: "e85", label: "E85" },
  { value: "diesel", label: "Diesel" },
];

const POWERS = Object.keys(POWER_UNITS).map((unit) => ({ value: unit, label: unit }));

const LENGTHS: [field: string, label: string, hint?: string][] = [
  ["wheelbase", "Wheelbase", "From the middle of the front wheel to the middle of the rear wheel."],
  ["track_front", "Front track", "Between the middles of the front tyres."],
  ["track_rear", "Rear track"],
  ["tyre_radius_front", "Front tyre radius", "From the ground to the middle of the wheel, standing."],
  ["tyre_radius_rear", "Rear tyre radius"],
  ["beltline", "Height of the beltline", "The lower edge of the side windows."],
  ["length", "Length of the body", "Bumper to bumper."],
  ["front_overhang", "Front overhang", "From the nose to the middle of the front wheel."],
  ["width", "Width of the body", "Without the mirrors."],
  ["height", "Height of the roof"],
];

const TANK: [field: string, label: string, sides: readonly [string, string]][] = [
  ["tank_x", "Middle of the tank, from the front axle", ["Ahead of it", "Behind it"]],
  ["tank_y", "Middle of the tank, from the centreline", ["Left", "Right"]],
];

const PLACES: [field: string, label: string, sides: readonly [string, string]][] = [
  ["driver_x", "Driver's hips, from the front axle", ["Ahead of it", "Behind it"]],
  ["driver_y", "Driver, from the centreline", ["Left", "Right"]],
];

export function CarSheet() {
  const cars = garage.value.of("car");
  const id = car.value?.id ?? "new";
  return (
    <Screen title="Car" back={to("more")}>
      {cars.length > 1 && (
        <Pick label="Which car" value={id} options={cars.map(optionOf)} onValue={(value) => void chooseCar(value)} />
      )}
      <CarForm key={id} id={id} />
    </Screen>
  );
}

const optionOf = (each: Rec) => ({ value: each.id, label: String(each.values["name"]) });

function missing(form: Form): string | null {
  if (!form.text("name").trim()) return "Give the car a name.";
  return form.text("power") && !form.text("power_unit") ? "Say what the power is in." : null;
}

function CarForm({ id }: { id: string }) {
  const form = useForm("car", id, { fuel_kind: "petrol" });
  return (
    <div class="stack">
      <TextField label="Name" value={form.text("name")} onValue={(value) => form.set("name", value)} most={120} />
      <QuantityField
        label="Weight in the brochure"
        kind="mass"
        value={form.text("book_weight")}
        onValue={(value) => form.set("book_weight", value)}
        hint="Only used as where the drawing starts, until the car has been weighed."
      />
      <TextField
        label="Brochure weight comes from"
        value={form.text("book_weight_from")}
        onValue={(value) => form.set("book_weight_from", value)}
      />
      <Section title="Dimensions">
        {LENGTHS.map(([field, label, hint]) => (
          <QuantityField
            key={field}
            label={label}
            kind="length"
            hint={hint}
            lateTrouble={unlikely(field, form.text(field))}
            value={form.text(field)}
            onValue={(value) => form.set(field, value)}
          />
        ))}
        {PLACES.map(([field, label, sides]) => (
          <PlaceField
            key={field}
            label={label}
            sides={sides}
            value={form.text(field)}
            onValue={(value) => form.set(field, value)}
          />
        ))}
        <QuantityField
          label="Driver's hips, above the ground"
          kind="length"
          value={form.text("driver_z")}
          onValue={(value) => form.set("driver_z", value)}
        />
      </Section>
      <Section title="Fuel and its tank">
        <Choice
          label="Fuel"
          value={form.text("fuel_kind")}
          options={FUELS}
          onValue={(value) => form.set("fuel_kind", value)}
        />
        <QuantityField
          label="Tank holds"
          kind="volume"
          value={form.text("tank_size")}
          onValue={(value) => form.set("tank_size", value)}
        />
        <QuantityField
          label="Fuel a lap takes"
          kind="volume"
          value={form.text("fuel_per_lap")}
          onValue={(value) => form.set("fuel_per_lap", value)}
          hint="What you filled up after some laps, divided by those laps."
        />
        {TANK.map(([field, label, sides]) => (
          <PlaceField
            key={field}
            label={label}
            sides={sides}
            value={form.text(field)}
            onValue={(value) => form.set(field, value)}
          />
        ))}
        <QuantityField
          label="Middle of the tank, above the ground"
          kind="length"
          value={form.text("tank_z")}
          onValue={(value) => form.set("tank_z", value)}
          hint="Measured from outside or found in the workshop manual: a tank is not opened for it."
        />
      </Section>
      <Section title="Power">
        <TextField
          label="Power"
          mode="decimal"
          value={form.text("power")}
          onValue={(value) => form.set("power", value)}
          hint="As the maker or a test bench gives it, for weight per power."
        />
        <Choice
          label="Power is in"
          value={form.text("power_unit")}
          options={POWERS}
          onValue={(value) => form.set("power_unit", value)}
        />
      </Section>
      <TextField label="Note" long value={form.text("note")} onValue={(value) => form.set("note", value)} most={4000} />
      <FormDock form={form} missing={missing(form)} />
    </div>
  );
}
