/** How the car stood there: fuel, driver, ballast, trim, and whether the scale was the official one. */
import { book } from "../../answers";
import { describe } from "../../errors";
import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import { FieldOf } from "../../parts/forms/FieldOf";
import { type Filled, filled } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { lastSaid } from "../../parts/weighIn/lastSaid";
import { refName } from "../../parts/words/naming";
import { readingOf } from "../../parts/words/reading";
import { to } from "../../route";
import type { OfCar, Trim } from "./form";

export function AsItStood({ form, change }: OfCar) {
  const weighIn = filled("weigh_in", form, change);
  return (
    <Section title="As it stood there">
      <div class="stack">
        <FieldOf form={weighIn} name="trim" onValue={(trim) => change({ trim: trim as Trim, confirmed: false })} />
        <AsLastTime form={form} change={change} />
        <FieldOf form={weighIn} name="fuel" trouble={aboveTheTank(form.fuel)} />
        <FieldOf form={weighIn} name="driver_in" />
        {form.driver_in && <WhichDriver form={weighIn} />}
        <FieldOf form={weighIn} name="ballast" unit={form.unit} />
        <FieldOf form={weighIn} name="official" />
      </div>
    </Section>
  );
}

/** What was said at the last weigh-in, at one tap while nothing of it is said yet; never taken unasked. */
function AsLastTime({ form, change }: OfCar) {
  const { fuel, driver_in, driver } = lastSaid();
  if (form.fuel || form.driver_in !== null || (!fuel && driver_in === null)) return null;
  const seat =
    driver_in === null ? null : driver_in ? (driver ? `${refName(driver)} in it` : "driver in it") : "nobody in it";
  const words = [fuel, seat].filter(Boolean).join(", ");
  return <Button label={`As last time: ${words}`} onClick={() => change({ fuel, driver_in, driver })} />;
}

function WhichDriver({ form }: { form: Filled<"weigh_in"> }) {
  if (garage.value.of("driver").length) return <FieldOf form={form} name="driver" />;
  return (
    <p class="small">
      No driver is written down yet. <a href={to("drivers")}>Add one</a>, with gear; what is typed here is kept.
    </p>
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
