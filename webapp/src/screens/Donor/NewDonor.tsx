/** Noting a donor part in one go: what, instead of what, its weight, row, price and a photo; one save, without signal. */
import { bookWith, car, type Lists, type Plain } from "../../answers";
import { compare } from "../../core/ledger/compare";
import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import { newId, save } from "../../garage/write";
import { isOnCar, partOffers } from "../../parts/controls/partOffers";
import { type Picked, RecordPick } from "../../parts/controls/RecordPick";
import { setOf } from "../../parts/forms/draftRecord";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useDraft } from "../../parts/forms/useDraft";
import { Notice } from "../../parts/frame/Notice";
import { Screen } from "../../parts/frame/Screen";
import type { Shot } from "../../parts/photos/Photos";
import { Shots, shotsOf } from "../../parts/photos/Shots";
import { isDonorBlank } from "../../parts/weighing/blank";
import { Resumed } from "../../parts/weighing/Resumed";
import { scaleOptions } from "../../parts/weighing/scalesFor";
import { momentNow } from "../../parts/words/momentFields";
import { nameOf } from "../../parts/words/naming";
import { readingOf, troubleIn } from "../../parts/words/reading";
import { replace, to } from "../../route";
import { Comparison } from "./Comparison";
import { priceTrouble } from "./price";

/** `part`: its id; the rest as the fields of the part and its weighing are named. */
type Draft = Record<"part" | "name" | "shown" | "scale" | "yard" | "row" | "asking", string> & {
  insteadOf: Picked;
  shots: Shot[];
};

/** The last yard and scale used stay filled in: one walks along one yard with one scale. */
function start(insteadOf: string | null): Draft {
  const now = garage.value;
  const last = now.of("part").findLast((part) => part.values.yard);
  const weighed = now.of("weighing").findLast((weighing) => weighing.values.place === "yard");
  const hanging = now.of("scale").find((scale) => scale.values.kind === "hanging");
  const old = now.one("part", insteadOf);
  return {
    part: newId(),
    name: old ? nameOf(old) : "",
    insteadOf: { id: insteadOf, text: "" },
    shown: "",
    scale: weighed?.values.scale ?? hanging?.id ?? "",
    yard: last?.values.yard ?? "",
    row: "",
    asking: "",
    shots: [],
  };
}

/** `draft`: under what it is kept beside others. */
export function NewDonor({ insteadOf, draft }: { insteadOf: string | null; draft: string | null }) {
  const { form, change, name, resumed } = useDraft<Draft>(
    ["donor", insteadOf ?? "new", ...(draft ? [draft] : [])].join(":"),
    () => start(insteadOf),
    (kept) => garage.value.byId.has(kept.part),
  );
  if (!form) return null;
  const [part, weighing] = [filled("part", form, change), filled("weighing", form, change)];
  const scaleUnit = garage.value.one("scale", form.scale)?.values.unit ?? unitOf("mass");
  const records = recordsOf(form, scaleUnit);
  const found = form.shown.trim() ? compare(bookWith(records), form.part) : null;
  const finish = async () => {
    await save(
      [...records.parts.map(asChange("part")), ...records.weighings.map(asChange("weighing"))],
      shotsOf(form.part, form),
      name,
    );
    replace(to("donor", form.part));
  };
  return (
    <Screen title="Donor part" back={to("yard")}>
      <div class="stack">
        {resumed && !isDonorBlank(form) && (
          <Resumed what="donor part" form={{ id: form.part }} onDrop={() => change(start(insteadOf))} />
        )}
        <RecordPick
          label="Instead of"
          offers={partOffers(garage.value.of("part").filter(({ id }) => isOnCar(id)))}
          value={form.insteadOf}
          onValue={(value) => change({ insteadOf: value, name: form.name || value.text })}
          hint="The part on the car it would replace."
        />
        <FieldOf form={part} name="name" label="What it is" />
        <FieldOf form={weighing} name="shown" unit={scaleUnit} />
        {found && <Comparison found={found} over={records} />}
        <FieldOf form={weighing} name="scale" options={scaleOptions("part", form.scale)} />
        <Shots form={form} change={change} most={1} />
        <div class="pair">
          <FieldOf form={part} name="row" />
          <FieldOf form={part} name="asking" trouble={priceTrouble(form.asking)} />
        </div>
        <FieldOf form={part} name="yard" />
        <Notice sort="caution">
          <p class="small">
            Airbags, tensioners and anything under a car on a jack: leave them to trained people and the yard’s own
            rules.
          </p>
        </Notice>
        <SaveDock label="Save on this phone" onSave={finish} missing={missingIn(form, scaleUnit)} />
      </div>
    </Screen>
  );
}

function missingIn(form: Draft, unit: string): string | null {
  if (!form.name.trim()) return "Say what it is.";
  return troubleIn("The scale shows", readingOf("mass", form.shown, unit, true)) ?? priceTrouble(form.asking);
}

/** The part and its weighing as records, before they are saved. */
function recordsOf(form: Draft, unit: string) {
  const part = {
    id: form.part,
    car: car.value?.id ?? null,
    whereabouts: "yard",
    instead_of: form.insteadOf.id,
    ...setOf("part", form, ["name", "yard", "row", "asking"]),
  };
  const weighing = {
    id: `${form.part}-w`,
    of: form.part,
    method: "direct",
    at: momentNow(),
    place: "yard",
    ...setOf("weighing", form, ["shown", "scale"], { mass: unit }),
  };
  return { parts: [part], weighings: form.shown.trim() ? [weighing] : [] } satisfies Lists;
}

const asChange =
  (kind: string) =>
  ({ id, ...values }: Plain) => ({
    kind,
    record: id,
    set: Object.fromEntries(Object.entries(values).filter(([, value]) => value !== null)),
  });
