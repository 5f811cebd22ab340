/** Every lap in a line: fuel left, weight, and the chance of being shown under the minimum; drawn once it is opened. */
import { useState } from "preact/hooks";
import { say } from "../../answers";
import type { FuelRun } from "../../core/fuelRun/fuelRun";
import { showChance, showVolume } from "../../core/numbers/shown";
import { unitOf } from "../../garage/units";

export function LapByLap({ run }: { run: FuelRun }) {
  const [open, setOpen] = useState(false);
  if (run.laps.length < 2) return null;
  return (
    <details class="disclosure" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Lap by lap</summary>
      {open && <Table run={run} />}
    </details>
  );
}

function Table({ run }: { run: FuelRun }) {
  const judged = run.worst !== null;
  return (
    <table class="lap-table num">
      <thead>
        <tr>
          <th scope="col">After lap</th>
          <th scope="col">Fuel</th>
          <th scope="col">Weight with it</th>
          {judged && <th scope="col">Shown under</th>}
        </tr>
      </thead>
      <tbody>
        {run.laps.map(({ lap, fuel, weight, judged: against }) => (
          <tr key={lap} class={lap === run.worst ? "worst" : undefined}>
            <th scope="row">
              {lap}
              {lap === run.worst && <span class="hidden-words">, the worst</span>}
            </th>
            <td>{showVolume(fuel.value, unitOf("volume"))}</td>
            <td>{weight ? say(weight) : "—"}</td>
            {judged && <td>{against ? showChance(against.chance_under) : "—"}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
