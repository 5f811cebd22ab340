/** How the car stood there: fuel, driver, ballast, trim, and whether the scale was the official one. */
import { book } from "../../answers";
import { describe } from "../../errors";
import "../../laterErrors";
import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import { Choice, Pick } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Section } from "../../parts/frame/Screen";
import { readingOf } from "../../parts/words/reading";
import { to } from "../../route";
import type { CarForm, Trim } from "./form";

const TRIMS: { value: Trim; label: string }[] = [
  { value: "event", label: "Event trim" },
  { value: "road", label: "Road trim" },
];
const SEATS = [
  { value: "out", label: "Nobody in it" },
  { value: "in", label: "Driver in it" },
];
const WHOSE = [
  { value: "own", label: "Our own" },
  { value: "official", label: "Official" },
];

type Props = { form: CarForm; change: (patch: Partial<CarForm>) => void };

export function AsItStood({ form, change }: Props) {
  return (
    <Section title="As it stood there">
      <div class="stack">
        <Choice label="Trim" value={form.trim} options={TRIMS} onValue={(trim) => change({ trim, confirmed: false })} />
        <QuantityField
          kind="volume"
          label="Fuel in the tank"
          value={form.fuel}
          onValue={(fuel) => change({ fuel })}
          trouble={aboveTheTank(form.fuel)}
          hint="Off the gauge will do. Without it, only the weight as it stands can be told."
        />
        <Choice
          label="Seat"
          value={form.driverIn ? "in" : "out"}
          options={SEATS}
          onValue={(seat) => change({ driverIn: seat === "in" })}
        />
        {form.driverIn && <WhichDriver form={form} change={change} />}
        <QuantityField
          kind="mass"
          label="Ballast on board"
          value={form.ballast}
          unit={form.unit}
          onValue={(ballast) => change({ ballast })}
          hint="What was fitted then; nothing, if there was none."
        />
        <Choice
          label="Whose scales"
          value={form.official ? "official" : "own"}
          options={WHOSE}
          onValue={(whose) => change({ official: whose === "official" })}
        />
      </div>
    </Section>
  );
}

function WhichDriver({ form, change }: Props) {
  const drivers = garage.value
    .of("driver")
    .map((driver) => ({ value: driver.id, label: String(driver.values["name"]) }));
  if (!drivers.length)
    return (
      <p class="small">
        No driver is written down yet. <a href={to("drivers")}>Add one</a>, with gear; what is typed here is kept.
      </p>
    );
  return (
    <Pick
      label="Which driver, with gear"
      value={form.driver}
      options={drivers}
      none="Not said"
      onValue={(driver) => change({ driver: driver || null })}
    />
  );
}

/** A sentence when more fuel is typed than the tank holds; it can be saved all the same. */
function aboveTheTank(fuel: string): string | null {
  const tank = book.value.car?.tank_size;
  const reading = readingOf("volume", fuel, unitOf("volume"));
  if (!tank || reading.state !== "read" || reading.value <= tank.value) return null;
  const { sentence, do: todo } = describe("fuel_above_tank");
  return `${sentence} ${todo}`;
}
