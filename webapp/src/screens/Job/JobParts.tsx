/** The parts of a job, off and on, each with how its mass is known; adding one takes a known part or a name. */

import { useState } from "preact/hooks";
import { account } from "../../account";
import { car, say } from "../../answers";
import { garage } from "../../garage/garage";
import { unitOf } from "../../garage/units";
import type { Change } from "../../garage/write";
import { newId, save } from "../../garage/write";
import type { Values } from "../../journal/kinds";
import type { Rec } from "../../journal/types";
import { partOffers } from "../../parts/controls/partOffers";
import { type Picked, RecordPick } from "../../parts/controls/RecordPick";
import { Row } from "../../parts/figures/Row";
import { FieldOf } from "../../parts/forms/FieldOf";
import { useFilled } from "../../parts/forms/form";
import { SaveDock } from "../../parts/forms/SaveDock";
import { Button, ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { useSaving } from "../../parts/frame/saving";
import { basisWord } from "../../parts/words/basis";
import { bookedWords } from "../../parts/words/booked";
import { typedOf } from "../../parts/words/reading";
import { go, to } from "../../route";
import { alsoFor, dayOf, listedBy } from "./late";

type Way = NonNullable<Values<"job_part">["way"]>;

const linesOf = (job: string): Rec<"job_part">[] =>
  garage.value.of("job_part").filter((line) => line.values.job === job);

/** The part records of a job. */
export function partsOf(job: string): Rec<"part">[] {
  return linesOf(job).flatMap((line) => garage.value.one("part", line.values.part) ?? []);
}

export function JobParts({ job }: { job: string }) {
  return (
    <>
      <Side job={job} way="off" title="Comes off" />
      <Side job={job} way="on" title="Goes on" />
      <ButtonLink look="wide" label="Swap a part, both weighed" href={to("swap", { job })} />
    </>
  );
}

function Side({ job, way, title }: { job: string; way: Way; title: string }) {
  const [adding, setAdding] = useState(false);
  const lines = linesOf(job).filter((line) => line.values.way === way);
  return (
    <Section title={title}>
      <div>
        {lines.map((line) => (
          <Line key={line.id} line={line} />
        ))}
      </div>
      {adding ? (
        <AddPart job={job} way={way} onDone={() => setAdding(false)} />
      ) : (
        <Button
          look="wide"
          label={way === "off" ? "Add a part that comes off" : "Add a part that goes on"}
          onClick={() => setAdding(true)}
        />
      )}
    </Section>
  );
}

function Line({ line }: { line: Rec<"job_part"> }) {
  const [open, setOpen] = useState(false);
  const part = garage.value.one("part", line.values.part);
  const worked = account.value.jobs.get(line.values.job ?? "")?.lines.find((each) => each.id === line.id);
  const count = worked?.count ?? 1;
  const name = `${count > 1 ? `${count} × ` : ""}${part?.values.name ?? "A part not here yet"}`;
  return (
    <>
      <Row
        name={name}
        note={basisWord(worked?.basis)}
        value={worked?.mass ? say(worked.mass, true) : "—"}
        onTap={() => setOpen(!open)}
      />
      {open && part && <LineActions line={line} part={part} count={count} />}
    </>
  );
}

/** A job for what came later than a weigh-in that lists this one; when it was done is not known. */
function followUp(job: string): Change["set"] {
  const { car = null, name = "", state = null, stage = null, trim = null } = garage.value.one("job", job)?.values ?? {};
  return { car, name: `${name}, later`, state, stage, trim };
}

type OfLine = { line: Rec<"job_part">; part: Rec<"part">; count: number };

function LineActions({ line, part, count }: OfLine) {
  const saving = useSaving();
  const set = (values: Change["set"]) =>
    saving.run(() => save([{ kind: "job_part", record: line.id, base: line.heads, set: values }]));
  return (
    <div class="stack notice">
      <div class="pair">
        <ButtonLink label="Weigh it" href={to("weigh-part", part.id, { back: to("job", line.values.job!) })} />
        <ButtonLink label="Its readings" href={to("part", part.id)} />
      </div>
      <ButtonLink look="wide" label="Work it out from sheet" href={to("sheet", part.id)} />
      <div class="spread">
        <span>Pieces</span>
        <span class="spread">
          <Button
            label="−"
            aria-label="One fewer"
            disabled={count <= 1}
            onClick={() => void set({ count: count - 1 })}
          />
          <strong class="num">{count}</strong>
          <Button label="+" aria-label="One more" onClick={() => void set({ count: count + 1 })} />
        </span>
      </div>
      <Button look="plain" label="Take it off this job" onClick={() => void set({ deleted: true })} />
    </div>
  );
}

function AddPart({ job, way, onDone }: { job: string; way: Way; onDone: () => void }) {
  const [picked, setPicked] = useState<Picked>({ id: null, text: "" });
  const form = useFilled("part", { claim_basis: "guessed" });
  const claim = form.text("claim").trim();
  const isNew = picked.id === null;
  const listed = listedBy(job)[0];
  const add = async (into: string, before: Change[] = []) => {
    const part = picked.id ?? newId();
    const claimed = claim ? { ...form.values, claim: typedOf("mass", claim, unitOf("mass")) } : {};
    const set = { name: picked.text.trim(), car: car.value?.id ?? null, ...claimed };
    const made: Change[] = isNew ? [{ kind: "part", record: part, set }] : [];
    await save([...before, ...made, { kind: "job_part", set: { job: into, part, way } }]);
    onDone();
  };
  const addLater = async () => {
    const follow = newId();
    await add(follow, [{ kind: "job", record: follow, set: followUp(job) }]);
    go(to("job", follow));
  };
  const missing = isNew && !picked.text.trim() ? "Choose a part or name a new one." : null;
  const booked = bookedWords(picked.id, way);
  return (
    <div class="stack notice">
      <RecordPick label="Which part" offers={partOffers()} value={picked} onValue={setPicked} makes="a new part" />
      {isNew && picked.text.trim() && (
        <>
          <FieldOf form={form} name="claim" hint="Leave it empty if you have no idea." />
          {claim && <FieldOf form={form} name="claim_basis" />}
        </>
      )}
      {booked && (
        <p>
          <strong>{booked}</strong>
        </p>
      )}
      {listed && (
        <p>
          <strong>Was it in the car on {dayOf(listed)}?</strong> The weigh-in of that day lists this job.
          {alsoFor(listedBy(job))}
        </p>
      )}
      <SaveDock
        label={listed ? "Yes: add it to this job" : booked ? "Add it again" : "Add it"}
        onSave={() => add(job)}
        missing={missing}
      />
      {listed && <SaveDock label="No: into a follow-up job" onSave={addLater} missing={missing} />}
      <ButtonLink look="wide" label="Work one out from sheet" href={to("sheet", "new", { job, way })} />
      <Button look="plain" label="Not now" onClick={onDone} />
    </div>
  );
}
