/** What stood on each wheel, where that can be known: the day it was weighed, and never invented for any other state. */

import { say } from "../../answers";
import type { Balance, Corner } from "../../core/balance/balance";
import { describe } from "../../errors";
import { ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";

const CORNERS: readonly [Corner, string][] = [
  ["lf", "Left front"],
  ["rf", "Right front"],
  ["lr", "Left rear"],
  ["rr", "Right rear"],
];

export function Corners({ balance: { states, weigh_in } }: { balance: Balance }) {
  const { weighed, now } = states;
  if (!weighed) return null;
  const known = CORNERS.filter(([corner]) => weighed.loads[corner]);
  const reason = (now ?? weighed).reasons.corners ?? weighed.reasons.corners;
  const said = reason && describe(reason.code, reason.data);
  return (
    <Section
      title="On each wheel, that day"
      aside={weigh_in && <ButtonLink look="plain" label="That weigh-in" href={to("weigh-in", weigh_in)} />}
    >
      {known.length > 0 && (
        <dl class="corners">
          {known.map(([corner, name]) => (
            <div key={corner}>
              <dt>{name}</dt>
              <dd class="num">{say(weighed.loads[corner]!)}</dd>
            </div>
          ))}
        </dl>
      )}
      {known.length > 0 && <p class="small quiet">Brought to the weight that all weigh-ins say.</p>}
      {said && (
        <p>
          {known.length > 0 && "As the car is now: "}
          <strong>{said.sentence}</strong> {said.do}
        </p>
      )}
    </Section>
  );
}
