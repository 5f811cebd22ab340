/** What it is cut from: the material with the range of its density, and how thick, as sold, measured or by gauge. */
import { LEGAL_OUNCES, MATERIALS } from "../../core/sheet/sheetStock";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Choice, Pick, TextField } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Row } from "../../parts/figures/Row";
import type { How, SheetForm } from "./form";

type Props = { form: SheetForm; change: (patch: Partial<SheetForm>) => void };

const NAMES = [...MATERIALS].map(([value, { name }]) => ({ value, label: name }));
const GAUGES = [...LEGAL_OUNCES.keys()].map((number) => ({ value: String(number), label: `${number} gauge` }));
const TABLES = [
  { value: "msg", label: "Makers' (MSG)" },
  { value: "ussg", label: "Legal (USSG)" },
];

export function Stock({ form, change }: Props) {
  const known = MATERIALS.get(form.material);
  return (
    <div class="stack">
      <Pick
        label="Material"
        value={form.material}
        options={NAMES}
        none="Another, by its density"
        hint={known ? `${densityWords(form.material)}. ${sourceWords(known.source)}` : undefined}
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

function sourceWords(source: string): string {
  return `From: ${source}.`;
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
  return (
    <>
      <TextField label="What it is called" value={form.own} most={80} onValue={(own) => change({ own })} />
      <div class="pair">
        <TextField
          label="Density from, kg/m³"
          mode="decimal"
          value={form.densityLow}
          onValue={(densityLow) => change({ densityLow })}
        />
        <TextField
          label="Density to, kg/m³"
          mode="decimal"
          value={form.densityHigh}
          onValue={(densityHigh) => change({ densityHigh })}
        />
      </div>
      <p class="small quiet">The second stays empty where only one is known.</p>
    </>
  );
}

function Thickness({ form, change }: Props) {
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
          <Pick
            label="Gauge"
            value={String(form.gauge)}
            options={GAUGES}
            onValue={(gauge) => change({ gauge: Number(gauge) })}
          />
          <Choice
            label="By which table"
            value={form.gaugeTable}
            options={TABLES}
            onValue={(gaugeTable) => change({ gaugeTable })}
            hint="Makers' thicknesses are what is rolled today; the legal table is a table of weights."
          />
        </>
      ) : (
        <QuantityField
          kind="length"
          unit={null}
          label="Thickness"
          needed
          value={form.thickness}
          onValue={(thickness) => change({ thickness })}
          hint={
            form.how === "sold"
              ? "What the shop calls it, with its unit: 1.5 mm, 1/8 in."
              : "By callipers, with its unit: 1.48 mm."
          }
        />
      )}
    </>
  );
}
