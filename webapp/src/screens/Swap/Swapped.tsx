/** After the save: what the swap does to the weight, and the way to its job. */
import { account } from "../../account";
import { MassFigure } from "../../parts/figures/MassFigure";
import { ButtonLink } from "../../parts/frame/Button";
import { Loaded } from "../../parts/frame/Loaded";
import { Notice } from "../../parts/frame/Notice";
import { ReadAgain } from "../../parts/repeats/ReadAgain";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import { nameIn, partIn, type SwapForm } from "./form";

export function Swapped({ form, job }: { form: SwapForm; job: string }) {
  const net = account.value.jobs.get(job);
  return (
    <div class="stack">
      <Notice sort="saved">
        <p>
          <strong>Saved on this phone.</strong>
        </p>
      </Notice>
      <div>
        <h2>{refName(job)}</h2>
        {net && <MassFigure mass={net.total.mass.net} signed />}
        <p class="quiet">
          {nameIn(form, "off")} off, {nameIn(form, "on")} on
        </p>
      </div>
      {([form.off, form.on] as const).map((one) => (
        <ReadAgain key={one.id} of={one.id} how={`${refName(partIn(one))} off and on`} what={refName(partIn(one))} />
      ))}
      <ButtonLink look="main" label="Open the job" href={to("job", job)} />
      <ButtonLink look="wide" label="Weigh something else" href={to("weigh")} />
      <Loaded
        load={async () => (await import("../../parts/drawing/WhereOnCar")).WhereOnCar}
        draw={(WhereOnCar) => <WhereOnCar parts={[partIn(form.off), partIn(form.on)]} />}
      />
    </div>
  );
}
