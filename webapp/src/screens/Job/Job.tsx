/** One job: what it does to the weight, its parts off and on, its state, its cost, what the class says, what it leaves behind. */
import { useState } from "preact/hooks";
import { account } from "../../account";
import { book, car, interval, say, stages, stand } from "../../answers";
import { asRead } from "../../core/ledger/asRead";
import { garage } from "../../garage/garage";
import { Unsettled } from "../../parts/conflicts/Unsettled";
import { armOf } from "../../parts/figures/arm";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Steelyard } from "../../parts/figures/Steelyard";
import { FieldOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { type Form, useForm } from "../../parts/forms/form";
import { Screen } from "../../parts/frame/Screen";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { optionsFrom } from "../../parts/words/fieldWords";
import { currency } from "../../parts/words/money";
import { to } from "../../route";
import { Cautions } from "./Cautions";
import { DeleteListed } from "./DeleteListed";
import { JobParts } from "./JobParts";
import { Late, NoMoreIn } from "./Late";
import { LooseEnds } from "./LooseEnds";
import { listedBy } from "./late";
import { WeighedAlready } from "./WeighedAlready";

const SHOWN = ["name", "state", "stage", "trim", "hours", "money", "fitted_on", "ruling", "clause", "note"];

export function Job({ id }: { id: string }) {
  const form = useForm("job", id, { car: car.value?.id ?? null });
  const isListed = listedBy(form.id).length > 0;
  return (
    <Screen title={form.isNew ? "New job" : form.text("name")} back={to("jobs")}>
      {!form.isNew && <Unsettled of={form.id} shown={SHOWN} />}
      {!form.isNew && <Effect job={form.id} />}
      <div class="two-columns">
        <div class="stack">
          <FieldOf form={form} name="name" />
          <Cautions form={form} />
          {!form.isNew && <StateOf form={form} />}
          {!form.isNew && <WeighedAlready job={form.id} />}
          {!form.isNew && <JobParts job={form.id} />}
          {!form.isNew && <LooseEnds job={form.id} />}
        </div>
        <div class="stack">
          {!form.isNew && <Details form={form} />}
          {!form.isNew && <RecordPhotos of={form.id} />}
        </div>
      </div>
      <FormDock
        form={form}
        missing={form.text("name").trim() ? null : "Say what is done, such as “Spare wheel out”."}
        label="Go on to its parts"
        next={(made) => to("job", made)}
        remove={isListed ? undefined : { label: "Delete this job", next: to("jobs") }}
      />
      {isListed && <DeleteListed job={form.id} />}
    </Screen>
  );
}

type OfForm = { form: Form<"job"> };
type State = OfForm["form"]["values"]["state"];

/** Its state and since when, and what weigh-ins say otherwise. */
function StateOf({ form }: OfForm) {
  const { state } = form.values;
  const [isOut, setOut] = useState(false);
  const set = (next: State) => {
    setOut(state === "fitted" && next !== "fitted");
    setState(form, next);
  };
  return (
    <>
      <FieldOf form={form} name="state" onValue={(state) => set(state as State)} />
      {isOut && <NoMoreIn job={form.id} onDone={() => setOut(false)} />}
      {(state === "fitted" || state === "undone") && <FieldOf form={form} name="fitted_on" />}
      <Late job={form.id} />
    </>
  );
}

function setState(form: Form<"job">, state: State): void {
  form.set("state", state);
  if (state === "fitted" && !form.values.fitted_on) form.set("fitted_on", new Date().toISOString().slice(0, 10));
}

/** What the job takes out, in figures and on the arm. */
function Effect({ job }: { job: string }) {
  const net = account.value.jobs.get(job);
  if (!net?.total.mass.lines.length) return null;
  const { off, on, net: sum } = net.total.mass;
  const read = asRead(book.value, net.lines);
  const arm = armOf(stand.value);
  const moves = arm.now && !net.in_car ? arm.now.value + sum.value : null;
  return (
    <div class="stack">
      <MassFigure mass={sum} signed />
      <p class="small quiet">
        off {off.value ? say(off) : "nothing"} · on {on.value ? say(on) : "nothing"}
        {read && ` · as read ${read}`}
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

function Details({ form }: OfForm) {
  const clauses = garage.value.of("clause").flatMap(({ values }) => values.reference || []);
  return (
    <>
      <FieldOf form={form} name="stage" options={optionsFrom(stages.value)} />
      <FieldOf form={form} name="trim" />
      <div class="pair">
        <FieldOf form={form} name="hours" />
        <FieldOf form={form} name="money" label={["Money", currency()].filter(Boolean).join(", ")} />
      </div>
      <FieldOf form={form} name="ruling" />
      <FieldOf form={form} name="clause" list={clauses} />
      <FieldOf form={form} name="note" />
    </>
  );
}
