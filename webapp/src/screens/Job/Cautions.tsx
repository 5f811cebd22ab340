/** The cautions of a job: what its words and parts point at is shown at once, and the person says whether it fits. */
import { TABLE } from "../../journal/kinds";
import { Tick } from "../../parts/controls/Field";
import type { Form } from "../../parts/forms/form";
import { Button } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { CAUTIONS, type Hazard } from "../../parts/words/cautions";
import { hazardsOf } from "./hazards";
import { partsOf } from "./JobParts";

const ALL = TABLE.job.fields.hazards.of;

export function Cautions({ form }: { form: Form<"job"> }) {
  const confirmed = form.values.hazards ?? [];
  const refused = form.values.not_hazards ?? [];
  const proposed = hazardsOf(
    form.text("name"),
    partsOf(form.id).map((part) => part.values),
  );
  const applies = (hazard: Hazard) =>
    confirmed.includes(hazard) || (proposed.includes(hazard) && !refused.includes(hazard));
  const say = (hazard: Hazard, fits: boolean) => {
    const isIn = (list: Hazard[], wanted: boolean) =>
      ALL.filter((each) => (each === hazard ? wanted : list.includes(each)));
    if (confirmed.includes(hazard) !== fits) form.set("hazards", isIn(confirmed, fits));
    if (refused.includes(hazard) === fits) form.set("not_hazards", isIn(refused, !fits));
  };
  return (
    <>
      {ALL.filter(applies).map((hazard) => (
        <Notice key={hazard} sort="caution">
          <p>
            <strong>Care: {hazard}.</strong> {CAUTIONS[hazard]}
          </p>
          {!confirmed.includes(hazard) && (
            <div class="pair">
              <Button label="It fits" aria-label={`It fits: ${hazard}`} onClick={() => say(hazard, true)} />
              <Button label="Not this job" aria-label={`Not this job: ${hazard}`} onClick={() => say(hazard, false)} />
            </div>
          )}
        </Notice>
      ))}
      <details>
        <summary class="button plain">What this job touches</summary>
        {ALL.map((hazard) => (
          <Tick key={hazard} label={hazard} value={applies(hazard)} onValue={(on) => say(hazard, on)} />
        ))}
      </details>
    </>
  );
}
