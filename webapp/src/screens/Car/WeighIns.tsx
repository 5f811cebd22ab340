/** Every weigh-in, to the class's condition, newest first. */

import { say, stand } from "../../answers";
import { describe } from "../../errors";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { sayMoment } from "../../parts/words/moments";
import { to } from "../../route";

export function WeighIns() {
  const past = [...stand.value.history].reverse();
  return (
    <Section title="Weigh-ins" aside={<ButtonLink look="plain" label="Weigh the car" href={to("weigh-car")} />}>
      {!past.length && <p class="quiet">{describe("no_weigh_in").sentence}</p>}
      <div>
        {past.map((each) => (
          <Row
            key={each.weigh_in}
            name={sayMoment(each.at) || "Undated"}
            note={`${each.official ? "official" : "own scales"} · ${each.trim === "event" ? "event trim" : "road trim"}${each.reason ? ` · ${describe(each.reason.code, each.reason.data).sentence}` : ""}`}
            value={each.weight ? say(each.weight) : each.total ? say(each.total) : "—"}
            under={each.weight ? "that day, as the class weighs" : "as it stood"}
            href={to("weigh-in", each.weigh_in)}
          />
        ))}
      </div>
    </Section>
  );
}
