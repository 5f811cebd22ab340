/**
 * Weigh the whole car: corners as they stand under it, axles or a total; what it comes to while typing; and the list of
 * jobs then in the car, confirmed and stored, so that later nobody has to remember what was in it.
 */
import { useEffect, useMemo, useState } from "preact/hooks";
import { book, bookWith, car, jobs as jobsOfCar } from "../../answers";
import { jobsInCar } from "../../core/ledger/net";
import { showMass } from "../../core/numbers/shown";
import { ballastNow } from "../../core/wholeCar/weighed";
import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import { newId, save } from "../../garage/write";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useDraft } from "../../parts/forms/useDraft";
import { Screen } from "../../parts/frame/Screen";
import { shotsOf } from "../../parts/photos/Shots";
import { type Address, replace, to } from "../../route";
import { AsItStood } from "./AsItStood";
import { type CarForm, type CarHabits, changesOf, emptyForm, formFrom, jobsIn, missing } from "./form";
import { displayUnit, habitsNow, rememberHabits } from "./habits";
import { JobsThen } from "./JobsThen";
import { Loads } from "./Loads";
import { Outcome } from "./Outcome";
import { PhotosAndNote } from "./PhotosAndNote";
import "./WeighCar.css";

export function WeighCar({ query }: Address) {
  const replaces = query.get("replaces");
  const [habits, setHabits] = useState<CarHabits | null>(null);
  useEffect(() => void habitsNow().then(setHabits), []);
  return (
    <Screen title={replaces ? "Weigh the car again" : "Weigh the car"} back="#/weigh">
      {habits && <Form replaces={replaces} habits={habits} />}
    </Screen>
  );
}

function Form({ replaces, habits }: { replaces: string | null; habits: CarHabits }) {
  const start = useMemo(() => () => startOf(replaces, habits), [replaces, habits]);
  const { form, change, name } = useDraft<CarForm>(`weigh-car:${replaces ?? ""}`, start, (kept) =>
    garage.value.byId.has(kept.id),
  );
  if (!form) return null;
  const all = jobsOfCar.value.map((job) => job.id);
  const offered = new Set(jobsInCar(bookWith({}, form.trim)).map((job) => job.id));
  const jobs = jobsIn(form, offered, all);
  const keep = async () => {
    await save(changesOf(form, { car: car.value?.id ?? null, jobs, replaces }), shotsOf(form.id, form), name);
    rememberHabits(form);
    replace(to("weigh-in", form.id, { saved: "yes" }));
  };
  return (
    <div class="weigh-car">
      <div class="stack">
        <Loads form={form} change={change} />
      </div>
      <div class="stack outcome-side">
        <Outcome form={form} jobs={jobs} />
      </div>
      <div class="stack">
        <AsItStood form={form} change={change} />
        <JobsThen form={form} change={change} offered={offered} />
        <PhotosAndNote form={form} change={change} />
      </div>
      <SaveDock label="Save weigh-in" missing={missing(form, all.length)} onSave={keep} />
    </div>
  );
}

function startOf(replaces: string | null, habits: CarHabits): CarForm {
  const before = garage.value.one("weigh_in", replaces)?.values;
  const unit = displayUnit(garage.value.one("scale", before?.scale)) ?? habits.unit;
  if (before) return formFrom(newId(), before, { ...habits, unit });
  const aboard = ballastNow(book.value)?.value;
  return { ...emptyForm(newId(), habits), ballast: aboard ? showMass(aboard, unitOf("mass")) : "" };
}
