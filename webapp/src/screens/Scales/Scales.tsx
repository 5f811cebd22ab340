/** The scales at hand, each with how far it is trusted and why. */
import { known } from "../../answers";
import { garage } from "../../journal/garage";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { Screen } from "../../parts/frame/Screen";
import { trustWords } from "../../parts/weighing/trust";
import { scaleKindWord } from "../../parts/words/scaleKinds";
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
      <a class="button wide" href={to("scale", "new")}>
        Add a scale
      </a>
    </Screen>
  );
}

function ScaleRow({ scale }: { scale: Rec }) {
  const trust = trustWords(known.value.scales.get(scale.id));
  const steps = scale.values["division"] ? `steps of ${String(scale.values["division"])}` : "steps not noted";
  return (
    <Row
      name={String(scale.values["name"])}
      note={`${scaleKindWord(String(scale.values["kind"]))} · ${steps}`}
      value={trust.shown}
      under={trust.from}
      href={to("scale", scale.id)}
    />
  );
}
