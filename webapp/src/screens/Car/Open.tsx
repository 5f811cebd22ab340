/** What is still open: weights nobody knows, weights that rest on a guess, loose ends, and records that are on this phone only. */
import { account } from "../../account";
import { jobs } from "../../answers";
import { showPercent } from "../../core/numbers/shown";
import { showHours, showMoney } from "../../core/numbers/shownLater";
import { garage } from "../../garage/garage";
import { disputes } from "../../garage/unsettled";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { currency } from "../../parts/words/money";
import { nameOf } from "../../parts/words/naming";
import { to } from "../../route";
import { sync } from "../../sync/state";

export function Open() {
  const { shares, spent, brought } = account.value;
  const unweighed = account.value.unweighed.length;
  const unsettled = disputes.value.length + garage.value.aside.length;
  const claimed = 1 - (shares.weighed ?? 0);
  const done = new Set(jobs.value.filter((job) => job.values.state === "fitted").map((job) => job.id));
  const ends = garage.value.of("loose_end").filter((end) => done.has(end.values.job ?? "") && !end.values.closed);
  const barred = jobs.value.filter((job) => done.has(job.id) && job.values.ruling === "not_allowed");
  const moving = new Set(garage.value.of("job_part").map((line) => line.values.part));
  const loose = garage.value
    .of("part")
    .filter((part) => part.values.whereabouts !== "yard" && part.values.whereabouts !== "left" && !moving.has(part.id));
  return (
    <div>
      <Section title="Still open">
        <div>
          {barred.map((job) => (
            <Row key={job.id} name={nameOf(job)} note="Fitted, and not allowed by the class" href={to("job", job.id)} />
          ))}
          <Row
            name="Moved without a weight"
            note="They count as nothing until weighed"
            value={String(unweighed)}
            href={to("parts", { show: "unweighed" })}
          />
          <Row
            name="Rests on a guess or a quote"
            note="Share of the kilograms moved"
            value={spent.jobs.length ? showPercent(claimed) : "—"}
            href={to("parts", { show: "claimed" })}
          />
          <Row
            name="Loose ends"
            note="Plugs, wires, holes, bolts"
            value={String(ends.length)}
            href={to("loose-ends")}
          />
          {loose.length > 0 && (
            <Row
              name="In no job yet"
              note="Parts noted or weighed; a job takes them off or puts them on"
              value={String(loose.length)}
              href={to("parts", { show: "jobless" })}
            />
          )}
          {unsettled > 0 && (
            <Row
              name="To settle"
              note="Phones disagree, or a record does not count"
              value={String(unsettled)}
              href={to("records")}
            />
          )}
          <Row
            name="On this phone only"
            note={sync.value.words[0] ?? ""}
            value={String(sync.value.waiting)}
            href={to("records")}
          />
        </div>
      </Section>
      <Section title="Spent so far">
        <div>
          <Row name="Money" value={showMoney(spent.money, currency())} href={to("jobs")} />
          <Row
            name="Brought by sold parts"
            value={showMoney(brought.money, currency())}
            href={to("parts", { show: "sold" })}
          />
          <Row name="Hours" value={showHours(spent.hours)} href={to("jobs")} />
        </div>
      </Section>
    </div>
  );
}
