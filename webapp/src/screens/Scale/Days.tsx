/**
 * Days across, up what the scale shows too much in each 1000 kg: the band it is believed to lie in, with all evidence.
 *
 * A check is a hanging weight at what it alone showed, a weigh-in a notch on the line of true. A tap opens the nearest.
 */

import type { Ageing, Belief } from "../../core/fusion/believed";
import { MINUS } from "../../core/numbers/quantity";
import { sayMoment } from "../../parts/words/moments";
import "./Days.css";

const [WIDE, HIGH, LEFT, RIGHT, TOP, FOOT] = [360, 204, 40, 14, 28, 30];
const INSET = 8; // so that a weight on the first day hangs clear of the figures
const PER = 1000;

type Place = { readonly x: (each: Belief) => number; readonly y: (gain: number) => number; readonly steps: number[] };

export function Days({ ageing, onOpen }: { ageing: Ageing; onOpen: (each: Belief) => void }) {
  const { beliefs } = ageing;
  const { x, y, steps } = placeOf(beliefs);
  const line = (of: (each: Belief) => number, way: readonly Belief[] = beliefs) => {
    return way.map((each) => `${x(each)} ${y(of(each))}`).join(" L");
  };
  const high = line(({ gain, u }) => gain + 2 * u);
  const low = line(({ gain, u }) => gain - 2 * u, [...beliefs].reverse());
  const tap = ({ clientX, currentTarget }: MouseEvent) => {
    const { left, width } = (currentTarget as Element).getBoundingClientRect();
    const at = ((clientX - left) / width) * WIDE;
    const records = beliefs.filter(({ record }) => record !== null);
    const nearest = records.reduce((best, each) => (Math.abs(x(each) - at) < Math.abs(x(best) - at) ? each : best));
    onOpen(nearest);
  };
  return (
    <svg class="days" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={wordsOf(beliefs)} onPointerUp={tap}>
      <text x={0} y={12}>
        kg too much in 1000 kg
      </text>
      <path class="band" d={`M${high} L${low} Z`} />
      {steps.map((step) => (
        <g key={step} class={step === 0 ? "true" : "step"}>
          <path d={`M${LEFT} ${y(step / PER)} H${WIDE - RIGHT}`} />
          <text x={LEFT - 5} y={y(step / PER) + 4} class="up">
            {step === 0 ? "true" : `${step > 0 ? "+" : MINUS}${Math.abs(step)}`}
          </text>
        </g>
      ))}
      <path class="belief" d={`M${line(({ gain }) => gain)}`} />
      {beliefs.map((each) => (
        <Mark key={`${each.sort} ${each.record}`} of={each} x={x(each)} y={y} />
      ))}
      <text x={LEFT} y={HIGH - 8}>
        {sayMoment(beliefs[0]?.at)}
      </text>
      <text x={WIDE - RIGHT} y={HIGH - 8} class="up">
        today
      </text>
    </svg>
  );
}

function Mark({ of: { sort, read, gain }, x, y }: { of: Belief; x: number; y: Place["y"] }) {
  const foot = HIGH - FOOT;
  if (sort === "weigh_in")
    return <path class="notch" d={`M${x} ${foot - 7} V${foot} M${x - 3} ${y(gain)} h6 M${x} ${y(gain) - 3} v6`} />;
  if (sort === "day") return <path class="today" d={`M${x} ${TOP} V${foot}`} />;
  const at = y(read ?? gain);
  return <path class="weight" d={`M${x} ${at} m-3 -3 h6 l2.5 8 q0 4 -5.5 4 q-5.5 0 -5.5 -4 z M${x} ${at - 3} v-4`} />;
}

/** The days and gains on the paper, and round steps of the gain, in 1000 kg. */
function placeOf(beliefs: readonly Belief[]): Place {
  const times = beliefs.map(({ at }) => Date.parse(at));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  const ends = beliefs.flatMap(({ gain, u, read }) => [gain - 2 * u, gain + 2 * u, read ?? gain]);
  const [least, most] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const span = most - least || 0.001;
  const step = stepOf(PER * span);
  const from = Math.ceil((PER * least) / step);
  const count = Math.floor((PER * most) / step) - from + 1;
  return {
    x: ({ at }) => LEFT + INSET + ((Date.parse(at) - first) / (last - first || 1)) * (WIDE - LEFT - RIGHT - INSET),
    y: (gain) => TOP + ((most - gain) / span) * (HIGH - TOP - FOOT),
    steps: Array.from({ length: count }, (_, n) => Number(((from + n) * step).toPrecision(3))),
  };
}

/** A round step that cuts the paper into two to five. */
function stepOf(span: number): number {
  const power = 10 ** Math.floor(Math.log10(span / 3));
  return ([1, 2, 5, 10].find((factor) => factor * power >= span / 5) ?? 10) * power;
}

function wordsOf(beliefs: readonly Belief[]): string {
  const of = (sort: Belief["sort"]) => beliefs.filter((each) => each.sort === sort).length;
  const counted = (count: number, name: string) => `${count} ${name}${count === 1 ? "" : "s"}`;
  const from = sayMoment(beliefs[0]?.at);
  return `What the scale shows too much in each 1000 kg, from ${from} to today, by ${counted(of("check"), "check")} and ${counted(of("weigh_in"), "weigh-in")}; day by day below.`;
}
