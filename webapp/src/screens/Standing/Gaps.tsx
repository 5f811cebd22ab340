/** From one weigh-in to the next: what the scales found beside the jobs between, also when it is nothing. */
import type { Gap } from "../../core/standing/gap";
import { gapLine } from "../../core/standing/sentences";
import { massUnit } from "../../garage/units";
import { movedUnweighed } from "../../parts/causes/Causes";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import { dayOf } from "./weighInName";

export function Gaps({ gaps }: { gaps: readonly Gap[] }) {
  return (
    <Section title="From weigh-in to weigh-in">
      <div>
        {[...gaps].reverse().map((gap) => (
          <Row
            key={gap.second}
            name={`${dayOf(gap.first)} to ${dayOf(gap.second)}`}
            note={`${gapLine(gap, massUnit()).text}.${gap.unweighed.length ? ` ${movedUnweighed(gap.unweighed)}` : ""}`}
            href={to("weigh-in", gap.second)}
          />
        ))}
      </div>
    </Section>
  );
}
