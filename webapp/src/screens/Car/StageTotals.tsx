/** The stages with what each has taken out so far, and what the chosen jobs would still take. */
import { account } from "../../account";
import { book, say, stages } from "../../answers";
import { jobsAsRead } from "../../core/ledger/asRead";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";

export function StageTotals() {
  const names = new Map(stages.value.map((stage) => [stage.id, stage.values.name]));
  const rows = account.value.by_stage.filter((each) =>
    Object.values(each.states).some((total) => total.effort.jobs.length),
  );
  const sum = account.value.now.mass.net;
  return (
    <Section title="Stages" aside={<span class="brass num">{say(sum, true)}</span>}>
      {!rows.length && (
        <p class="quiet">
          No jobs yet. <a href={to("job", "new")}>Write down the first</a>.
        </p>
      )}
      <div>
        {rows.map(({ stage, states }) => {
          const fitted = states.fitted!;
          const chosen = states.chosen!;
          const read = jobsAsRead(book.value, account.value, fitted.effort.jobs);
          const note = [
            `${fitted.effort.jobs.length} fitted`,
            chosen.effort.jobs.length && `${chosen.effort.jobs.length} chosen, ${say(chosen.mass.net, true)}`,
            read && `as read ${read}`,
          ]
            .filter(Boolean)
            .join(" · ");
          return (
            <Row
              key={stage ?? ""}
              name={stage ? (names.get(stage) ?? "A stage not here yet") : "Without a stage"}
              note={note}
              value={fitted.mass.lines.length ? say(fitted.mass.net, true) : "—"}
              href={to("jobs", { stage: stage ?? "" })}
            />
          );
        })}
      </div>
    </Section>
  );
}
