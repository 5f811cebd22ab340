/** The form of one weighing: looks and keypad first, then what it is and the photo; save stays in reach. */
import { useMemo, useState } from "preact/hooks";
import { car } from "../../answers";
import { garage } from "../../garage/garage";
import { save } from "../../garage/write";
import { RecordPick } from "../../parts/controls/RecordPick";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useDraft } from "../../parts/forms/useDraft";
import { Shots, shotsOf } from "../../parts/photos/Shots";
import { isBlank } from "../../parts/weighing/blank";
import { foundRight } from "../../parts/weighing/foundRight";
import { type Doubt, Question } from "../../parts/weighing/Question";
import { Resumed } from "../../parts/weighing/Resumed";
import { ByKeypad } from "../../parts/weighPart/ByKeypad";
import { doubtOf, type Looks as Readings } from "../../parts/weighPart/doubt";
import { changesOf, type PartForm as Form, type Habits, missing, type OfPart } from "../../parts/weighPart/form";
import { rememberHabits } from "../../parts/weighPart/habits";
import { offersFrom } from "../../parts/weighPart/offers";
import { startAgain, startFor } from "../../parts/weighPart/start";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { More } from "./More";
import { SecondLook } from "./SecondLook";

/** `draft`: under what the form is kept beside others. */
type Props = {
  of: string | null;
  replaces: string | null;
  draft: string;
  habits: Habits;
  onSaved: (weighing: string) => void;
  onAnew: () => void;
};

export function PartForm({ of, replaces, draft, habits, onSaved, onAnew }: Props) {
  const start = useMemo(
    () => () => (replaces ? startAgain(replaces, habits) : startFor(of, habits)),
    [of, replaces, habits],
  );
  const isSaved = (kept: Form) => garage.value.byId.has(kept.id);
  const kept = `weigh-part:${[of, replaces, draft].join(":")}`;
  const { form, change: keepDraft, name, drop, resumed } = useDraft<Form>(kept, start, isSaved, habits);
  const [asked, setAsked] = useState<Doubt<Readings> | null>(null);
  if (!form) return null;
  const isPart = garage.value.byId.get(form.of.id ?? "")?.kind !== "driver";
  const change = (patch: Partial<Form>) => {
    setAsked(null);
    keepDraft(patch);
  };
  const keep = async (now: Form, isRight = false) => {
    const changes = changesOf(now, { car: car.value?.id ?? null, replaces, isPart });
    await save(isRight ? [...changes, foundRight(now.id)] : changes, shotsOf(now.id, now), name);
    rememberHabits(now);
    onSaved(now.id);
  };
  const ask = async (now: Form) => {
    const doubt = doubtOf(now, replaces);
    if (doubt) setAsked(doubt);
    else await keep(now);
  };
  /** Said to be another reading: one its display shows may still be odd; of what a slip explains no more is asked. */
  const correct = async (looks: Readings) => {
    const now = { ...form, ...looks };
    keepDraft(looks);
    if (asked?.sort === "display") return ask(now);
    await keep(now, doubtOf(now, replaces) !== null);
  };
  return (
    <div class="weigh-part">
      {resumed && !isBlank(form) && <Resumed what="weighing" form={form} onDrop={() => void drop().then(onAnew)} />}
      {replaces && <Replaced weighing={replaces} />}
      <ByKeypad form={form} change={change} />
      <div class="stack weigh-what-it-is">
        <WhatItIs form={form} change={change} />
        <div class="stack">
          <Shots form={form} change={change} />
        </div>
        <More form={form} isPart={isPart} change={change} />
        <SecondLook form={form} replaces={replaces} />
      </div>
      {asked ? (
        <Question of={asked} onLikely={correct} onKeep={() => keep(form, true)} onBack={() => setAsked(null)} />
      ) : (
        <SaveDock label="Save weighing" missing={missing(form, isPart)} onSave={() => ask(form)} />
      )}
    </div>
  );
}

function Replaced({ weighing }: { weighing: string }) {
  const before = garage.value.one("weighing", weighing);
  if (!before) return null;
  return (
    <p class="small quiet replaced">
      Takes the place of the reading {before.values.shown} of {sayMoment(momentOf(before))}.
    </p>
  );
}

function WhatItIs({ form, change }: OfPart) {
  const now = garage.value;
  const offers = useMemo(() => offersFrom(now.of("part"), now.of("driver"), now.of("weighing")), [now]);
  return (
    <RecordPick
      label="What is it?"
      offers={offers}
      value={form.of}
      makes={form.place === "yard" ? "a new part, seen at the yard" : "a new part"}
      hint={offers.length ? "Tap one, or type a name." : "A name of your own will do."}
      onValue={(picked) => change({ of: picked })}
    />
  );
}
