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
import { foundRight } from "../../parts/weighing/foundRight";
import { type Doubt, Question } from "../../parts/weighing/Question";
import { Resumed } from "../../parts/weighing/Resumed";
import { type Address, go, replace, to } from "../../route";
import { AsItStood } from "./AsItStood";
import { doubtOf, type Looks } from "./doubt";
import { type CarForm, type CarHabits, changesOf, emptyForm, formFrom, jobsIn, missing } from "./form";
import { displayUnit, habitsNow, rememberHabits } from "./habits";
import { JobsThen } from "./JobsThen";
import { Loads } from "./Loads";
import { Outcome } from "./Outcome";
import { PhotosAndNote } from "./PhotosAndNote";
import { Ready } from "./Ready";
import { toldOf } from "./told";
import "./WeighCar.css";

export function WeighCar({ query }: Address) {
  const replaces = query.get("replaces");
  const [habits, setHabits] = useState<CarHabits | null>(null);
  const scales = garage.value.of("scale"); // of a phone that has just joined they are still to come
  useEffect(() => void habitsNow().then(setHabits), [scales]);
  return (
    <Screen title={replaces ? "Weigh the car again" : "Weigh the car"} back="#/weigh">
      {habits && (
        <Form
          replaces={replaces}
          habits={habits}
          draft={query.get("draft") ?? ""}
          onAnew={() => go(to("weigh-car", { ...(replaces && { replaces }), draft: newId() }))}
        />
      )}
    </Screen>
  );
}

/** `draft`: under what the form is kept beside others. */
type Props = { replaces: string | null; habits: CarHabits; draft: string; onAnew: () => void };

function Form({ replaces, habits, draft, onAnew }: Props) {
  const start = useMemo(() => () => startOf(replaces, habits), [replaces, habits]);
  const [asked, setAsked] = useState<Doubt<Looks> | null>(null);
  const {
    form,
    change: keepDraft,
    name,
    drop,
    resumed,
  } = useDraft<CarForm>(`weigh-car:${replaces ?? ""}:${draft}`, start, isSaved, habits);
  if (!form) return null;
  const all = jobsOfCar.value.map((job) => job.id);
  const offered = new Set(jobsInCar(bookWith({}, form.trim)).map((job) => job.id));
  const jobs = jobsIn(form, offered, all);
  const change = (patch: Partial<CarForm>) => {
    setAsked(null);
    keepDraft(patch);
  };
  const keep = async (now: CarForm, isRight = false) => {
    const told = toldOf(now, jobs, replaces);
    const changes = changesOf(now, { car: car.value?.id ?? null, jobs, replaces, told });
    await save(isRight ? [...changes, foundRight(now.id)] : changes, shotsOf(now.id, now), name);
    rememberHabits(now);
    replace(to("weigh-in", now.id, { saved: "yes" }));
  };
  const ask = async (now: CarForm) => {
    const doubt = doubtOf(now, replaces);
    if (doubt) setAsked(doubt);
    else await keep(now);
  };
  const correct = async (looks: Looks) => {
    const now = { ...form, ...looks };
    keepDraft(looks);
    if (asked?.sort === "display") return ask(now);
    await keep(now, doubtOf(now, replaces) !== null);
  };
  return (
    <div class="weigh-car">
      {resumed && <Resumed what="weigh-in" form={form} onDrop={() => void drop().then(onAnew)} />}
      <div class="stack">
        <Ready form={form} change={change} />
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
      {asked ? (
        <Question of={asked} onLikely={correct} onKeep={() => keep(form, true)} onBack={() => setAsked(null)} />
      ) : (
        <SaveDock label="Save weigh-in" missing={missing(form, all.length)} onSave={() => ask(form)} />
      )}
    </div>
  );
}

const isSaved = (kept: CarForm) => garage.value.byId.has(kept.id);

function startOf(replaces: string | null, habits: CarHabits): CarForm {
  const before = garage.value.one("weigh_in", replaces)?.values;
  const unit = displayUnit(garage.value.one("scale", before?.scale)) ?? habits.unit;
  if (before) return formFrom(newId(), before, { ...habits, unit });
  const aboard = ballastNow(book.value)?.value;
  return { ...emptyForm(newId(), habits), ballast: aboard ? showMass(aboard, unitOf("mass")) : "" };
}
