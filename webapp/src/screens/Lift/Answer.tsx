/** What the lift tells while it is typed, how good that is, what a higher lift would bring; then photo, note and save. */
import { bookWith, known } from "../../answers";
import { higherThan, type LiftedCar } from "../../core/balance/axleLift";
import { liftOf, outlook } from "../../core/balance/lift";
import { warned } from "../../core/garage/records";
import { isWarned } from "../../core/wholeCar/condition";
import { describe } from "../../errors";
import { Disclosure } from "../../parts/controls/Disclosure";
import { LengthFigure } from "../../parts/figures/MassFigure";
import { FieldOf } from "../../parts/forms/FieldOf";
import { filled } from "../../parts/forms/form";
import { Warnings } from "../../parts/frame/Warnings";
import { Shots } from "../../parts/photos/Shots";
import { type LiftForm, liftOfForm, riseTrouble } from "./form";
import type { StepProps } from "./steps";
import { length } from "./words";

/** The half-typed lift laid over the garage and worked out, as if it had been saved. */
function workedOut(
  form: LiftForm,
  weighIn: string,
): { found: LiftedCar | null; higher: readonly [number, number] | null } {
  const laid = bookWith({ lifts: [{ id: form.id, ...liftOfForm(form, weighIn) }] });
  const record = laid.lifts.get(form.id);
  if (!record) return { found: null, higher: null };
  const ahead = outlook(laid, weighIn, form.raised, form.scale, known.value);
  const higher = isWarned(ahead) ? null : higherThan(ahead, record.height.value);
  return { found: liftOf(laid, record, known.value), higher };
}

export function LiveHeight({ form, weighIn }: Pick<StepProps, "form" | "weighIn">) {
  const { found, higher } = workedOut(form, weighIn.id);
  const unlikely = riseTrouble(form);
  return (
    <div class="lift-answer" aria-live="polite">
      {!found && !unlikely && <p class="quiet">The height stands here once both numbers are typed.</p>}
      {unlikely && (
        <p>
          <strong>{unlikely}</strong>
        </p>
      )}
      {found && !unlikely && <Told found={found} />}
      {found?.height && !unlikely && higher && (
        <p class="small quiet">
          Raised by {length(higher[0])} it would be known to ± {length(higher[1])}.
        </p>
      )}
    </div>
  );
}

/** The height or why there is none, whether it is good enough, and what was noticed. */
export function Told({ found }: { found: LiftedCar }) {
  const isUnlikely = found.warnings.some(({ code }) => code === "lift_unlikely");
  const isWide = found.warnings.some(({ code }) => code === "lift_wide");
  if (!found.height) {
    return (
      <>
        {found.reason && <Warnings of={[found.reason]} />}
        {found.reason?.code === "lift_too_small" &&
          ((found.enough ?? found.least) ? (
            <p>
              <strong>Raise it by {length((found.enough ?? found.least)!)}, if that is safe.</strong>
            </p>
          ) : (
            <Warnings of={[warned("lift_hopeless")]} />
          ))}
      </>
    );
  }
  return (
    <>
      <p class="small quiet">Centre of gravity above the ground, car level</p>
      <LengthFigure length={found.height} />
      <Warnings of={found.warnings.filter(({ code }) => code !== "lift_wide")} />
      {!isUnlikely && (
        <p>
          {isWide ? describe("lift_wide").sentence : "Good enough to work with."}
          {isWide && found.enough !== null && ` A rise of ${length(found.enough)} would do well.`}
        </p>
      )}
    </>
  );
}

export function Answer({ form, change, weighIn }: StepProps) {
  const lift = filled("lift", form, change);
  return (
    <>
      <LiveHeight form={form} weighIn={weighIn} />
      <p>
        Lower the car slowly, chocks last. Then weigh it level once more: when an axle shows more than two steps
        otherwise than before, something moved. Mend that and lift again; twice the same is worth more than once higher.
      </p>
      <Shots form={form} change={change} />
      <Disclosure title="When, note">
        <FieldOf form={lift} name="at" />
        <FieldOf form={lift} name="note" />
      </Disclosure>
    </>
  );
}
