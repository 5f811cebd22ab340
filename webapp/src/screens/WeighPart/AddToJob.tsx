/** Puts what was just weighed into a job, off the car or onto it, without leaving the scale. */
import { useState } from "preact/hooks";
import { car, jobs } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { type Change, newId, save } from "../../garage/write";
import { Choice } from "../../parts/controls/Field";
import { type Offer, type Picked, RecordPick } from "../../parts/controls/RecordPick";
import { useSaving } from "../../parts/forms/saving";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";

type Way = "off" | "on";
const WAYS: { value: Way; label: string }[] = [
  { value: "off", label: "Comes off" },
  { value: "on", label: "Goes on" },
];

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
  const [way, setWay] = useState<Way>("off");
  const saving = useSaving();
  const add = () =>
    saving.run(async () => {
      const id = job.id ?? newId();
      await save([...(job.id ? [] : [newJob(id, job.text)]), { kind: "job_part", set: { job: id, part, way } }]);
      onAdded({ id, name: job.text.trim() });
    });
  const hint = "Tap one, or type a name.";
  const named = job.id !== null || job.text.trim() !== "";
  return (
    <div class="stack">
      <RecordPick label="Which job" offers={jobOffers()} value={job} onValue={setJob} makes="a new job" hint={hint} />
      <Choice label="In this job it" value={way} options={WAYS} onValue={setWay} />
      <TroubleNotice trouble={saving.trouble} />
      <button type="button" class="button wide" disabled={saving.busy || !named} onClick={add}>
        Add
      </button>
    </div>
  );
}

/** The newest first: most often it is the job one is at. */
function jobOffers(): Offer[] {
  const offer = ({ id, values }: Rec) => ({
    id,
    name: String(values["name"] ?? ""),
    note: String(values["state"] ?? ""),
  });
  return jobs.value.map(offer).toReversed();
}

function Closed({ part, onOpen }: { part: string; onOpen: () => void }) {
  const names = garage.value
    .of("job_part")
    .filter((line) => line.values["part"] === part)
    .map((line) => refName(line.values["job"]));
  return (
    <>
      <button type="button" class="button wide" onClick={onOpen}>
        Add to a job
      </button>
      {names.length > 0 && <p class="small quiet">Already in: {names.join(", ")}.</p>}
    </>
  );
}

function newJob(id: string, name: string): Change {
  return {
    kind: "job",
    record: id,
    set: { name: name.trim(), state: "idea", ...(car.value ? { car: car.value.id } : {}) },
    base: [],
  };
}
