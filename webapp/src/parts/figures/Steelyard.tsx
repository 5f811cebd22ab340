/**
 * The steelyard: one graduated arm from the car's starting weight to the minimum.
 *
 * The poise hangs where the car weighs now and slides right as weight comes off; a bracket on the arm says how sure that
 * is. A tick stands for every weigh-in, with its own bracket. At the minimum there is a stop; a poise past it turns vermilion,
 * and the words beside the drawing say so too. Masses are kilograms; the drawing rounds nothing, it only places.
 */
export type Interval = { value: number; within: number };
export type SteelyardProps = {
  start: number | null;
  minimum: number | null;
  now: Interval | null;
  weighIns?: Interval[];
  /** Where the poise would stand after what is being looked at (a job, a donor part, a plan). */
  then?: number | null;
  label: string;
  small?: boolean;
};

const PIVOT = 34;
const FIRST = 58;
const STOP = 318;
const END = 352;

type Scale = (mass: number) => number;

/** Maps kilograms to a place on the arm; without a minimum the arm spans what is known, with room to the right. */
function scaleOf({ start, minimum, now, then, weighIns }: SteelyardProps): Scale | null {
  const known = [start, now?.value, then, ...(weighIns ?? []).map((each) => each.value)].filter(
    (mass): mass is number => mass != null,
  );
  if (!known.length) return null;
  const heavy = Math.max(...known, minimum ?? -Infinity);
  const light = minimum ?? Math.min(...known) - 0.25 * (heavy - Math.min(...known));
  const span = heavy - light || Math.max(heavy * 0.02, 1);
  const top = heavy - light ? heavy : light + span;
  return (mass) => Math.min(END - 4, Math.max(PIVOT + 14, FIRST + ((top - mass) / span) * (STOP - FIRST)));
}

/** A round step that cuts the arm into ten to twenty-five divisions. */
function stepOf(span: number): number {
  const rough = span / 16;
  const power = 10 ** Math.floor(Math.log10(rough));
  return ([1, 2, 5, 10].find((factor) => factor * power >= rough) ?? 10) * power;
}

function graduations(props: SteelyardProps, at: Scale): { x: number; long: boolean }[] {
  const heavy = Math.max(props.start ?? -Infinity, props.now?.value ?? -Infinity);
  const light = props.minimum ?? Math.min(props.start ?? Infinity, props.now?.value ?? Infinity);
  if (!(heavy > light)) return [];
  const step = stepOf(heavy - light);
  const first = Math.ceil(light / step);
  const last = Math.floor(heavy / step);
  return Array.from({ length: last - first + 1 }, (_, i) => ({
    x: at((first + i) * step),
    long: (first + i) % 5 === 0,
  }));
}

export function Steelyard(props: SteelyardProps) {
  const at = scaleOf(props);
  if (!at) return null;
  const { minimum, now, then, label, small } = props;
  const isUnder = minimum != null && now != null && now.value < minimum;
  const height = small ? 52 : 118;
  const beam = small ? 18 : 46;
  return (
    <figure class={`steelyard${small ? " small-arm" : ""}`}>
      <svg viewBox={`0 0 360 ${height}`} role="img" aria-label={label}>
        <Beam y={beam} small={!!small} />
        {graduations(props, at).map(({ x, long }) => (
          <line key={x} class="graduation" x1={x} x2={x} y1={beam - 3} y2={beam - (long ? 13 : 8)} />
        ))}
        {!small && (props.weighIns ?? []).map((each, i) => <WeighInTick key={i} at={at} each={each} y={beam - 20} />)}
        {minimum != null && <Stop x={at(minimum)} y={beam} />}
        {then != null && now != null && <Travel from={at(now.value)} to={at(then)} y={beam} small={!!small} />}
        {now && <Poise at={at} now={now} y={beam} small={!!small} under={isUnder} />}
      </svg>
    </figure>
  );
}

function Beam({ y, small }: { y: number; small: boolean }) {
  return (
    <g class="beam">
      <path d={`M10 ${y - 5} L${PIVOT} ${y - 4} L${END} ${y - 2} L${END} ${y + 2} L${PIVOT} ${y + 4} L10 ${y + 5} Z`} />
      <path class="thread" d={`M${PIVOT} ${y} V${small ? 4 : 12} m-5 0 h10`} />
      <path class="thread" d={`M14 ${y} v${small ? 14 : 26}`} />
      {small ? <path d={`M7 ${y + 14} h14 l-3 9 h-8 z`} /> : <path d={`M3 ${y + 26} h22 l-3 6 h-16 z`} />}
    </g>
  );
}

function Stop({ x, y }: { x: number; y: number }) {
  return <path class="stop" d={`M${x} ${y - 16} V${y + 16}`} />;
}

function WeighInTick({ at, each, y }: { at: Scale; each: Interval; y: number }) {
  const left = at(each.value + each.within);
  const right = at(each.value - each.within);
  const middle = at(each.value);
  return (
    <g class="weigh-in-tick">
      <path d={`M${left} ${y + 4} V${y} H${right} V${y + 4}`} />
      <path d={`M${middle} ${y - 5} V${y + 6}`} />
    </g>
  );
}

function Travel({ from, to, y, small }: { from: number; to: number; y: number; small: boolean }) {
  const low = y + (small ? 12 : 20);
  const tip = to > from ? -5 : 5;
  return (
    <g class="travel">
      <path d={`M${from} ${low} H${to} m${tip} -4 l${-tip} 4 l${tip} 4`} />
      <path class="ghost" d={poiseShape(to, y, small)} />
    </g>
  );
}

/** A hook over the arm and a hanging weight, drawn around the point where it bears. */
function poiseShape(x: number, y: number, small: boolean): string {
  const [half, drop, deep] = small ? [7, 8, 18] : [13, 14, 40];
  return `M${x} ${y - 7} v${drop} M${x - half * 0.55} ${y + drop - 3} h${half * 1.1} l${half * 0.45} ${deep * 0.45} q0 ${deep * 0.55} ${-half} ${deep * 0.55} q${-half} 0 ${-half} ${-deep * 0.55} z`;
}

function Poise({ at, now, y, small, under }: { at: Scale; now: Interval; y: number; small: boolean; under: boolean }) {
  const x = at(now.value);
  return (
    <g class={under ? "poise past" : "poise"}>
      <path class="sure" d={`M${at(now.value + now.within)} ${y + 7} v-4 H${at(now.value - now.within)} v4`} />
      <path class="weight" d={poiseShape(x, y, small)} />
    </g>
  );
}
