/** One of the two: which part, what the scale shows, and the step that follows. */
import { useMemo, useState } from "preact/hooks";
import { car, known, say } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { save } from "../../garage/write";
import { isOnCar } from "../../parts/controls/partOffers";
import { RecordPick } from "../../parts/controls/RecordPick";
import { type Doubt, Question } from "../../parts/weighing/Question";
import { ByKeypad } from "../../parts/weighPart/ByKeypad";
import { doubtOf, type Looks } from "../../parts/weighPart/doubt";
import type { PartForm } from "../../parts/weighPart/form";
import { rememberHabits } from "../../parts/weighPart/habits";
import { offersFrom } from "../../parts/weighPart/offers";
import { momentNow } from "../../parts/words/momentFields";
import { Ends } from "./Ends";
import { countOf, missingIn, nameIn, newName, type State, type SwapForm, swapChanges } from "./form";

type Props = {
  form: SwapForm;
  change: (patch: Partial<SwapForm>) => void;
  into: Rec<"job"> | null;
  isWeighed: (part: string) => boolean;
  onNext: () => void;
  onSaved: () => void;
  draft: string;
};
/** What follows once the reading is not in doubt: the other part, or the save. */
type Then = "next" | State;

export function Step({ form, change, into, isWeighed, onNext, onSaved, draft }: Props) {
  const [asked, setAsked] = useState<{ doubt: Doubt<Looks>; then: Then } | null>(null);
  const [naming, setNaming] = useState(false);
  const way = form.step;
  const one = form[way];
  const changeOne = (patch: Partial<PartForm>) => {
    setAsked(null);
    change({ [way]: { ...one, ...patch } });
  };
  const follow = async (now: SwapForm, then: Then) => {
    setAsked(null);
    if (then === "next") return onNext();
    const around = { car: car.value?.id ?? null, into, state: then, today: momentNow().slice(0, 10) };
    await save(swapChanges(now, around), [], draft);
    rememberHabits(now.on);
    onSaved();
  };
  const press = async (then: Then) => {
    const doubt = one.shown.trim() ? doubtOf(one, null) : null;
    if (doubt) setAsked({ doubt, then });
    else await follow(form, then);
  };
  const settle = async (patch: Partial<SwapForm>) => {
    change(patch);
    await follow({ ...form, ...patch }, asked!.then);
  };
  // While a name is typed the keypad would take the letters.
  const isReady = way === "on" || (!naming && (one.of.id !== null || one.of.text.trim() !== ""));
  return (
    <div class="weigh-part swap">
      <div
        class="stack swap-which"
        onFocusIn={(event) => setNaming(isField(event))}
        onFocusOut={() => setNaming(false)}
      >
        <Which form={form} onPick={(of) => changeOne({ of })} />
        <Before part={one.of.id} />
      </div>
      {isReady && <ByKeypad form={one} change={changeOne} />}
      {asked ? (
        <Question
          of={asked.doubt}
          onLikely={(looks) => settle({ [way]: { ...one, ...looks } })}
          onKeep={() => settle({ right: [...form.right, one.id] })}
          onBack={() => setAsked(null)}
        />
      ) : (
        <Ends
          way={way}
          into={into}
          says={way === "on" ? sayCounts(form) : null}
          missing={missingIn(form, way, isWeighed)}
          onPress={press}
          onBack={() => change({ step: "off" })}
        />
      )}
    </div>
  );
}

const isField = ({ target }: Event) => target instanceof HTMLInputElement;

/** Named only where it is more than one of each. */
function sayCounts(form: SwapForm): string | null {
  const [off, on] = [countOf(form, "off"), countOf(form, "on")];
  return off > 1 || on > 1 ? `${off} × ${nameIn(form, "off")} off, ${on} × ${nameIn(form, "on")} on.` : null;
}

function Which({ form, onPick }: { form: SwapForm; onPick: (of: PartForm["of"]) => void }) {
  const now = garage.value;
  const isOff = form.step === "off";
  const { of } = form[form.step];
  const offers = useMemo(() => {
    const here = now.of("part").filter(({ id }) => isOnCar(id) === isOff && id !== form.off.of.id);
    const twins = here.filter(({ values }) => !isOff && values.instead_of && values.instead_of === form.off.of.id);
    const others = here.filter((part) => !twins.includes(part));
    return [twins.toReversed(), others].flatMap((parts) => offersFrom(parts, [], now.of("weighing")));
  }, [now, isOff, form.off.of.id]);
  const twins = offers.filter(({ id }) => now.one("part", id)?.values.instead_of === form.off.of.id).length;
  return (
    <RecordPick
      label={isOff ? "What comes off?" : "What goes on?"}
      offers={offers}
      value={of}
      makes="a new part"
      hint={isOff ? "Tap one, or type a name." : `Left empty, it is called “${newName(form)}”.`}
      show={isOff ? 6 : of.text.trim() ? 4 : Math.min(twins, 2)}
      onValue={onPick}
    />
  );
}

/** What it weighed before: enough, where it is not on the scale now. */
function Before({ part }: { part: string | null }) {
  const found = known.value.of.get(part ?? "");
  if (found?.basis !== "weighed" || !found.mass) return null;
  return <p class="small quiet">{say(found.mass)} before: type nothing to keep that.</p>;
}
