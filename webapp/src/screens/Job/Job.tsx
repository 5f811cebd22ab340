/** One job: what it does to the weight, its parts off and on, its state, its cost, what the class says, what it leaves behind. */
import { account, car, interval, say, stages, stand } from "../../answers";
import { garage } from "../../garage/garage";
import { Choice, Pick, TextField } from "../../parts/controls/Field";
import { armOf } from "../../parts/figures/arm";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Steelyard } from "../../parts/figures/Steelyard";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { Screen, Section } from "../../parts/frame/Screen";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { STATES } from "../../parts/words/jobStates";
import { currency } from "../../parts/words/money";
import { to } from "../../route";
import { Cautions } from "./Cautions";
import { JobParts, partsOf } from "./JobParts";
import { LooseEnds } from "./LooseEnds";
import { WeighedAlready } from "./WeighedAlready";

const TRIMS = [
  { value: "both", label: "On the road too" },
  { value: "event", label: "Only at the event" },
];
const RULINGS = [
  { value: "allowed", label: "Allowed" },
  { value: "allowed_if", label: "Allowed if…" },
  { value: "not_allowed", label: "Not allowed" },
  { value: "unclear", label: "Unclear" },
];

export function Job({ id }: { id: string }) {
  const form = useForm("job", id, { state: "idea", trim: "both", car: car.value?.id ?? null });
  const words = [form.text("name"), ...partsOf(form.id).map((part) => String(part.values["name"]))].join(" ");
  return (
    <Screen title={form.isNew ? "New job" : form.text("name")} back={to("jobs")}>
      {!form.isNew && <Effect job={form.id} />}
      <div class="two-columns">
        <div class="stack">
          <TextField
            label="What is done"
            value={form.text("name")}
            onValue={(value) => form.set("name", value)}
            most={120}
          />
          <Cautions form={form} words={words} />
          <Choice
            label="State"
            value={form.text("state")}
            options={STATES}
            onValue={(value) => setState(form, value)}
          />
          {!form.isNew && <WeighedAlready job={form.id} />}
          {!form.isNew && <JobParts job={form.id} />}
          {!form.isNew && <LooseEnds job={form.id} />}
        </div>
        <div class="stack">
          <Details form={form} />
          {!form.isNew && (
            <Section title="Photos">
              <RecordPhotos of={form.id} />
            </Section>
          )}
        </div>
      </div>
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Say what is done, such as “Spare wheel out”."}
        label={form.isNew ? "Save, then add its parts" : "Save"}
        next={form.isNew ? (made) => to("job", made) : undefined}
        remove={{
          label: "Delete this job",
          warning: "Its parts and their weighings stay. The job no longer counts. Delete it?",
          next: to("jobs"),
        }}
      />
    </Screen>
  );
}

function setState(form: Form, state: string): void {
  form.set("state", state);
  if (state === "fitted" && !form.values["fitted_on"]) form.set("fitted_on", new Date().toISOString().slice(0, 10));
}

/** What the job takes out, in figures and on the arm. */
function Effect({ job }: { job: string }) {
  const net = account.value.jobs.get(job);
  if (!net?.total.mass.lines.length) return null;
  const { off, on, net: sum } = net.total.mass;
  const arm = armOf(stand.value);
  const moves = arm.now && !net.in_car ? arm.now.value + sum.value : null;
  return (
    <div class="stack">
      <MassFigure mass={sum} signed />
      <p class="small quiet">
        off {off.value ? say(off) : "nothing"} · on {on.value ? say(on) : "nothing"}
        {net.unweighed.length > 0 && ` · ${net.unweighed.length} not weighed, counted as nothing`}
      </p>
      <Steelyard
        {...arm}
        weighIns={[]}
        then={moves}
        small
        label={
          moves == null
            ? "Already in the car"
            : `Would take the car from ${say(stand.value.weight!)} by ${say(sum, true)}`
        }
      />
      {interval(sum).within > Math.abs(sum.value) && (
        <p class="small quiet">Too little to be sure of: a better scale, or weighing several at once, would tell.</p>
      )}
    </div>
  );
}

function Details({ form }: { form: Form }) {
  const stageOptions = stages.value.map((stage) => ({ value: stage.id, label: String(stage.values["name"]) }));
  const clauses = garage.value
    .of("clause")
    .map((clause) => String(clause.values["reference"] ?? ""))
    .filter(Boolean);
  return (
    <>
      <Pick
        label="Stage"
        value={form.text("stage")}
        options={stageOptions}
        none="Without a stage"
        onValue={(value) => form.set("stage", value)}
      />
      <Choice label="Trim" value={form.text("trim")} options={TRIMS} onValue={(value) => form.set("trim", value)} />
      <div class="pair">
        <TextField
          label="Hours"
          mode="decimal"
          value={form.text("hours")}
          onValue={(value) => form.set("hours", value)}
          trouble={decimalTrouble(form.text("hours"))}
        />
        <TextField
          label={["Money", currency()].filter(Boolean).join(", ")}
          mode="decimal"
          value={form.text("money")}
          onValue={(value) => form.set("money", value)}
          trouble={decimalTrouble(form.text("money"))}
        />
      </div>
      <TextField
        label="Fitted on"
        type="date"
        value={form.text("fitted_on").slice(0, 10)}
        onValue={(value) => form.set("fitted_on", value)}
      />
      <Pick
        label="What the class says"
        value={form.text("ruling")}
        options={RULINGS}
        none="Not looked up"
        onValue={(value) => form.set("ruling", value)}
      />
      <TextField
        label="Clause"
        value={form.text("clause")}
        onValue={(value) => form.set("clause", value)}
        list={clauses}
      />
      <TextField
        label="Notes"
        long
        value={form.text("note")}
        onValue={(value) => form.set("note", value)}
        most={4000}
      />
    </>
  );
}

function decimalTrouble(text: string): string | null {
  return !text || /^\d{1,9}(\.\d{1,2})?$/.test(text) ? null : "Type a plain number, such as 2.5.";
}
