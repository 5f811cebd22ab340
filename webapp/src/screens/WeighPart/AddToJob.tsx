/** Puts what was just weighed into a job, off the car or onto it, without leaving the scale. */
import { useState } from "preact/hooks";
import { car, jobs } from "../../answers";
import { garage } from "../../journal/garage";
import { newId, save, type Change } from "../../journal/write";
import { Choice } from "../../parts/Field";
import { refName } from "../../parts/naming";
import { Notice, TroubleNotice } from "../../parts/Notice";
import { RecordPick, type Picked } from "../../parts/RecordPick";
import { useSaving } from "../../parts/SaveDock";
import { to } from "../../route";

type Way = "off" | "on";
const WAYS: { value: Way; label: string }[] = [{ value: "off", label: "Comes off" }, { value: "on", label: "Goes on" }];

export function AddToJob({ part }: { part: string }) {
  const [open, setOpen] = useState(false);
  const [job, setJob] = useState<Picked>({ id: null, text: "" });
  const [way, setWay] = useState<Way>("off");
  const [done, setDone] = useState<string | null>(null);
  const saving = useSaving();
  const add = () => saving.run(async () => {
    const id = job.id ?? newId();
    await save([...(job.id ? [] : [newJob(id, job.text)]), { kind: "job_part", set: { job: id, part, way } }]);
    setDone(id);
  });
  if (done) return <Notice sort="saved"><p>Added on this phone. <a href={to("job", done)}>Open {job.text}</a></p></Notice>;
  if (!open) return <Closed part={part} onOpen={() => setOpen(true)} />;
  const offers = jobs.value.toReversed().map((each) => ({ id: each.id, name: String(each.values["name"] ?? ""), note: String(each.values["state"] ?? "") }));
  return (
    <div class="stack">
      <RecordPick label="Which job" offers={offers} value={job} onValue={setJob} makes="a new job" hint="Tap one, or type a name." />
      <Choice label="In this job it" value={way} options={WAYS} onValue={setWay} />
      <TroubleNotice trouble={saving.trouble} />
      <button type="button" class="button wide" disabled={saving.busy || !(job.id || job.text.trim())} onClick={add}>Add</button>
    </div>
  );
}

function Closed({ part, onOpen }: { part: string; onOpen: () => void }) {
  const names = garage.value.of("job_part").filter((line) => line.values["part"] === part).map((line) => refName(line.values["job"]));
  return (
    <>
      <button type="button" class="button wide" onClick={onOpen}>Add to a job</button>
      {names.length > 0 && <p class="small quiet">Moved already by: {names.join(", ")}.</p>}
    </>
  );
}

function newJob(id: string, name: string): Change {
  return { kind: "job", record: id, set: { name: name.trim(), state: "idea", ...(car.value ? { car: car.value.id } : {}) }, base: [] };
}
