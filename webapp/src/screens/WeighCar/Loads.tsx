/** What the scales show, each reading in its place: the car seen from above, left and right as the driver sits. */
import { LOOKS, type Reading } from "../../core/wholeCar/weighIn";
import { garage } from "../../garage/garage";
import { Choice, Pick } from "../../parts/controls/Field";
import { QuantityField } from "../../parts/controls/QuantityField";
import { LOOK_WORDS } from "../../parts/weighIn/looks";
import type { CarForm, Layout } from "./form";

const LAYOUTS: { value: Layout; label: string }[] = [
  { value: "corners", label: "Corners" },
  { value: "axles", label: "Axles" },
  { value: "total", label: "Total only" },
];

type Props = { form: CarForm; change: (patch: Partial<CarForm>) => void };

export function Loads({ form, change }: Props) {
  const scales = garage.value.of("scale").map((scale) => ({ value: scale.id, label: String(scale.values["name"]) }));
  const setScale = (id: string) => {
    const unit = garage.value.byId.get(id)?.values["unit"];
    change({ scale: id || null, ...(unit === "kg" || unit === "lb" ? { unit } : {}) });
  };
  const look = (name: Reading) => (
    <QuantityField
      key={name}
      kind="mass"
      label={LOOK_WORDS[name]}
      value={form.looks[name]}
      unit={form.unit}
      needed
      onValue={(text) => change({ looks: { ...form.looks, [name]: text } })}
    />
  );
  return (
    <>
      <Choice
        label="What the scales give"
        value={form.layout}
        options={LAYOUTS}
        onValue={(layout) => change({ layout })}
        hideLabel
      />
      <Pick label="On which scales" value={form.scale} options={scales} none="No scales named" onValue={setScale} />
      {form.layout === "corners" ? <FromAbove look={look} /> : <div class="pair">{LOOKS[form.layout].map(look)}</div>}
    </>
  );
}

function FromAbove({ look }: { look: (name: Reading) => preact.VNode }) {
  return (
    <div class="from-above">
      <p class="from-above-nose small quiet">Front. Left and right as the driver sits.</p>
      {look("lf")}
      <CarOutline />
      {look("rf")}
      {look("lr")}
      {look("rr")}
    </div>
  );
}

function CarOutline() {
  return (
    <svg class="car-outline" viewBox="0 0 60 150" aria-hidden="true">
      <path d="M12 20 Q30 2 48 20 L51 60 L51 128 Q50 144 30 145 Q10 144 9 128 L9 60 Z" />
      <path d="M15 52 Q30 42 45 52 L42 66 Q30 61 18 66 Z M17 116 L19 104 Q30 108 41 104 L43 116 Q30 122 17 116 Z" />
      <path class="tyre" d="M4 22 h7 v22 h-7 z M49 22 h7 v22 h-7 z M4 104 h7 v22 h-7 z M49 104 h7 v22 h-7 z" />
    </svg>
  );
}
