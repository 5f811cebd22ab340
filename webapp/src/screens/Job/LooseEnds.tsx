/** What a job leaves behind: a plug to cap, a wire to tie, a hole to seal, a bag of bolts to label. Open until closed. */

import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { garage } from "../../garage/garage";
import { save } from "../../garage/write";
import { Tick } from "../../parts/controls/Field";
import { FieldOf } from "../../parts/forms/FieldOf";
import { useFilled } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { troubleOf } from "../../parts/frame/trouble";

const TO_DO = { plug: "cap", wire: "tie up", hole: "seal", bolts: "bag and label", other: "" };

export function LooseEnds({ job }: { job: string }) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const ends = garage.value.of("loose_end").filter((end) => end.values.job === job);
  const open = ends.filter((end) => !end.values.closed).length;
  const close = (id: string, closed: boolean) =>
    save([{ kind: "loose_end", record: id, set: { closed } }]).catch((error: unknown) => setTrouble(troubleOf(error)));
  return (
    <Section
      title="Loose ends"
      aside={<span class="num">{open ? `${open} open` : ends.length ? "all closed" : "none"}</span>}
    >
      <TroubleNotice trouble={trouble} />
      {ends.map(({ id, values: { text, sort, closed = false } }) => {
        const label = [text, sort && TO_DO[sort]].filter(Boolean).join(" · ");
        return (
          <Tick key={id} label={closed ? <s>{label}</s> : label} value={closed} onValue={(on) => void close(id, on)} />
        );
      })}
      <NewLooseEnd job={job} onTrouble={setTrouble} />
    </Section>
  );
}

function NewLooseEnd({ job, onTrouble }: { job: string; onTrouble: (trouble: AppError | null) => void }) {
  const form = useFilled("loose_end", { sort: "plug" });
  const text = form.text("text").trim();
  const add = () =>
    save([{ kind: "loose_end", set: { job, ...form.values, text, closed: false } }]).then(
      () => {
        form.set("text", "");
        onTrouble(null);
      },
      (error: unknown) => onTrouble(troubleOf(error)),
    );
  return (
    <div class="stack">
      <FieldOf form={form} name="sort" hideLabel />
      <FieldOf form={form} name="text" />
      <Button label="Note it" disabled={!text} onClick={() => void add()} />
    </div>
  );
}
