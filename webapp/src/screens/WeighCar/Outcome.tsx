/** What the readings come to while they are typed: the total, where it rests, and the margin to the minimum. */
import { bookWith, car, known } from "../../answers";
import { isSignificant } from "../../core/standing/gap";
import { gapSentence, marginSentence } from "../../core/standing/sentences";
import { standing } from "../../core/standing/standing";
import { weighIn } from "../../core/wholeCar/weighIn";
import { massUnit } from "../../garage/units";
import { Facts } from "../../parts/figures/Facts";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Notice } from "../../parts/frame/Notice";
import { Warnings } from "../../parts/frame/Warnings";
import { conditionRows } from "../../parts/weighIn/conditionRows";
import { Shares } from "../../parts/weighIn/Shares";
import { type CarForm, weighInOf } from "./form";

/** What the form says beside the field itself. */
const SAID_AT_ITS_FIELD = new Set(["missing_field", "fuel_above_tank"]);

/** The half-typed weigh-in laid over the garage and worked out, as if it had been saved. */
function workedOut(form: CarForm, jobs: readonly string[]) {
  const record = { id: form.id, ...weighInOf(form, jobs), car: car.value?.id ?? null };
  const laid = bookWith({ weigh_ins: [record] }, form.trim);
  const whole = weighIn(laid, form.id, known.value);
  return whole?.loads.loads.total
    ? { whole, stand: standing(laid, known.value, null, form.id) }
    : { whole, stand: null };
}

export function Outcome({ form, jobs }: { form: CarForm; jobs: readonly string[] }) {
  const { whole, stand } = workedOut(form, jobs);
  const total = whole?.loads.loads.total;
  const margin = stand && marginSentence(stand, massUnit());
  const warnings = (whole?.warnings ?? []).filter(({ code }) => !SAID_AT_ITS_FIELD.has(code));
  return (
    <div class="outcome" aria-live="polite">
      <h2>{total ? "As it stands on the scales" : "Type what the scales show"}</h2>
      {total && <MassFigure mass={total} />}
      {whole && <Shares loads={whole.loads} />}
      {total && whole && <Facts rows={conditionRows(whole, form.driver_in ? form.driver : null).slice(1)} />}
      {margin && <p class={margin.code === "under" ? "under" : undefined}>{margin.text}.</p>}
      {total && <Warnings of={warnings} />}
      {stand?.gap?.second === form.id && isSignificant(stand.gap) && (
        <Notice sort="caution">
          <p class="small">
            <strong>{gapSentence(stand.gap, massUnit()).text}.</strong> Read the scales again while the car still stands
            on them.
          </p>
        </Notice>
      )}
    </div>
  );
}
