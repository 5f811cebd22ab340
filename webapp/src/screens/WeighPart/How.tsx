/** On what and how it is weighed: one quiet line while it is the usual way, all the choices when tapped. */
import { useState } from "preact/hooks";
import { garage } from "../../journal/garage";
import { Choice, Pick } from "../../parts/Field";
import { Row } from "../../parts/Row";
import { to } from "../../route";
import type { PartForm } from "./form";
import { METHODS, methodRow, type Method } from "./methods";

const OPTIONS = METHODS.map(({ method, label }) => ({ value: method, label }));

export function How({ form, change }: { form: PartForm; change: (patch: Partial<PartForm>) => void }) {
  const [open, setOpen] = useState(false);
  const scales = garage.value.of("scale");
  const scale = scales.find((each) => each.id === form.scale);
  const row = methodRow(form.method);
  if (!open) {
    return (
      <div class="how">
        <Row name={row.label} note={scale ? String(scale.values["name"]) : "No scale named: taken to be rough"} value={<span class="how-change">Change</span>} onTap={() => setOpen(true)} />
        {row.hint && <p class="small quiet">{row.hint}</p>}
      </div>
    );
  }
  const close = () => {
    setOpen(false);
    scrollTo(0, 0);
  };
  const setMethod = (method: Method) => change({ method, second: methodRow(method).second === row.second ? form.second : "" });
  const setScale = (id: string) => {
    const unit = scales.find((each) => each.id === id)?.values["unit"];
    change({ scale: id || null, ...(typeof unit === "string" ? { unit } : {}) });
  };
  return (
    <div class="how stack">
      <Choice label="How" value={form.method} options={OPTIONS} onValue={setMethod} hint={row.hint} />
      <Pick label="On which scale" value={form.scale} options={scales.map((each) => ({ value: each.id, label: String(each.values["name"]) }))} none="No scale named" onValue={setScale} />
      <div class="pair">
        <a class="button plain" href={to("scale", "new")}>Add a scale</a>
        <button type="button" class="button" onClick={close}>Done</button>
      </div>
    </div>
  );
}
