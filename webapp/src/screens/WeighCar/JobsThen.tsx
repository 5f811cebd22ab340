/** The jobs in the car as it stands on the scales: offered from what is fitted, ticked otherwise, confirmed. */
import { jobs } from "../../answers";
import type { Rec } from "../../garage/garage";
import { own } from "../../own";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Tick } from "../../parts/controls/Field";
import { Section } from "../../parts/frame/Screen";
import type { OfCar } from "./form";

export function JobsThen({ form, change, offered }: OfCar & { offered: ReadonlySet<string> }) {
  if (!jobs.value.length) return null;
  const isIn = (job: Rec<"job">) => own(form.ticks, job.id) ?? offered.has(job.id);
  const tick = (job: Rec<"job">) => (
    <Tick
      key={job.id}
      value={isIn(job)}
      onValue={(value) => change({ ticks: { ...form.ticks, [job.id]: value }, confirmed: false })}
      label={<JobLine job={job} trim={form.trim} />}
    />
  );
  const expected = jobs.value.filter((job) => offered.has(job.id) || own(form.ticks, job.id));
  const others = jobs.value.filter((job) => !expected.includes(job));
  return (
    <Section
      title="Jobs in the car right now"
      aside={
        <span class="small quiet num">
          {jobs.value.filter(isIn).length} of {jobs.value.length}
        </span>
      }
    >
      <p class="small quiet">Later changes are counted from exactly this list. Untick what is not in the car today.</p>
      <div class="jobs-then">{expected.map(tick)}</div>
      {others.length > 0 && (
        <Disclosure title={`Not fitted for ${form.trim} trim (${others.length})`}>
          <div class="jobs-then">{others.map(tick)}</div>
        </Disclosure>
      )}
      <div data-needed={form.confirmed ? undefined : ""}>
        <Tick
          value={form.confirmed}
          onValue={(confirmed) => change({ confirmed })}
          label={<strong>The list is right: I looked.</strong>}
        />
      </div>
    </Section>
  );
}

function JobLine({ job, trim }: { job: Rec<"job">; trim: string }) {
  const { name, state, trim: only } = job.values;
  const notes = [
    state !== "fitted" && `not marked fitted (${state ?? "idea"})`,
    only === "event" && trim === "road" && "event trim only",
  ].filter(Boolean);
  return (
    <>
      {name}
      {notes.length > 0 && <span class="small quiet"> · {notes.join(", ")}</span>}
    </>
  );
}
