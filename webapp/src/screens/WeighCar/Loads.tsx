/** What the scales show, each reading in its place: the car seen from above, left and right as the driver sits. */
import { LOOKS, type Reading } from "../../core/wholeCar/weighIn";
import { garage } from "../../garage/garage";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { scaleOptions, suits } from "../../parts/weighing/scalesFor";
import type { Layout, OfCar } from "./form";
import { displayUnit } from "./habits";

export function Loads({ form, change }: OfCar) {
  const weighIn = filled("weigh_in", form, change);
  const setScale = (id: string) => {
    const unit = displayUnit(garage.value.one("scale", id)) ?? form.unit;
    change({ scale: id || null, unit });
  };
  const look = (name: Reading) => <FieldOf key={name} form={weighIn} name={name} unit={form.unit} needed />;
  return (
    <>
      <FieldOf
        form={weighIn}
        name="layout"
        hideLabel
        onValue={(layout) => change({ layout: layout as Layout, ...keptFor(form.scale, layout as Layout) })}
      />
      <FieldOf form={weighIn} name="scale" options={scaleOptions(form.layout, form.scale)} onValue={setScale} />
      {form.layout === "corners" ? <FromAbove look={look} /> : <div class="pair">{LOOKS[form.layout].map(look)}</div>}
    </>
  );
}

/** A scale that does not give this layout is chosen no more: corners are not read on a weighbridge. */
function keptFor(scale: string | null, layout: Layout): Partial<OfCar["form"]> {
  const chosen = garage.value.one("scale", scale);
  return chosen && !suits(chosen, layout) ? { scale: null } : {};
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
