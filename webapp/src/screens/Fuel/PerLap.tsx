/** What a lap takes: the car's own figure, or another for this run, which can be kept for the car. */
import { car } from "../../answers";
import { unitOf } from "../../garage/units";
import { save } from "../../garage/write";
import { QuantityField } from "../../parts/controls/QuantityField";
import { useSaving } from "../../parts/forms/saving";
import { TroubleNotice } from "../../parts/frame/Notice";
import { typedOf } from "../../parts/words/reading";
import { type RunForm, troubleIn, volumeOf } from "./form";

type Props = { form: RunForm; change: (patch: Partial<RunForm>) => void };

export function PerLap({ form, change }: Props) {
  const saving = useSaving();
  const record = car.value;
  const own = record?.values.fuel_per_lap ?? "";
  const typed = form.perLap ?? own;
  const isOther =
    form.perLap !== null &&
    volumeOf(typed, unitOf("volume"), true) !== null &&
    typedOf("volume", typed, unitOf("volume")) !== own;
  const keep = async () => {
    if (!record) return;
    await save([{ kind: "car", record: record.id, set: { fuel_per_lap: typedOf("volume", typed, unitOf("volume")) } }]);
    change({ perLap: null });
  };
  return (
    <div class="stack">
      <QuantityField
        kind="volume"
        label="Fuel a lap takes"
        value={typed}
        onValue={(perLap) => change({ perLap })}
        trouble={form.perLap === null ? null : troubleIn(form.perLap, unitOf("volume"), true)}
        hint="What you filled up after some laps, divided by those laps."
      />
      {isOther && (
        <button type="button" class="button" disabled={saving.busy} onClick={() => void saving.run(keep)}>
          Keep this for the car
        </button>
      )}
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}
