/** Puts what was just weighed into a job, off the car or onto it, without leaving the scale. */

import { useState } from "preact/hooks";
import { car, jobs } from "../../answers";
import { garage } from "../../garage/garage";
import type { Change } from "../../garage/write";
import { newId, save } from "../../garage/write";
import { type Offer, type Picked, RecordPick } from "../../parts/controls/RecordPick";
import { FieldOf } from "../../parts/forms/FieldOf";
import { useFilled } from "../../parts/forms/form";
import { SaveButton } from "../../parts/forms/SaveButton";
import { Button } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { bookedWords } from "../../parts/words/booked";
import { nameOf, refName } from "../../parts/words/naming";
import { to } from "../../route";

type Added = { id: string; name: string };

export function AddToJob({ part }: { part: string }) {
  const [open, setOpen] = useState(false);
  const [added, setAdded] = useState<Added | null>(null);
  if (added)
    return (
      <Notice sort="saved">
        <p>
          Added on this phone. <a href={to("job", added.id)}>Open {added.name}</a>
        </p>
      </Notice>
    );
  return open ? <WhichJob part={part} onAdded={setAdded} /> : <Closed part={part} onOpen={() => setOpen(true)} />;
}

function WhichJob({ part, onAdded }: { part: string; onAdded: (job: Added) => void }) {
  const [job, setJob] = useState<Picked>({ id: null, text: "" });
  const line = useFilled("job_part", { part, way: "off" });
  const add = async () => {
    const id = job.id ?? newId();
    await save([...(job.id ? [] : [newJob(id, job.text)]), { kind: "job_part", set: { job: id, ...line.values } }]);
    onAdded({ id, name: job.text.trim() });
  };
  const hint = "Tap one, or type a name.";
  const booked = bookedWords(part, line.values.way);
  const named = job.id !== null || job.text.trim() !== "";
  return (
    <div class="stack">
      <RecordPick label="Which job" offers={jobOffers()} value={job} onValue={setJob} makes="a new job" hint={hint} />
      <FieldOf form={line} name="way" />
      {booked && (
        <p>
          <strong>{booked}</strong>
        </p>
      )}
      <SaveButton label={booked ? "Add it again" : "Add"} onSave={add} disabled={!named} />
    </div>
  );
}

/** The newest first: most often it is the job one is at. */
function jobOffers(): Offer[] {
  return jobs.value.map((job) => ({ id: job.id, name: nameOf(job), note: job.values.state ?? "" })).toReversed();
}

function Closed({ part, onOpen }: { part: string; onOpen: () => void }) {
  const names = garage.value
    .of("job_part")
    .filter((line) => line.values.part === part)
    .map((line) => refName(line.values.job));
  return (
    <>
      <Button look="wide" label="Add to a job" onClick={onOpen} />
      {names.length > 0 && <p class="small quiet">Already in: {names.join(", ")}.</p>}
    </>
  );
}

function newJob(id: string, name: string): Change {
  const set = { name: name.trim(), state: "idea", ...(car.value && { car: car.value.id }) };
  return { kind: "job", record: id, set, base: [] };
}
