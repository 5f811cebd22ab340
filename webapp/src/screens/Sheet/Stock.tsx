/** What it is cut from: the material with the range of its density, and how thick, as sold, measured or by gauge. */
import { LEGAL_OUNCES, MATERIALS } from "../../core/sheet/sheetStock";
import { Choice } from "../../parts/controls/Choice";
import { Disclosure } from "../../parts/controls/Disclosure";
import { TextField } from "../../parts/controls/Field";
import { Row } from "../../parts/figures/Row";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import type { How, SheetForm } from "./form";

type Props = { form: SheetForm; change: (patch: Partial<SheetForm>) => void };

const NAMES = [...MATERIALS].map(([value, { name }]) => ({ value, label: name }));
const GAUGES = [...LEGAL_OUNCES.keys()].map((number) => ({ value: String(number), label: `${number} gauge` }));

export function Stock({ form, change }: Props) {
  const known = MATERIALS.get(form.material);
  return (
    <div class="stack">
      <FieldOf
        form={filled("sheet", form, change)}
        name="material"
        options={NAMES}
        hint={known ? `${densityWords(form.material)}. From: ${known.source}.` : undefined}
        onValue={(material) => change(withMaterial(form, material))}
      />
      {!known && <OwnMaterial form={form} change={change} />}
      <Disclosure title="All materials, and where their densities are from">
        <div>
          {[...MATERIALS].map(([id, { name, source }]) => (
            <Row
              key={id}
              name={name}
              note={source}
              value={densityWords(id)}
              onTap={() => change(withMaterial(form, id))}
            />
          ))}
        </div>
      </Disclosure>
      <Thickness form={form} change={change} />
    </div>
  );
}

/** The gauge numbers are for steel alone. */
function withMaterial({ how }: SheetForm, material: string): Partial<SheetForm> {
  return { material, how: how === "gauge" && material !== "steel" ? "sold" : how };
}

function densityWords(material: string): string {
  const { low, high } = MATERIALS.get(material)!.density;
  return `${low} to ${high} kg/m³`;
}

function OwnMaterial({ form, change }: Props) {
  const sheet = filled("sheet", form, change);
  return (
    <>
      <TextField label="What it is called" value={form.own} most={80} onValue={(own) => change({ own })} />
      <div class="pair">
        <FieldOf form={sheet} name="density_low" />
        <FieldOf form={sheet} name="density_high" />
      </div>
      <p class="small quiet">The second stays empty where only one is known.</p>
    </>
  );
}

const TYPED = {
  sold: "What the shop calls it, with its unit: 1.5 mm, 1/8 in.",
  measured: "By callipers, with its unit: 1.48 mm.",
} as const;

function Thickness({ form, change }: Props) {
  const sheet = filled("sheet", form, change);
  const ways = [
    { value: "sold", label: "As sold" },
    { value: "measured", label: "Measured" },
    ...(form.material === "steel" ? [{ value: "gauge", label: "By gauge" }] : []),
  ];
  return (
    <>
      <Choice
        label="How its thickness is known"
        value={form.how}
        options={ways}
        onValue={(how) => change({ how: how as How })}
      />
      {form.how === "gauge" ? (
        <>
          <FieldOf form={sheet} name="gauge" options={GAUGES} onValue={(gauge) => change({ gauge: Number(gauge) })} />
          <FieldOf form={sheet} name="gauge_table" />
        </>
      ) : (
        <FieldOf form={sheet} name="thickness" unit={null} needed hint={TYPED[form.how]} />
      )}
    </>
  );
}
