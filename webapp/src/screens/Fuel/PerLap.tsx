/** What a lap takes: the car's own figure, or another for this run, which can be kept for the car. */

import { car } from "../../answers";
import { unitOf } from "../../garage/units";
import { save } from "../../garage/write";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { SaveButton } from "../../parts/forms/SaveButton";
import { readingOf, whyNot } from "../../parts/words/reading";
import type { OfRun } from "./form";

export function PerLap({ form, change }: OfRun) {
  const record = car.value;
  const own = record?.values.fuel_per_lap ?? "";
  const typed = form.perLap ?? own;
  const reading = readingOf("volume", typed, unitOf("volume"), true);
  const other = form.perLap !== null && reading.state === "read" && reading.typed !== own ? reading.typed : null;
  const keep = async (record: string) => {
    await save([{ kind: "car", record, set: { fuel_per_lap: other } }]);
    change({ perLap: null });
  };
  return (
    <div class="stack">
      <FieldOf
        form={filled("car", { fuel_per_lap: typed }, ({ fuel_per_lap: perLap = "" }) => change({ perLap }))}
        name="fuel_per_lap"
        trouble={form.perLap === null ? null : whyNot(reading)}
      />
      {record && other && <SaveButton look="" label="Keep this for the car" onSave={() => keep(record.id)} />}
    </div>
  );
}
