/** On what and how it is weighed: one quiet line while it is the usual way, all the choices when tapped. */
import { useState } from "preact/hooks";
import { garage } from "../../garage/garage";
import { Choice, Pick } from "../../parts/controls/Field";
import { Row } from "../../parts/figures/Row";
import { METHODS, type Method, methodRow } from "../../parts/weighing/methods";
import { nameOf } from "../../parts/words/naming";
import { to } from "../../route";
import { frozen, type PartForm } from "./form";

const OPTIONS = METHODS.map(({ method, label }) => ({ value: method, label }));

type Props = { form: PartForm; change: (patch: Partial<PartForm>) => void };

export function How({ form, change }: Props) {
  const [open, setOpen] = useState(false);
  const close = () => {
    setOpen(false);
    scrollTo(0, 0);
  };
  return open ? (
    <HowChoices form={form} change={change} onClose={close} />
  ) : (
    <HowNow form={form} onOpen={() => setOpen(true)} />
  );
}

function HowNow({ form, onOpen }: { form: PartForm; onOpen: () => void }) {
  const row = methodRow(form.method);
  const scale = garage.value.byId.get(form.scale ?? "");
  const change = <span class="how-change">Change</span>;
  const on = scale ? nameOf(scale) : "no scale named, so taken to be rough";
  return (
    <div>
      <Row name="How it is weighed" note={`${row.label} · ${on}`} value={change} onTap={onOpen} />
      {row.hint && <p class="small quiet">{row.hint}</p>}
    </div>
  );
}

function HowChoices({ form, change, onClose }: Props & { onClose: () => void }) {
  const scales = garage.value.of("scale");
  const options = scales.map((each) => ({ value: each.id, label: nameOf(each) }));
  const row = methodRow(form.method);
  const setMethod = (method: Method) =>
    change({ method, second: methodRow(method).second === row.second ? form.second : "" });
  const setScale = (id: string) => {
    const unit = garage.value.byId.get(id)?.values["unit"];
    change({ ...frozen(form), scale: id || null, ...(typeof unit === "string" ? { unit } : {}) });
  };
  return (
    <div class="stack">
      <Choice label="How" value={form.method} options={OPTIONS} onValue={setMethod} hint={row.hint} />
      <Pick label="On which scale" value={form.scale} options={options} none="No scale named" onValue={setScale} />
      <div class="pair">
        <a class="button plain" href={to("scale", "new")}>
          Add a scale
        </a>
        <button type="button" class="button" onClick={onClose}>
          Done
        </button>
      </div>
    </div>
  );
}
