/** On what and how it is weighed: one quiet line while it is the usual way, all the choices when tapped. */

import { useState } from "preact/hooks";
import { garage } from "../../garage/garage";
import { to } from "../../route";
import { Row } from "../figures/Row";
import { FieldOf } from "../forms/FieldOf";
import { filled } from "../forms/form";
import { Button, ButtonLink } from "../frame/Button";
import { type Method, methodRow } from "../weighing/methods";
import { scaleOptions } from "../weighing/scalesFor";
import { choiceWord } from "../words/fieldWords";
import { nameOf } from "../words/naming";
import { frozen, type OfPart, type PartForm } from "./form";

export function How({ form, change }: OfPart) {
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
  const scale = garage.value.one("scale", form.scale);
  const change = <span class="how-change">Change</span>;
  const on = scale ? nameOf(scale) : "no scale named, so taken to be rough";
  return (
    <div>
      <Row
        name="How it is weighed"
        note={`${choiceWord("weighing", "method", form.method)} · ${on}`}
        value={change}
        onTap={onOpen}
      />
      {row.hint && <p class="small quiet">{row.hint}</p>}
    </div>
  );
}

function HowChoices({ form, change, onClose }: OfPart & { onClose: () => void }) {
  const weighing = filled("weighing", form, change);
  const row = methodRow(form.method);
  const setMethod = (method: Method) =>
    change({ method, second: methodRow(method).second === row.second ? form.second : "" });
  const setScale = (id: string) => {
    const { unit = form.unit } = garage.value.one("scale", id)?.values ?? {};
    change({ ...frozen(form), scale: id || null, unit });
  };
  return (
    <div class="stack">
      <FieldOf form={weighing} name="method" hint={row.hint} onValue={(method) => setMethod(method as Method)} />
      <FieldOf form={weighing} name="scale" options={scaleOptions("part", form.scale)} onValue={setScale} />
      <div class="pair">
        <ButtonLink look="plain" label="Add a scale" href={to("scale", "new")} />
        <Button label="Done" onClick={onClose} />
      </div>
    </div>
  );
}
