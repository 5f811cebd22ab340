/** Which jobs "after" counts: the chosen ones, unless others are ticked here. Ticking changes nothing but this page. */

import { book } from "../../answers";
import type { Balance } from "../../core/balance/balance";
import { inTrim, jobsInCar, stateOf } from "../../core/ledger/net";
import { Tick } from "../../parts/controls/Field";
import { Button } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { stateWord } from "../../parts/words/jobStates";

type Props = { balance: Balance; jobs: readonly string[] | null; onJobs: (ids: string[] | null) => void };

export function AfterJobs({ balance, jobs, onJobs }: Props) {
  const garage = book.value;
  const inCar = new Set(jobsInCar(garage).map((job) => job.id));
  const open = [...garage.jobs.values()].filter((job) => !inCar.has(job.id) && inTrim(job, garage.trim));
  const ticked = new Set(balance.jobs);
  const turn = (id: string, on: boolean) =>
    onJobs([...balance.jobs.filter((each) => each !== id), ...(on ? [id] : [])]);
  return (
    <Section
      title="After which jobs"
      aside={jobs && <Button look="plain" label="The chosen ones" onClick={() => onJobs(null)} />}
    >
      {!open.length && <p class="quiet">Every job written down is in the car.</p>}
      {open.map((job) => (
        <Tick
          key={job.id}
          label={
            <>
              {job.name} <span class="small quiet">{stateWord(stateOf(job))}</span>
            </>
          }
          value={ticked.has(job.id)}
          onValue={(on) => turn(job.id, on)}
        />
      ))}
    </Section>
  );
}
