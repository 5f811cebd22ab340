/** How the balance goes from a full tank to an empty one: in words, and on a small line for the front axle. */
import type { FuelRun } from "../../core/fuelRun/fuelRun";
import { showLength, showPercent } from "../../core/numbers/shown";
import { expanded, type Uncertain } from "../../core/numbers/uncertain";
import { unitOf } from "../../garage/units";
import { type Fact, Facts } from "../../parts/figures/Facts";
import { Section } from "../../parts/frame/Screen";
import { shareLine } from "./drawing";

type Pair = { full: Uncertain; empty: Uncertain };

export function Balance({ run }: { run: FuelRun }) {
  const front = pairOf(run, "front");
  const rows: Fact[] = [
    rowOf("Left side", pairOf(run, "left"), percent),
    rowOf("Centre of gravity behind the front axle", pairOf(run, "x"), length),
    rowOf("Its height above the ground", pairOf(run, "z"), length),
  ].filter((row) => row !== null);
  if (!front && !rows.length) return null;
  return (
    <Section title="Balance, tank full and empty">
      {front && <p>{frontWords(front)}</p>}
      {front && <ShareLine {...front} />}
      <Facts rows={rows} />
    </Section>
  );
}

function pairOf({ full, empty }: FuelRun, name: "front" | "left" | "x" | "z"): Pair | null {
  const [one, other] = [full?.balance[name], empty.balance[name]];
  return one && other ? { full: one, empty: other } : null;
}

const percent = (share: Uncertain) => showPercent(share.value, expanded(share));
const length = (item: Uncertain) => showLength(item.value, unitOf("length"), expanded(item));

function rowOf(name: string, pair: Pair | null, show: (item: Uncertain) => string): Fact | null {
  if (!pair) return null;
  const [full, empty] = [show(pair.full), show(pair.empty)];
  return { name, value: full, under: full === empty ? "full and empty alike" : `empty ${empty}` };
}

function frontWords({ full, empty }: Pair): string {
  const [one, other] = [showPercent(full.value), showPercent(empty.value)];
  if (one === other) return `The front axle carries ${one} whatever is in the tank.`;
  const way = empty.value > full.value ? "nose-heavier" : "tail-heavier";
  return `The front axle carries ${one} with a full tank and ${other} with an empty one: the car gets ${way} as fuel is used.`;
}

const WIDTH = 360;
const [LEFT, RIGHT, LINE] = [12, 348, 30];

/** Two ticks on a line of whole per cent: an open mark for empty, a filled one for full. */
function ShareLine({ full, empty }: Pair) {
  const { low, high, at } = shareLine([full.value, empty.value]);
  const x = (share: number) => LEFT + at(share) * (RIGHT - LEFT);
  const steps = Array.from({ length: high - low + 1 }, (_, i) => low + i);
  const fullFirst = full.value <= empty.value;
  return (
    <svg class="share-line" viewBox={`0 0 ${WIDTH} 56`} aria-hidden="true">
      <path d={`M${LEFT} ${LINE} H${RIGHT}`} />
      {steps.map((step) => (
        <path key={step} d={`M${x(step / 100)} ${LINE} v6`} />
      ))}
      <text x={LEFT} y="50">
        {low} %
      </text>
      <text x={RIGHT} y="50" text-anchor="end">
        {high} %
      </text>
      <circle class="tank-full" cx={x(full.value)} cy={LINE} r="6" />
      <circle class="tank-empty" cx={x(empty.value)} cy={LINE} r="6" />
      <text x={x(full.value)} y="16" text-anchor={fullFirst ? "end" : "start"}>
        full
      </text>
      <text x={x(empty.value)} y="16" text-anchor={fullFirst ? "start" : "end"}>
        empty
      </text>
    </svg>
  );
}
