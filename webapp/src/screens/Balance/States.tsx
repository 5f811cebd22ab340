/** Every state of the car side by side: weight, shares and centre of gravity, each with how sure it is. */
import { say } from "../../answers";
import type { Balance, CarState } from "../../core/balance/balance";
import { unitOf } from "../../garage/units";
import { WeightNow } from "../../parts/figures/WeightNow";
import { Section } from "../../parts/frame/Screen";
import { axisCell, type Cell, cell, STATE_WORDS, STATES, shareCell } from "./words";

const ROWS: readonly [name: string, of: (state: CarState | undefined, unit: string) => Cell][] = [
  ["Weight, with what was aboard then", (state) => cell(state ? say(state.body.mass) : null)],
  ["On the front wheels", (state) => shareCell(state, "front")],
  ["On the left wheels", (state) => shareCell(state, "left")],
  ["Centre behind the front axle", (state, unit) => axisCell(state, "x", unit)],
  ["Centre beside the centreline", (state, unit) => axisCell(state, "y", unit)],
  ["Centre above the ground", (state, unit) => axisCell(state, "z", unit)],
];

export function States({ balance: { states } }: { balance: Balance }) {
  const unit = unitOf("length");
  if (!Object.keys(states).length) return null;
  return (
    <Section title="Before and after">
      <table class="states num">
        <thead>
          <tr>
            {STATES.map((name) => (
              <th key={name} scope="col">
                {STATE_WORDS[name]}
              </th>
            ))}
          </tr>
        </thead>
        {ROWS.map(([name, of]) => (
          <tbody key={name}>
            <tr>
              <th scope="rowgroup" colSpan={STATES.length}>
                {name}
              </th>
            </tr>
            <tr>
              {STATES.map((state) => (
                <Figure key={state} cell={of(states[state], unit)} />
              ))}
            </tr>
          </tbody>
        ))}
      </table>
      <p class="small quiet">
        Start: before any job. Weighed: as it stood there that day, with its driver, fuel and ballast; every other state
        carries the same, and what jobs changed since. Where the weight stands is told by that weigh-in, how much it is
        by all of them. ± means: true 19 times in 20.
      </p>
      <WeightNow />
    </Section>
  );
}

function Figure({ cell: [value, within] }: { cell: Cell }) {
  return (
    <td>
      <strong>{value}</strong>
      {within && <small>{within}</small>}
    </td>
  );
}
