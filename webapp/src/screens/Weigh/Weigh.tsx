/** Weigh what? A part or the whole car; below, what was left half done and what was weighed last. */
import { useState } from "preact/hooks";
import "./Weigh.css";
import { garage } from "../../garage/garage";
import { newId } from "../../garage/write";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Icon } from "../../parts/frame/Icon";
import { Screen, Section } from "../../parts/frame/Screen";
import { LeftHalfDone } from "../../parts/weighing/LeftHalfDone";
import { offersFrom } from "../../parts/weighPart/offers";
import { to } from "../../route";
import { LastLooks } from "./LastLooks";

export function Weigh() {
  const [draft] = useState(newId); // what is weighed now never begins with what was typed then
  return (
    <Screen title="Weigh">
      <div class="weigh-what">
        <a class="weigh-door" href={to("weigh-part", { draft })}>
          <Icon name="weigh" />
          <span>A part</span>
        </a>
        <a class="weigh-door" href={to("weigh-car", { draft })}>
          <Icon name="car" />
          <span>The whole car</span>
        </a>
      </div>
      <ButtonLink look="wide" label="A swap: one part off, another on" href={to("swap", { draft })} />
      <LeftHalfDone />
      <Next />
      <LastLooks />
    </Screen>
  );
}

const OFFERED = 3;

/** The parts likeliest to be weighed now, at one tap each. */
function Next() {
  const now = garage.value;
  const offers = offersFrom(now.of("part"), [], now.of("weighing")).slice(0, OFFERED);
  if (!offers.length) return null;
  return (
    <Section title="Next on the scale">
      <div>
        {offers.map(({ id, name, note }) => (
          <Row key={id} name={name} note={note} value="Weigh it" href={to("weigh-part", id, { back: to("weigh") })} />
        ))}
      </div>
    </Section>
  );
}
