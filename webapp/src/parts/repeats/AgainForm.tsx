/** The figures of another reading: one on the big keypad, several each in its field; any of them alone will do. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { Look } from "../../core/weighing/repeats";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { newId, save } from "../../garage/write";
import { setOf } from "../forms/draftRecord";
import { FieldOf } from "../forms/FieldOf";
import { filled } from "../forms/form";
import { useDraft } from "../forms/useDraft";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { TypedLooks } from "../weighPart/ByKeypad";
import { emptyForm } from "../weighPart/form";
import { momentNow } from "../words/momentFields";
import { readingOf, troubleIn } from "../words/reading";
import type { ReadSet } from "./set";

/** `unit`: what a bare number is in, where a key said another than the scale's. */
type Texts = Partial<Record<Look | "unit", string>> & { id: string };

export function AgainForm({ set, onDone }: { set: ReadSet; onDone: () => void }) {
  const isSaved = (kept: Texts) => garage.value.byId.has(kept.id);
  const { form, change, name } = useDraft<Texts>(`again:${set.of}`, () => ({ id: newId() }), isSaved);
  const [missing, setMissing] = useState<string | null>(null);
  const saving = useSaving();
  if (!form) return null;
  const own = garage.value.one("scale", set.scale)?.values.unit ?? set.looks[0]?.read[0]?.shown.unit;
  const unit = form.unit ?? own ?? massUnit();
  const typed = set.looks.filter(({ look }) => form[look]?.trim());
  const keep = async () => {
    const names = typed.map(({ look }) => look);
    const values = { ...setOf("repeat", form, names, { mass: unit }), of: set.of, at: momentNow() };
    await save([{ kind: "repeat", record: form.id, set: values, base: [] }], [], name);
  };
  const press = (then: () => void) => async () => {
    const trouble = typed
      .map(({ look, label }) => troubleIn(label || "The scale shows", readingOf("mass", form[look] ?? "", unit, true)))
      .find((found) => found !== null);
    setMissing(trouble ?? (typed.length ? null : "Type what the scale shows."));
    if (!trouble && typed.length)
      await saving.run(async () => {
        await keep();
        then();
      });
  };
  return (
    <div class="stack again">
      <Figures set={set} form={form} change={change} unit={unit} />
      {missing && (
        <p class="small" role="alert">
          <strong>{missing}</strong>
        </p>
      )}
      <TroubleNotice trouble={saving.trouble} />
      <div class="pair">
        <Button label="That is all" disabled={saving.busy} onClick={typed.length ? press(onDone) : onDone} />
        <Button look="main" label="And again" disabled={saving.busy} onClick={press(() => undefined)} />
      </div>
    </div>
  );
}

type FiguresProps = { set: ReadSet; form: Texts; change: (patch: Partial<Texts>) => void; unit: string };

function Figures({ set, form, change, unit }: FiguresProps) {
  const fields = useRef<HTMLDivElement>(null);
  const isPart = set.looks[0]?.look === "shown";
  // The readings and the keypad in one view: the keypad of several fields comes up by itself, at the foot.
  useEffect(() => {
    fields.current?.closest("section")?.scrollIntoView({ block: "start" });
    fields.current?.querySelector("input")?.focus({ preventScroll: isPart });
  }, []);
  if (!isPart)
    return (
      <div ref={fields}>
        <div class="pair">
          {set.looks.map(({ look }) => (
            <FieldOf key={look} form={filled("repeat", form, change)} name={look} unit={unit} />
          ))}
        </div>
        {set.looks.length > 1 && <p class="hint">One wheel alone will do; the others then stay as they were read.</p>}
      </div>
    );
  const method = set.looks.length > 1 ? "ends" : "direct";
  const part = emptyForm(
    { weighing: form.id, part: "" },
    { id: null, text: "" },
    { unit, scale: set.scale, place: "garage" },
  );
  return (
    <div class="weigh-looks" ref={fields}>
      <TypedLooks
        form={{ ...part, method, shown: form.shown ?? "", second: form.shown_far ?? "" }}
        change={({ shown, second, unit }) =>
          change({
            ...(shown !== undefined && { shown }),
            ...(second !== undefined && { shown_far: second }),
            ...(unit && { unit }),
          })
        }
      />
    </div>
  );
}
