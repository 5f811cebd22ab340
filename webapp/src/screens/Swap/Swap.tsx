/**
 * A swap in one go: what comes off, then what goes on, each with its reading; one save writes all of it.
 *
 * The second part's keypad is there the moment the first is done, on the same scale and weighed the same way.
 */
import { useMemo, useState } from "preact/hooks";
import { known } from "../../answers";
import { garage } from "../../garage/garage";
import { newId } from "../../garage/write";
import { useDraft } from "../../parts/forms/useDraft";
import { NotHere } from "../../parts/frame/NotHere";
import { Screen } from "../../parts/frame/Screen";
import { Resumed } from "../../parts/weighing/Resumed";
import type { Habits } from "../../parts/weighPart/form";
import { useHabits } from "../../parts/weighPart/habits";
import { type Address, go, to } from "../../route";
import { emptySwap, isUntouched, type SwapForm, second } from "./form";
import { Step } from "./Step";
import { Swapped } from "./Swapped";

/** Opened with the parts that are known already (`off`, `on`) and the job it belongs to (`job`). */
export function Swap({ query }: Address) {
  const habits = useHabits();
  const [saved, setSaved] = useState<SwapForm | null>(null);
  const [job, on] = [query.get("job"), query.get("on")];
  if (job && !garage.value.one("job", job)) return <NotHere what="A job" back={to("jobs")} />;
  const back = job ? to("job", job) : on ? to("donor", on) : to("weigh");
  return (
    <Screen title={saved ? "Swapped" : "A swap"} back={back}>
      {saved ? (
        <Swapped form={saved} job={job ?? saved.id} />
      ) : (
        habits && <Both query={query} habits={habits} onSaved={setSaved} />
      )}
    </Screen>
  );
}

type Props = { query: URLSearchParams; habits: Habits; onSaved: (form: SwapForm) => void };

function Both({ query, habits, onSaved }: Props) {
  const [job, off, on] = [query.get("job"), query.get("off"), query.get("on")];
  const draft = query.get("draft");
  const start = useMemo(() => () => emptySwap(off, on, habits), [off, on, habits]);
  const isSaved = (kept: SwapForm) => garage.value.byId.has(kept.off.id) || garage.value.byId.has(kept.id);
  const { form, change, name, drop, resumed } = useDraft<SwapForm>(
    `swap:${[job, off, on, draft].join(":")}`,
    start,
    isSaved,
    habits,
  );
  if (!form) return null;
  const isWeighed = (part: string) => known.value.of.get(part)?.basis === "weighed";
  const anew = () => go(to("swap", { ...Object.fromEntries(query), draft: newId() }));
  return (
    <>
      {resumed && !isUntouched(form) && <Resumed what="swap" form={form} onDrop={() => void drop().then(anew)} />}
      <Step
        key={form.step}
        form={form}
        change={change}
        into={garage.value.one("job", job) ?? null}
        isWeighed={isWeighed}
        onNext={() => change({ step: "on", on: second(form) })}
        onSaved={() => onSaved(form)}
        draft={name}
      />
    </>
  );
}
