/** Noting a donor part in one go: what, instead of what, its weight, row, price and a photo; one save, without signal. */
import { useState } from "preact/hooks";
import { bookWith, car, known, type Lists, lists, type Plain, say } from "../../answers";
import { compare } from "../../core/ledger/compare";
import type { AppError } from "../../errors";
import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import { newId, save } from "../../garage/write";
import { Pick, TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { type Picked, RecordPick } from "../../parts/controls/RecordPick";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useSaving } from "../../parts/forms/saving";
import { useDraft } from "../../parts/forms/useDraft";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { Screen } from "../../parts/frame/Screen";
import { type Shot, ShotPreview, TakePhoto } from "../../parts/photos/Photos";
import { basisWord } from "../../parts/words/basis";
import { momentNow } from "../../parts/words/momentFields";
import { readingOf, troubleIn, typedOf } from "../../parts/words/reading";
import { replace, to } from "../../route";
import { Comparison } from "./Comparison";
import { priceTrouble } from "./price";
import { isOnCar } from "./swap";

type Draft = {
  part: string;
  name: string;
  insteadOf: Picked;
  shown: string;
  scale: string;
  yard: string;
  row: string;
  asking: string;
  shot: Shot | null;
};

/** The last yard and scale used stay filled in: one walks along one yard with one scale. */
function start(insteadOf: string | null): Draft {
  const last = garage.value
    .of("part")
    .filter((part) => part.values["yard"])
    .at(-1);
  const scale = garage.value
    .of("weighing")
    .filter((weighing) => weighing.values["place"] === "yard")
    .at(-1)?.values["scale"];
  const old = insteadOf ? garage.value.byId.get(insteadOf) : undefined;
  return {
    part: newId(),
    name: String(old?.values["name"] ?? ""),
    insteadOf: { id: insteadOf, text: "" },
    shown: "",
    scale: String(scale ?? garage.value.of("scale").find((each) => each.values["kind"] === "hanging")?.id ?? ""),
    yard: String(last?.values["yard"] ?? ""),
    row: "",
    asking: "",
    shot: null,
  };
}

export function NewDonor({ insteadOf }: { insteadOf: string | null }) {
  const { form, change, drop } = useDraft<Draft>(
    `donor:${insteadOf ?? "new"}`,
    () => start(insteadOf),
    (kept) => garage.value.byId.has(kept.part),
  );
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const saving = useSaving();
  if (!form) return null;
  const scaleUnit = String(garage.value.byId.get(form.scale)?.values["unit"] ?? unitOf("mass"));
  const records = recordsOf(form, scaleUnit);
  const found = form.shown.trim() ? compare(bookWith(records), form.part) : null;
  const finish = async () => {
    const [part] = records["parts"]!;
    const [weighing] = records["weighings"]!;
    const shots = form.shot ? [{ of: form.part, ...form.shot }] : [];
    await save([asChange("part", part!), ...(weighing ? [asChange("weighing", weighing)] : [])], shots);
    await drop();
    replace(to("donor", form.part));
  };
  return (
    <Screen title="Donor part" back={to("yard")}>
      <div class="stack">
        <InsteadOf
          value={form.insteadOf}
          onValue={(value) => change({ insteadOf: value, name: form.name || value.text })}
        />
        <TextField label="What it is" value={form.name} onValue={(name) => change({ name })} most={120} />
        <QuantityField
          kind="mass"
          unit={scaleUnit}
          label="The scale shows"
          value={form.shown}
          onValue={(shown) => change({ shown })}
        />
        {found && <Comparison found={found} over={records} />}
        <ScaleChoice value={form.scale} onValue={(scale) => change({ scale })} />
        {form.shot ? (
          <ShotPreview shot={form.shot} onDrop={() => change({ shot: null })} />
        ) : (
          <TakePhoto onShot={(shot) => change({ shot })} onTrouble={setTrouble} />
        )}
        <TroubleNotice trouble={trouble} />
        <div class="pair">
          <TextField label="Row" value={form.row} onValue={(row) => change({ row })} most={80} />
          <TextField
            label="Asking price"
            mode="decimal"
            value={form.asking}
            onValue={(asking) => change({ asking })}
            trouble={priceTrouble(form.asking)}
          />
        </div>
        <TextField label="Which yard" value={form.yard} onValue={(yard) => change({ yard })} most={120} />
        <Notice sort="caution">
          <p class="small">
            Airbags, tensioners and anything under a car on a jack: leave them to trained people and the yard’s own
            rules.
          </p>
        </Notice>
        <SaveDock label="Save on this phone" saving={saving} onSave={finish} missing={missingIn(form, scaleUnit)} />
      </div>
    </Screen>
  );
}

function missingIn(form: Draft, unit: string): string | null {
  if (!form.name.trim()) return "Say what it is.";
  return troubleIn("The scale shows", readingOf("mass", form.shown, unit, true)) ?? priceTrouble(form.asking);
}

/** The part and its weighing as records, before they are saved. */
function recordsOf(form: Draft, unit: string): Lists {
  const part: Plain = {
    id: form.part,
    name: form.name.trim(),
    car: car.value?.id ?? null,
    whereabouts: "yard",
    instead_of: form.insteadOf.id,
    yard: form.yard.trim() || null,
    row: form.row.trim() || null,
    asking: form.asking || null,
  };
  const weighing: Plain = {
    id: `${form.part}-w`,
    of: form.part,
    method: "direct",
    shown: typedOf("mass", form.shown, unit),
    scale: form.scale || null,
    at: momentNow(),
    place: "yard",
  };
  return { parts: [part], weighings: form.shown.trim() ? [weighing] : [] };
}

function asChange(kind: string, { id, ...values }: Plain) {
  const set = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null));
  return { kind, record: id, set };
}

function InsteadOf({ value, onValue }: { value: Picked; onValue: (value: Picked) => void }) {
  const offers = (lists.value["parts"] ?? [])
    .filter((part) => isOnCar(part.id))
    .map((part) => {
      const mass = known.value.of.get(part.id);
      return {
        id: part.id,
        name: String(part["name"]),
        note: mass?.mass ? `${say(mass.mass)} ${basisWord(mass.basis)}` : "no weight yet",
      };
    });
  return (
    <RecordPick
      label="Instead of"
      offers={offers}
      value={value}
      onValue={onValue}
      hint="The part on the car it would replace."
      show={4}
    />
  );
}

function ScaleChoice({ value, onValue }: { value: string; onValue: (value: string) => void }) {
  const scales = garage.value.of("scale").map((scale) => ({ value: scale.id, label: String(scale.values["name"]) }));
  return <Pick label="Scale" value={value} options={scales} none="Another scale" onValue={onValue} />;
}
