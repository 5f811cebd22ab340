/** The form of one weighing: looks and keypad first, then what it is and the photo; save stays in reach. */
import { useMemo, useState } from "preact/hooks";
import { car } from "../../answers";
import { garage } from "../../garage/garage";
import { KEYPAD_UNITS, takesFractions, unitWord } from "../../garage/units";
import { newId, save } from "../../garage/write";
import { Keypad } from "../../parts/controls/Keypad";
import { RecordPick } from "../../parts/controls/RecordPick";
import { type Key, press, unitWritten } from "../../parts/controls/typing";
import { SaveDock } from "../../parts/forms/SaveDock";
import { useDraft } from "../../parts/forms/useDraft";
import { Shots, shotsOf } from "../../parts/photos/Shots";
import { showsFractions } from "../../parts/weighing/drawnDisplays";
import { foundRight } from "../../parts/weighing/foundRight";
import { methodRow } from "../../parts/weighing/methods";
import { type Doubt, Question } from "../../parts/weighing/Question";
import { momentOf, sayMoment } from "../../parts/words/moments";
import { nameOf } from "../../parts/words/naming";
import { doubtOf, type Looks as Readings } from "./doubt";
import { changesOf, emptyForm, type PartForm as Form, frozen, type Habits, missing, type OfPart } from "./form";
import { How } from "./How";
import { rememberHabits } from "./habits";
import { type LookName, Looks } from "./Looks";
import { More } from "./More";
import { offersFrom } from "./offers";
import { Net, SecondLook } from "./SecondLook";

type Props = { of: string | null; replaces: string | null; habits: Habits; onSaved: (weighing: string) => void };

export function PartForm({ of, replaces, habits, onSaved }: Props) {
  const start = useMemo(() => () => startOf(of, replaces, habits), [of, replaces, habits]);
  const isSaved = (kept: Form) => garage.value.byId.has(kept.id);
  const { form, change: keepDraft, name } = useDraft<Form>(`weigh-part:${of ?? ""}:${replaces ?? ""}`, start, isSaved);
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

/** A new reading of a known weighing starts from the same scale and the same way of weighing. */
function startOf(of: string | null, replaces: string | null, habits: Habits): Form {
  const before = garage.value.one("weighing", replaces)?.values;
  const id = of ?? before?.of ?? null;
  const what = garage.value.byId.get(id ?? "");
  const form = emptyForm({ weighing: newId(), part: newId() }, { id, text: what ? nameOf(what) : "" }, habits);
  if (!before) return form;
  const { unit = form.unit } = garage.value.one("scale", before.scale)?.values ?? {};
  return { ...form, method: before.method ?? "direct", scale: before.scale ?? null, unit };
}

function ByKeypad({ form, change }: OfPart) {
  const [active, setActive] = useState<LookName>("shown");
  const { second } = methodRow(form.method);
  const now = second ? active : "shown";
  const counts = now === "second" && second === "pieces";
  const inForce = counts ? "" : (unitWritten(form[now]) ?? unitWord(form.unit));
  const onKey = (key: Key) => change(afterKey(form, now, key));
  return (
    <div class="weigh-looks">
      <Looks form={form} active={now} onActive={setActive} onText={(name, text) => change({ [name]: text })} />
      <Keypad
        units={counts ? [] : KEYPAD_UNITS.mass}
        unit={inForce}
        fractions={!counts && needsFractions(form)}
        onKey={onKey}
      />
      <Net form={form} />
      <How form={form} change={change} />
    </div>
  );
}

/** As the scale's own display needs them; of one whose steps nobody noted, by its unit. */
function needsFractions({ scale, unit }: Form): boolean {
  const display = garage.value.one("scale", scale)?.values;
  return display?.division && display.unit === unit ? showsFractions(display) : takesFractions(unitWord(unit));
}

/** What was typed before in another unit keeps that unit. */
function afterKey(form: Form, now: LookName, key: Key): Partial<Form> {
  const unit = unitAfter(form.unit, key);
  return { ...(unit.unit ? frozen(form) : {}), [now]: press(form[now], key).slice(0, 64), ...unit };
}

/** A unit key also says what bare numbers are from now on; on a scale that shows pounds and ounces both stay. */
function unitAfter(unit: string, key: Key): Partial<Form> {
  return key.sort === "unit" && !unit.split(" ").includes(key.text) ? { unit: key.text } : {};
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
