/** The steps that look at the garage: how the car stood, how far to raise it, and the two numbers a lift gives. */

import { book, known, say } from "../../answers";
import { choicesOf } from "../../core/balance/axleLift";
import { outlook } from "../../core/balance/lift";
import { warned } from "../../core/garage/records";
import { isWarned } from "../../core/wholeCar/condition";
import { loadsOf } from "../../core/wholeCar/weighIn";
import { describe } from "../../errors";
import { unitOf } from "../../garage/units";
import { Choice } from "../../parts/controls/Choice";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Facts } from "../../parts/figures/Facts";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { ButtonLink } from "../../parts/frame/Button";
import { Warnings } from "../../parts/frame/Warnings";
import { asItStood } from "../../parts/weighIn/typedRows";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { readingOf } from "../../parts/words/reading";
import { to } from "../../route";
import { LiveHeight } from "./Answer";
import { riseTrouble } from "./form";
import type { StepProps } from "./steps";
import { Tilt } from "./Tilt";
import { GROUNDED, length } from "./words";

export function LevelCar({ weighIn }: StepProps) {
  const record = book.value.weigh_ins.get(weighIn.id);
  const loads = record && loadsOf(book.value, record, known.value).loads;
  return (
    <>
      <p>
        The lift is compared with the weigh-in of {sayMoment(momentOf(weighIn))}. Everything in the car must be as it
        was then.
      </p>
      <Facts
        rows={[
          { name: "Front axle", value: loads?.front ? say(loads.front) : "not known" },
          { name: "Rear axle", value: loads?.rear ? say(loads.rear) : "not known" },
          ...asItStood(weighIn),
        ]}
      />
      <p>
        <strong>Now, before anything is raised:</strong> measure from the ground to the middle of both wheels of the
        axle that will go up, left and right, and write it down. The rise is worked out from it.
      </p>
      {weighIn.values.driver_in && <Warnings of={[warned("lift_driver_in")]} />}
      <Unready weighIn={weighIn} />
      <ButtonLink look="wide" label="Weigh it level again first" href={to("weigh-car")} />
    </>
  );
}

/** Why this car or weigh-in cannot tell a height yet, with where to mend it. */
function Unready({ weighIn }: Pick<StepProps, "weighIn">) {
  const ahead = outlook(book.value, weighIn.id, "rear", null, known.value);
  if (!isWarned(ahead)) return null;
  return (
    <>
      <Warnings of={[ahead]} />
      {ahead.code !== "axles_unknown" && <ButtonLink look="wide" label="The car's dimensions" href={to("car-sheet")} />}
    </>
  );
}

export function TankThen({ weighIn }: StepProps) {
  const tank = book.value.car?.tank_size;
  return (
    <>
      <p>{describe("lift_fuel_moves").sentence}</p>
      <p>
        <strong>Full to the brim or quite empty</strong>, and the same at the level weighing. Drain outdoors into a
        proper can, away from sparks.
      </p>
      <Facts
        rows={[
          { name: "Fuel at the level weigh-in", value: weighIn.values.fuel ?? "not noted" },
          ...(tank ? [{ name: "The tank holds", value: tank.reads }] : []),
        ]}
      />
    </>
  );
}

export function HowFar({ form, change, weighIn }: StepProps) {
  const ahead = outlook(book.value, weighIn.id, form.raised, form.scale, known.value);
  return (
    <>
      <FieldOf form={filled("lift", form, change)} name="raised" hideLabel />
      {isWarned(ahead) ? <Warnings of={[ahead]} /> : <Rises ahead={ahead} />}
      <Tilt raised={form.raised} rise={isWarned(ahead) ? 0.4 : Math.max(ahead.enough ?? 0.4, 0.4)} />
      <p>
        Raise the {form.raised} axle on both sides alike, on stands under its wheels or hubs, the{" "}
        {GROUNDED[form.raised]} wheels on their pads. Never higher than lift and stands are made for.
      </p>
    </>
  );
}

type Ahead = Exclude<ReturnType<typeof outlook>, { code: unknown }>;

/** What rises would tell on these scales: the first that tells, and some higher ones. */
function Rises({ ahead }: { ahead: Ahead }) {
  const least = ahead.enough ?? ahead.least;
  if (least === null) {
    return <Warnings of={[warned("lift_hopeless")]} />;
  }
  return (
    <>
      <p>
        <strong>Raise it by at least {length(least)}.</strong> Higher is surer:
      </p>
      <Facts
        rows={choicesOf(ahead).map(([rise, within]) => ({ name: length(rise), value: `height ± ${length(within)}` }))}
      />
    </>
  );
}

export function Measured({ form, change, weighIn }: StepProps) {
  const lift = filled("lift", form, change);
  return (
    <>
      <p>
        From the ground to the <strong>middle of the raised wheel</strong>: now, less what it was when the car stood
        level. That difference is the rise, not the height of the lift.
      </p>
      <p>
        Do it left and right. They agree within 5 mm, or the car leans: mend that first, then take the middle of both.
      </p>
      <FieldOf form={lift} name="height" label={`The ${form.raised} axle rose by`} needed trouble={riseTrouble(form)} />
      <FieldOf form={lift} name="height_within" />
      <Foreseen form={form} weighIn={weighIn} />
    </>
  );
}

/** What this rise will tell, before the pads are read. */
function Foreseen({ form, weighIn }: Pick<StepProps, "form" | "weighIn">) {
  const reading = readingOf("length", form.height, unitOf("length"), true);
  const ahead = outlook(book.value, weighIn.id, form.raised, form.scale, known.value);
  if (reading.state !== "read" || riseTrouble(form) || isWarned(ahead)) return null;
  const advised = ahead.enough ?? ahead.least;
  const next = ahead.rises.findLast(([rise]) => rise <= reading.value);
  if (!next || ahead.least === null || next[0] < ahead.least) {
    return (
      <p>
        <strong>{describe("lift_too_small").sentence}</strong>{" "}
        {advised !== null && `Raise it by at least ${length(advised)}.`}
      </p>
    );
  }
  return <p>It will tell the height to about ± {length(next[1])}.</p>;
}

export function OnTheGround({ form, change, weighIn }: StepProps) {
  const grounded = GROUNDED[form.raised];
  const look = (label: string, field: "left" | "right") => (
    <QuantityField
      kind="mass"
      label={label}
      value={form[field]}
      unit={form.unit}
      needed
      onValue={(text) => change({ [field]: text })}
    />
  );
  return (
    <>
      <p>Step back and let it settle. Nobody touches the car while the display is read.</p>
      {weighIn.values.layout === "corners" && (
        <Choice
          label="What is typed"
          hideLabel
          value={form.pads ? "pads" : "sum"}
          options={PADS}
          onValue={(which) => change({ pads: which === "pads" })}
        />
      )}
      {form.pads ? (
        <div class="pair">
          {look(`Left ${grounded}`, "left")}
          {look(`Right ${grounded}`, "right")}
        </div>
      ) : (
        look(`The whole ${grounded} axle`, "left")
      )}
      <LiveHeight form={form} weighIn={weighIn} />
    </>
  );
}

const PADS = [
  { value: "pads", label: "Each pad" },
  { value: "sum", label: "Their sum" },
] as const;
