/** One scale: its steps and limit, and the checks against known masses that say how far it is trusted. */

import { known } from "../../answers";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { save } from "../../garage/write";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import { Screen, Section } from "../../parts/frame/Screen";
import { trustWords } from "../../parts/weighing/trust";
import { type ScaleKind, usualScale } from "../../parts/words/scaleKinds";
import { to } from "../../route";

export function Scale({ id }: { id: string }) {
  const form = useForm("scale", id, usualScale("kitchen", massUnit()));
  const trust = trustWords(known.value.scales.get(id));
  const setKind = (kind: ScaleKind) => {
    if (!form.isNew) return form.set("kind", kind);
    const [before, after] = [usualScale(form.values.kind!, massUnit()), usualScale(kind, massUnit())];
    for (const field of ["kind", "name", "unit", "division"] as const) {
      if (form.values[field] === before[field]) form.set(field, after[field]);
    }
  };
  return (
    <Screen title={form.isNew ? "New scale" : form.text("name")} back={to("scales")}>
      <div class="stack">
        <FieldOf form={form} name="kind" onValue={(kind) => setKind(kind as ScaleKind)} />
        <FieldsOf form={form} names={["name", "division", "capacity", "repeatability", "accuracy_class", "note"]} />
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
  const checks = garage.value.of("scale_check").filter((check) => check.values.scale === scale);
  return (
    <Section title="Checks against known masses" aside={<span class="brass num">{trust}</span>}>
      {checks.map((check) => (
        <Check key={check.id} check={check} />
      ))}
      <NewCheck key={checks.length} scale={scale} />
    </Section>
  );
}

function Check({ check }: { check: Rec<"scale_check"> }) {
  const { known_name: name, known, shown, at } = check.values;
  return (
    <Row
      name={`${name ?? "Known mass"}: ${known}`}
      note={at?.slice(0, 10)}
      value={`showed ${shown}`}
      under={
        <Button
          look="plain"
          label="Withdraw"
          onClick={() => void save([{ kind: "scale_check", record: check.id, set: { deleted: true } }])}
        />
      }
    />
  );
}

function NewCheck({ scale }: { scale: string }) {
  const form = useForm("scale_check", "new", { scale });
  const ready = form.text("known") && form.text("shown");
  return (
    <div class="stack notice">
      <FieldsOf form={form} names={["known_name", "known", "known_within", "shown"]} />
      <FormDock
        form={form}
        label="Note this check"
        missing={ready ? null : "The true mass and what the scale showed are needed."}
      />
    </div>
  );
}
