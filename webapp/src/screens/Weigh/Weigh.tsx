/** Weigh what? A part or the whole car; below, what was left half done and what was weighed last. */
import { useEffect, useState } from "preact/hooks";
import "./Weigh.css";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Icon } from "../../parts/frame/Icon";
import { Screen, Section } from "../../parts/frame/Screen";
import { type HalfDone, halfDone } from "../../parts/weighing/halfDone";
import { to } from "../../route";
import { LastLooks } from "./LastLooks";

export function Weigh() {
  return (
    <Screen title="Weigh">
      <div class="weigh-what">
        <a class="weigh-door" href={to("weigh-part")}>
          <Icon name="weigh" />
          <span>A part</span>
        </a>
        <a class="weigh-door" href={to("weigh-car")}>
          <Icon name="car" />
          <span>The whole car</span>
        </a>
      </div>
      <ButtonLink look="wide" label="A swap: one part off, another on" href={to("swap")} />
      <LeftHalfDone />
      <LastLooks />
    </Screen>
  );
}

function LeftHalfDone() {
  const [left, setLeft] = useState<HalfDone[]>([]);
  useEffect(() => void halfDone().then(setLeft, () => undefined), []);
  if (!left.length) return null;
  return (
    <Section title="Left half done">
      {left.map(({ name, words, href }) => (
        <Row key={name} name={words} note="Kept on this phone. Tap to go on." href={href} />
      ))}
    </Section>
  );
}
