/** Ways to where the weight is: each answer is a screen of its own, fetched when it is opened. */
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";

export function WhereWeight() {
  return (
    <Section title="Where the weight is">
      <div>
        <Row name="Balance" note="Front and left, the centre, every weight at its place" href={to("balance")} />
        <Row name="Ballast" note="How much, and where" href={to("ballast")} />
        <Row name="Fuel over a run" note="Weight and balance lap by lap, and what to start with" href={to("fuel")} />
      </div>
    </Section>
  );
}
