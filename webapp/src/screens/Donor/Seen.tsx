/** A donor part noted before: the comparison, its readings and photos, and the decision. */
import { book, known } from "../../answers";
import { compare } from "../../core/ledger/compare";
import { type Change, newId, save } from "../../garage/write";
import type { Rec } from "../../journal/types";
import { Row } from "../../parts/figures/Row";
import { FieldOf } from "../../parts/forms/FieldOf";
import { FormDock } from "../../parts/forms/FormDock";
import { useForm } from "../../parts/forms/form";
import { SaveButton } from "../../parts/forms/SaveButton";
import { ButtonLink } from "../../parts/frame/Button";
import { Screen, Section } from "../../parts/frame/Screen";
import { RecordPhotos } from "../../parts/photos/RecordPhotos";
import { Readings } from "../../parts/weighing/Readings";
import { stateWord } from "../../parts/words/jobStates";
import { nameOf } from "../../parts/words/naming";
import { go, to } from "../../route";
import { Comparison } from "./Comparison";
import { priceTrouble } from "./price";
import { swapJob } from "./swap";

const DECISIONS = [
  { value: "yard", label: "Seen" },
  { value: "shelf", label: "Bought" },
  { value: "left", label: "Left there" },
];

const REMOVE = {
  label: "Delete this part",
  next: to("yard"),
};

export function Seen({ part }: { part: Rec<"part"> }) {
  const form = useForm("part", part.id);
  const found = compare(book.value, part.id, null, known.value);
  return (
    <Screen title={nameOf(part)} back={to("yard")}>
      <div class="stack">
        <Comparison found={found} />
        <FieldOf form={form} name="whereabouts" label="Decision" options={DECISIONS} />
        {found.instead_of && (
          <SwapJob
            part={part.id}
            old={found.instead_of}
            name={form.text("name")}
            count={found.count}
            where={form.values.whereabouts}
          />
        )}
        <Section title="Readings">
          <Readings of={part.id} back={to("donor", part.id)} />
        </Section>
        <RecordPhotos of={part.id} />
        <div class="pair">
          <FieldOf form={form} name="row" />
          <FieldOf form={form} name="asking" trouble={priceTrouble(form.text("asking"))} />
        </div>
        <FieldOf form={form} name="yard" />
        <FieldOf form={form} name="box" label="Box or shelf at home" />
        <FieldOf form={form} name="note" />
        <FormDock form={form} missing={priceTrouble(form.text("asking"))} remove={REMOVE} />
      </div>
    </Screen>
  );
}

type Swap = { part: string; old: string; name: string; count: number; where: Part["whereabouts"] };
type Part = Rec<"part">["values"];

/** Swapping it in is a job: the old part off, this one on; the one that is there already, if somebody wrote it down. */
function SwapJob(swap: Swap) {
  const job = swapJob(swap.part, swap.old);
  if (!job) return <MakeJob {...swap} />;
  const { name, state } = job.values;
  return <Row name={name} note={`The job that swaps them, ${stateWord(state)}`} href={to("job", job.id)} />;
}

/** One save does all that the button says. */
function MakeJob({ part, old, name, count, where }: Swap) {
  const isBought = where === "shelf" || where === "car";
  const make = async () => {
    const job = newId();
    const line = (way: string, which: string): Change => ({ kind: "job_part", set: { job, part: which, way, count } });
    await save([
      { kind: "job", record: job, set: { name: `${name} from the yard`, state: "idea", trim: "both" } },
      line("off", old),
      line("on", part),
      ...(isBought ? [] : [{ kind: "part", record: part, set: { whereabouts: "shelf" } }]),
    ]);
    go(to("job", job));
  };
  return (
    <>
      <SaveButton
        label={`${isBought ? "Make it a job" : "Bought, and make it a job"}: yours off, this on`}
        onSave={make}
      />
      <ButtonLink look="wide" label="Swap it now, both weighed" href={to("swap", { off: old, on: part })} />
    </>
  );
}
