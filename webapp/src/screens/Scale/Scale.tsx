/** One scale: what its display shows, its limit, and the checks against known masses that say how far it is trusted. */

import { known } from "../../answers";
import { garage } from "../../garage/garage";
import { save } from "../../garage/write";
import type { Values } from "../../journal/kinds";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { FieldOf, FieldsOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import { Screen, Section } from "../../parts/frame/Screen";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { Displays } from "../../parts/weighing/Displays";
import { repeatWords, trustWords } from "../../parts/weighing/trust";
import { choiceWord } from "../../parts/words/fieldWords";
import { to } from "../../route";
import { NewCheck } from "./NewCheck";
import { OverTime } from "./OverTime";

type Kind = NonNullable<Values<"scale">["kind"]>;

export function Scale({ id }: { id: string }) {
  const form = useForm("scale", id);
  const model = known.value.scales.get(form.id);
  const trust = trustWords(model);
  const setKind = (kind: Kind) => {
    const isUnnamed = [undefined, choiceWord("scale", "kind", form.values.kind)].includes(form.values.name);
    if (form.isNew && isUnnamed) form.set("name", choiceWord("scale", "kind", kind));
    form.set("kind", kind);
  };
  return (
    <Screen title={form.isNew ? "New scale" : form.text("name")} back={to("scales")}>
      <div class="stack">
        <Displays
          of={form.values}
          onUnit={(unit) => form.set("unit", unit)}
          onDivision={(division) => form.set("division", division)}
        />
        <FieldOf form={form} name="kind" onValue={(kind) => setKind(kind as Kind)} />
        <FieldsOf form={form} names={["name", "capacity", "repeatability"]} />
        {repeatWords(model).map((words) => (
          <p key={words} class="small brass">
            {words}
          </p>
        ))}
        <FieldsOf form={form} names={["accuracy_class", "note"]} />
        {!form.isNew && <OverTime scale={form.id} />}
        {!form.isNew && <Checks scale={form.id} trust={`${trust.shown} ${trust.from}`} />}
        {!form.isNew && <RecordPhotos of={form.id} />}
        <FormDock
          form={form}
          missing={missing(form)}
          next={(made) => to("scale", made)}
          remove={{ label: "Delete this scale", next: to("scales") }}
        />
      </div>
    </Screen>
  );
}

/** A scale without its steps is kept all the same: they are then the last digit typed. */
function missing(form: Form<"scale">): string | null {
  if (!form.values.kind) return "Say what kind of scale it is.";
  return form.text("name").trim() ? null : "Give it a name.";
}

function Checks({ scale, trust }: { scale: string; trust: string }) {
  const checks = garage.value.of("scale_check").filter((check) => check.values.scale === scale);
  return (
    <Section title="Checks against known masses" aside={<span class="brass num">{trust}</span>}>
      {checks.map((check) => (
        <div key={check.id} id={`check-${check.id}`}>
          <Check check={check} />
        </div>
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
