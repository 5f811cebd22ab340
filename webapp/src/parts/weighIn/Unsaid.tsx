/** What was not said of a weigh-in, who sat in it and the fuel, and what mends it at one tap: a correction with that said. */

import { book } from "../../answers";
import type { WeighIn as Read } from "../../core/garage/records";
import { isDriverSaid } from "../../core/wholeCar/aboard";
import { inOrder } from "../../core/wholeCar/weighed";
import { describe } from "../../errors";
import "../../laterErrors";
import { garage, type Rec } from "../../garage/garage";
import { newId, save } from "../../garage/write";
import { to } from "../../route";
import { Button, ButtonLink } from "../frame/Button";
import { Notice, TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { momentOf, sayMoment } from "../words/moments";
import { nameOf } from "../words/naming";
import { lastSaid } from "./lastSaid";

type WeighIn = Rec<"weigh_in">;
type Mend = { label: string; said: Partial<WeighIn["values"]> };

/** Whether something was not said of a weigh-in that the weight depends on. */
export function isUnsaid(record: Read | undefined): boolean {
  return record !== undefined && (!record.fuel || !isDriverSaid(record));
}

/** The last weigh-in of which something was not said. */
export function LastUnsaid() {
  const rec = garage.value.one("weigh_in", inOrder(book.value).findLast(isUnsaid)?.id);
  return rec ? <Unsaid rec={rec} /> : null;
}

export function Unsaid({ rec }: { rec: WeighIn }) {
  const saving = useSaving();
  const record = book.value.weigh_ins.get(rec.id);
  if (!record) return null;
  const mend = (said: Mend["said"]) =>
    saving.run(async () => {
      await save([{ kind: "weigh_in", record: newId(), set: { ...rec.values, ...said, replaces: rec.id }, base: [] }]);
    });
  const isSaid = isDriverSaid(record);
  const code = isSaid ? (book.value.car?.tank_size ? "fuel_unsaid" : "fuel_unknown") : "driver_unsaid";
  return (
    <Notice sort="caution">
      <p>
        <strong>Weigh-in of {sayMoment(momentOf(rec)) || "unknown date"}:</strong> {describe(code).sentence}
      </p>
      <div class="pair">
        {(isSaid ? fuels() : seats(rec)).map(({ label, said }) => (
          <Button key={label} label={label} onClick={() => mend(said)} />
        ))}
        {isSaid && <ButtonLink label="Type the litres" href={to("weigh-car", { replaces: rec.id })} />}
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </Notice>
  );
}

/** The driver of the last weigh-in that names one comes first. */
function seats({ values }: WeighIn): Mend[] {
  const last = lastSaid().driver;
  const drivers = garage.value.of("driver").map((driver): Mend => {
    return { label: driver.id === last ? `${nameOf(driver)}, as last time` : nameOf(driver), said: seat(driver.id) };
  });
  drivers.sort((a, b) => Number(b.said.driver === last) - Number(a.said.driver === last));
  return values.driver_in ? drivers : [...drivers, { label: "Nobody", said: { driver_in: false } }];
}

const seat = (driver: string): Mend["said"] => ({ driver_in: true, driver });

function fuels(): Mend[] {
  const last = lastSaid().fuel;
  const tank = book.value.car?.tank_size;
  return [
    ...(last ? [{ label: `${last}, as last time`, said: { fuel: last } }] : []),
    { label: "Empty", said: { fuel: "0 L" } },
    ...(tank ? [{ label: `Full: ${tank.reads}`, said: { fuel: tank.reads } }] : []),
  ];
}
