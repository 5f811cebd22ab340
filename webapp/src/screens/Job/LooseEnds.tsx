/** What a job leaves behind: a plug to cap, a wire to tie, a hole to seal, a bag of bolts to label. Open until closed. */
import { useState } from "preact/hooks";
import type { AppError } from "../../errors";
import { garage } from "../../garage/garage";
import { save } from "../../garage/write";
import { Choice, TextField, Tick } from "../../parts/controls/Field";
import { troubleOf } from "../../parts/forms/trouble";
import { TroubleNotice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";

const SORTS = [
  { value: "plug", label: "Plug" },
  { value: "wire", label: "Wire" },
  { value: "hole", label: "Hole" },
  { value: "bolts", label: "Bolts" },
  { value: "other", label: "Other" },
];
const TO_DO: Record<string, string> = { plug: "cap", wire: "tie up", hole: "seal", bolts: "bag and label", other: "" };

export function LooseEnds({ job }: { job: string }) {
  const [trouble, setTrouble] = useState<AppError | null>(null);
  const ends = garage.value.of("loose_end").filter((end) => end.values["job"] === job);
  const open = ends.filter((end) => !end.values["closed"]).length;
  const close = (id: string, closed: boolean) =>
    save([{ kind: "loose_end", record: id, set: { closed } }]).catch((error: unknown) => setTrouble(troubleOf(error)));
  return (
    <Section
      title="Loose ends"
      aside={<span class="num">{open ? `${open} open` : ends.length ? "all closed" : "none"}</span>}
    >
      <TroubleNotice trouble={trouble} />
      {ends.map((end) => {
        const todo = TO_DO[String(end.values["sort"])];
        const label = `${String(end.values["text"])}${todo ? ` · ${todo}` : ""}`;
        return (
          <Tick
            key={end.id}
            label={end.values["closed"] ? <s>{label}</s> : label}
            value={!!end.values["closed"]}
            onValue={(on) => void close(end.id, on)}
          />
        );
      })}
      <NewLooseEnd job={job} onTrouble={setTrouble} />
    </Section>
  );
}

function NewLooseEnd({ job, onTrouble }: { job: string; onTrouble: (trouble: AppError | null) => void }) {
  const [text, setText] = useState("");
  const [sort, setSort] = useState("plug");
  const add = () =>
    save([{ kind: "loose_end", set: { job, sort, text: text.trim(), closed: false } }]).then(
      () => {
        setText("");
        onTrouble(null);
      },
      (error: unknown) => onTrouble(troubleOf(error)),
    );
  return (
    <div class="stack">
      <Choice label="A loose end" hideLabel value={sort} options={SORTS} onValue={setSort} />
      <TextField label="What is left behind" value={text} onValue={setText} most={400} />
      <button type="button" class="button" disabled={!text.trim()} onClick={() => void add()}>
        Note it
      </button>
    </div>
  );
}
