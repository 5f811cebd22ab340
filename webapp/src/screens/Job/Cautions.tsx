/** The cautions that apply to a job: those its words point at and those the driver ticked. */
import { TABLE } from "../../journal/kinds";
import { Tick } from "../../parts/controls/Field";
import type { Form } from "../../parts/forms/form";
import { Notice } from "../../parts/frame/Notice";
import { CAUTIONS, type Hazard, hazardsIn } from "../../parts/words/cautions";

export function Cautions({ form, words }: { form: Form<"job">; words: string }) {
  const ticked = form.values.hazards ?? [];
  const apply = TABLE.job.fields.hazards.of.filter(
    (hazard) => ticked.includes(hazard) || hazardsIn(words).includes(hazard),
  );
  const toggle = (hazard: Hazard, on: boolean) =>
    form.set("hazards", on ? [...ticked, hazard] : ticked.filter((each) => each !== hazard));
  return (
    <>
      {apply.map((hazard) => (
        <Notice key={hazard} sort="caution">
          <p>
            <strong>Care: {hazard}.</strong> {CAUTIONS[hazard]}
          </p>
        </Notice>
      ))}
      <details>
        <summary class="button plain">What this job touches</summary>
        {TABLE.job.fields.hazards.of.map((hazard) => (
          <Tick key={hazard} label={hazard} value={ticked.includes(hazard)} onValue={(on) => toggle(hazard, on)} />
        ))}
      </details>
    </>
  );
}
