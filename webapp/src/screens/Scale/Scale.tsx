/** One scale: its steps and limit, and the checks against known masses that say how far it is trusted. */
import { known } from "../../answers";
import { garage } from "../../journal/garage";
import type { Rec } from "../../journal/types";
import { save } from "../../journal/write";
import { Pick, TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Row } from "../../parts/figures/Row";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm, type Values } from "../../parts/forms/form";
import { Screen, Section } from "../../parts/frame/Screen";
import { trustWords } from "../../parts/weighing/trust";
import { SCALE_KINDS, usualFor } from "../../parts/words/scaleKinds";
import { massUnit, unitOf } from "../../parts/words/units";
import { to } from "../../route";

const KIND_OPTIONS = SCALE_KINDS.map(({ kind, label }) => ({ value: kind as string, label }));
const CLASSES = [
  { value: "III", label: "Class III (trade scale)" },
  { value: "IIII", label: "Class IIII" },
];

/** What a new scale starts with: the commonest kind, its usual steps, all to be typed over. */
function startingWith(kind: string): Values {
  const row = SCALE_KINDS.find((each) => each.kind === kind) ?? SCALE_KINDS[0]!;
  return { kind: row.kind, name: row.name, ...usualFor(row, massUnit()) };
}

export function Scale({ id }: { id: string }) {
  const form = useForm("scale", id, startingWith("kitchen"));
  const trust = trustWords(known.value.scales.get(id));
  const setKind = (kind: string) => {
    if (!form.isNew) return form.set("kind", kind);
    const before = startingWith(form.text("kind"));
    for (const [field, value] of Object.entries(startingWith(kind))) {
      if (form.values[field] === before[field]) form.set(field, value);
    }
  };
  return (
    <Screen title={form.isNew ? "New scale" : form.text("name")} back={to("scales")}>
      <div class="stack">
        <Pick label="Kind" value={form.text("kind")} options={KIND_OPTIONS} onValue={setKind} />
        <TextField label="Name" value={form.text("name")} onValue={(value) => form.set("name", value)} most={120} />
        <QuantityField
          label="Steps of the display"
          kind="mass"
          unit={unitOf("mass")}
          value={form.text("division")}
          onValue={(value) => form.set("division", value)}
          hint="The smallest change it can show, such as 0.1 oz or 50 g."
        />
        <QuantityField
          label="Most it can weigh"
          kind="mass"
          unit={unitOf("mass")}
          value={form.text("capacity")}
          onValue={(value) => form.set("capacity", value)}
        />
        <QuantityField
          label="Repeats to within"
          kind="mass"
          unit={unitOf("mass")}
          value={form.text("repeatability")}
          onValue={(value) => form.set("repeatability", value)}
          hint="Roll or lift on and off a few times: the usual difference between looks."
        />
        <Pick
          label="Accuracy class on its plate"
          value={form.text("accuracy_class")}
          options={CLASSES}
          none="None, or not known"
          onValue={(value) => form.set("accuracy_class", value)}
        />
        <TextField
          label="Note"
          long
          value={form.text("note")}
          onValue={(value) => form.set("note", value)}
          most={4000}
        />
        {!form.isNew && <Checks scale={id} trust={`${trust.shown} ${trust.from}`} />}
        <FormDock
          form={form}
          missing={form.text("name").trim() ? null : "Give it a name."}
          next={form.isNew ? (made) => to("scale", made) : undefined}
          remove={{
            label: "Delete this scale",
            warning:
              "Readings made on it stay as they are, but nobody can tell any more how far to trust them. Delete it?",
            next: to("scales"),
          }}
        />
      </div>
    </Screen>
  );
}

function Checks({ scale, trust }: { scale: string; trust: string }) {
  const checks = garage.value.of("scale_check").filter((check) => check.values["scale"] === scale);
  return (
    <Section title="Checks against known masses" aside={<span class="brass num">{trust}</span>}>
      {checks.map((check) => (
        <Check key={check.id} check={check} />
      ))}
      <NewCheck key={checks.length} scale={scale} />
    </Section>
  );
}

function Check({ check }: { check: Rec }) {
  const { known_name: name, known, shown, at } = check.values;
  return (
    <Row
      name={`${String(name ?? "Known mass")}: ${String(known)}`}
      note={String(at ?? "").slice(0, 10)}
      value={`showed ${String(shown)}`}
      under={
        <button
          type="button"
          class="button plain"
          onClick={() => void save([{ kind: "scale_check", record: check.id, set: { deleted: true } }])}
        >
          Withdraw
        </button>
      }
    />
  );
}

function NewCheck({ scale }: { scale: string }) {
  const form = useForm("scale_check", "new", { scale });
  const ready = form.text("known") && form.text("shown");
  return (
    <div class="stack notice">
      <TextField
        label="What was put on"
        value={form.text("known_name")}
        onValue={(value) => form.set("known_name", value)}
        hint="A marked 10 kg plate, 5 litres of water, a parcel weighed at a shop. The same name means the same thing on every scale."
        most={120}
      />
      <QuantityField
        label="Its true mass"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("known")}
        onValue={(value) => form.set("known", value)}
      />
      <QuantityField
        label="True to within"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("known_within")}
        onValue={(value) => form.set("known_within", value)}
      />
      <QuantityField
        label="The scale showed"
        kind="mass"
        unit={unitOf("mass")}
        value={form.text("shown")}
        onValue={(value) => form.set("shown", value)}
      />
      <FormDock
        form={form}
        label="Note this check"
        missing={ready ? null : "The true mass and what the scale showed are needed."}
      />
    </div>
  );
}
