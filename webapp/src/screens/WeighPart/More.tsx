/** What may be said of a weighing and need not be: bolts, zone, measured place, where and when, a note. */
import { TABLE } from "../../journal/kinds";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Choice, Pick, TextField } from "../../parts/controls/Field";
import { PlaceField } from "../../parts/controls/PlaceField";
import { sayMoment } from "../../parts/words/moments";
import type { PartForm, Place } from "./form";

const BOLTS = [
  { value: "yes", label: "Bolts included" },
  { value: "no", label: "Without bolts" },
];
const PLACES: { value: Place; label: string }[] = [
  { value: "garage", label: "Garage" },
  { value: "yard", label: "Yard" },
  { value: "paddock", label: "Paddock" },
  { value: "elsewhere", label: "Elsewhere" },
];

const WHERE: Record<Place, string> = {
  garage: "In the garage",
  yard: "At the yard",
  paddock: "In the paddock",
  elsewhere: "Elsewhere",
};

type Props = { form: PartForm; isPart: boolean; change: (patch: Partial<PartForm>) => void };

export function More({ form, isPart, change }: Props) {
  return (
    <Disclosure title={`${WHERE[form.place]}${form.at ? `, ${sayMoment(form.at)}` : ""}. Bolts, zone, when, note`}>
      <Choice
        label="On the scale"
        value={form.withBolts === null ? null : form.withBolts ? "yes" : "no"}
        options={BOLTS}
        onValue={(value) => change({ withBolts: value === "yes" })}
      />
      <Choice label="Where you are" value={form.place} options={PLACES} onValue={(place) => change({ place })} />
      {isPart && (
        <Pick
          label="Where it sits in the car"
          value={form.zone}
          options={TABLE.part.fields.zone.of.map((zone) => ({ value: zone, label: zone }))}
          none="Not said"
          onValue={(zone) => change({ zone: zone || null })}
        />
      )}
      {isPart && (
        <>
          <PlaceField
            label="Or measured: from the front axle"
            sides={["Ahead of it", "Behind it"]}
            value={form.x}
            onValue={(x) => change({ x })}
            hint="Only if you measured it; the zone is enough."
          />
          <PlaceField
            label="And from the centreline"
            sides={["Left", "Right"]}
            value={form.y}
            onValue={(y) => change({ y })}
          />
        </>
      )}
      <TextField
        label="When"
        type="datetime-local"
        value={form.at}
        onValue={(at) => change({ at })}
        hint="Now, unless you say otherwise."
      />
      <TextField label="Note" long value={form.note} most={4000} onValue={(note) => change({ note })} />
    </Disclosure>
  );
}
