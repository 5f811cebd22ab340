/** What the jobs changed, and what the chosen ones would: weight by height, unsprung and rotating apart, and yaw inertia. */
import { say } from "../../answers";
import type { Balance } from "../../core/balance/balance";
import type { Change } from "../../core/balance/moved";
import { showPlain } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { describe } from "../../errors";
import { Facts } from "../../parts/figures/Facts";
import { Section } from "../../parts/frame/Screen";
import { notedOr, yawWords } from "./words";

export function Changes({ balance: { changes, jobs } }: { balance: Balance }) {
  return (
    <div class="two-columns">
      <Of title="Done: from start to now" change={changes.done} />
      {jobs.length > 0 && <Of title="Planned: from now to after" change={changes.planned} />}
    </div>
  );
}

function Of({ title, change }: { title: string; change: Change }) {
  const { net, above, below, unsprung, rotating, yaw, reasons } = change;
  const why = (name: string) => (reasons[name] ? describe(reasons[name].code, reasons[name].data) : null);
  const rows = [
    { name: "Weight", value: say(net, true) },
    ...(above && below
      ? [
          { name: "Above the beltline", value: say(above, true) },
          { name: "Below the beltline", value: say(below, true) },
        ]
      : []),
    { name: "Unsprung, of that", value: notedOr(unsprung), under: "wheels, brakes, hubs" },
    { name: "Rotating, of that", value: notedOr(rotating) },
    ...(yaw
      ? [{ name: "Yaw inertia", value: showPlain(yaw.value, "kg m²", expanded(yaw), true), under: yawWords(yaw) }]
      : []),
  ];
  return (
    <Section title={title}>
      <Facts rows={rows} />
      {["beltline", "yaw"]
        .map((name) => why(name))
        .map(
          (said, i) =>
            said && (
              <p key={i} class="small">
                <strong>{said.sentence}</strong> {said.do}
              </p>
            ),
        )}
    </Section>
  );
}
