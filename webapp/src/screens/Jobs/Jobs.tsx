/** Jobs by stage, each with what it takes out of the car; the subtotal is of what is fitted. */

import { useState } from "preact/hooks";
import { account } from "../../account";
import { book, jobs, say, stages } from "../../answers";
import { jobsAsRead } from "../../core/ledger/asRead";
import { showHours, showMoney } from "../../core/numbers/shownLater";
import type { Rec } from "../../journal/types";
import { unsettledWords } from "../../parts/conflicts/words";
import { Choice } from "../../parts/controls/Choice";
import { Row } from "../../parts/figures/Row";
import { ButtonLink } from "../../parts/frame/Button";
import { Screen, Section } from "../../parts/frame/Screen";
import { optionsOf } from "../../parts/words/fieldWords";
import { stateWord } from "../../parts/words/jobStates";
import { currency } from "../../parts/words/money";
import { nameOf } from "../../parts/words/naming";
import { type Address, to } from "../../route";

const FILTERS = [{ value: "all", label: "All" }, ...optionsOf("job", "state")];

export function Jobs({ query }: Address) {
  const stage = query.get("stage");
  const [state, setState] = useState("all");
  const shown = jobs.value.filter((job) => state === "all" || (job.values.state ?? "idea") === state);
  const all = [
    ...stages.value.map((stage) => ({ id: stage.id, name: nameOf(stage) })),
    { id: null, name: "Without a stage" },
  ];
  const groups = stage === null ? all : all.filter((group) => (group.id ?? "") === stage);
  return (
    <Screen title="Jobs">
      <Choice label="Show jobs that are" hideLabel value={state} options={FILTERS} onValue={setState} />
      {groups.map((group) => (
        <Group
          key={group.id ?? ""}
          stage={group.id}
          name={group.name}
          jobs={shown.filter((job) => (job.values.stage ?? null) === group.id)}
        />
      ))}
      {stage !== null && <ButtonLink look="wide" label="Show all stages" href={to("jobs")} />}
      {!jobs.value.length && (
        <p class="quiet">
          A job is work on the car: what comes off, what goes on, what it cost and what it leaves behind.
        </p>
      )}
      <div class="dock">
        <ButtonLink look="main" label="New job" href={to("job", "new")} />
      </div>
    </Screen>
  );
}

function Group({ stage, name, jobs: list }: { stage: string | null; name: string; jobs: Rec<"job">[] }) {
  if (!list.length) return null;
  const fitted = account.value.by_stage.find((each) => each.stage === stage)?.states.fitted;
  const read = jobsAsRead(book.value, account.value, fitted?.effort.jobs ?? []);
  return (
    <Section title={name} aside={fitted && <span class="brass num">{say(fitted.mass.net, true)} fitted</span>}>
      {read && <p class="small quiet">As read: {read}</p>}
      <div>
        {list.map((job) => (
          <JobRow key={job.id} job={job} />
        ))}
      </div>
    </Section>
  );
}

/** Fitted against what the class says of it. */
function isBarred({ values: { state, ruling } }: Rec<"job">): boolean {
  return state === "fitted" && ruling === "not_allowed";
}

function Barred({ note }: { note: string }) {
  return (
    <>
      <strong>Not allowed by the class</strong> · {note}
    </>
  );
}

export function JobRow({ job }: { job: Rec<"job"> }) {
  const net = account.value.jobs.get(job.id);
  const effort = net?.total.effort;
  const { hours, money } = job.values;
  const cost =
    effort &&
    [hours != null && showHours(effort.hours), money != null && showMoney(effort.money, currency())]
      .filter(Boolean)
      .join(" · ");
  const note = [stateWord(job.values.state), job.values.trim === "event" && "event only", cost]
    .filter(Boolean)
    .join(" · ");
  const hasMass = !!net?.total.mass.lines.length;
  return (
    <Row
      name={job.values.name}
      note={isBarred(job) ? <Barred note={note} /> : note}
      value={hasMass ? say(net.total.mass.net, true) : ""}
      under={[net?.unweighed.length && `${net.unweighed.length} not weighed`, unsettledWords(job.id)]
        .filter(Boolean)
        .join(" · ")}
      href={to("job", job.id)}
    />
  );
}
