/** The scales at hand, each with how far it is trusted and why. */

import { known } from "../../answers";
import { garage } from "../../garage/garage";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Screen } from "../../parts/frame/Screen";
import { trustWords } from "../../parts/weighing/trust";
import { choiceWord } from "../../parts/words/fieldWords";
import { to } from "../../route";

export function Scales() {
  return (
    <Screen title="Scales" back={to("more")}>
      <p class="quiet">
        Put something of known mass on each scale and note what it shows: that sharpens everything the scale has
        weighed.
      </p>
      <div>
        {garage.value.of("scale").map((scale) => (
          <ScaleRow key={scale.id} scale={scale} />
        ))}
      </div>
      <ButtonLink look="wide" label="Add a scale" href={to("scale", "new")} />
    </Screen>
  );
}

function ScaleRow({ scale }: { scale: Rec<"scale"> }) {
  const trust = trustWords(known.value.scales.get(scale.id));
  const { name, kind, division } = scale.values;
  const steps = division ? `steps of ${division}` : "steps not noted";
  return (
    <Row
      name={name!}
      note={`${choiceWord("scale", "kind", kind)} · ${steps}`}
      value={trust.shown}
      under={trust.from}
      href={to("scale", scale.id)}
    />
  );
}
