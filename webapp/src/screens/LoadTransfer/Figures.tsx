/** Each figure for every state of the car, one below the other, and in words what the work changed. */
import { say } from "../../answers";
import { showLength, showPlain } from "../../core/numbers/shown";
import { beyondDoubt, expanded, subtract, type Uncertain } from "../../core/numbers/uncertain";
import { describe } from "../../errors";
import { unitOf } from "../../garage/units";
import { Facts } from "../../parts/figures/Facts";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import type { Asked, Told } from "./figures";
import { inG } from "./Stepper";

type States = readonly { words: string; told: Told }[];
type Figure = "lateral" | "longitudinal" | "stability" | "perPower" | "height";
/** `more`, `less`: what the words call a change of either sign. */
type Shown = {
  figure: Figure;
  title: string;
  about: string;
  show: (item: Uncertain, signed?: boolean) => string;
  more: string;
  less: string;
};

export function Figures({ states, asked }: { states: States; asked: Asked }) {
  return (
    <>
      {shownAt(asked, states).map((shown) => (
        <One key={shown.figure} shown={shown} states={states} />
      ))}
    </>
  );
}

function shownAt({ turn, along }: Asked, states: States): Shown[] {
  const unit = states[0]?.told.unit;
  const plain =
    (label: string) =>
    (item: Uncertain, signed = false) =>
      showPlain(item.value, label, expanded(item), signed);
  const figures: (Shown | null)[] = [
    {
      figure: "lateral",
      title: `In a turn of ${inG(turn)}`,
      about: "From the inner to the outer wheels, both axles together.",
      show: say,
      more: "more moves",
      less: "less moves",
    },
    along === 0
      ? null
      : {
          figure: "longitudinal",
          title: `${along < 0 ? "Braking" : "Accelerating"} at ${inG(Math.abs(along))}`,
          about: along < 0 ? "From the rear axle to the front." : "From the front axle to the rear.",
          show: say,
          more: "more moves",
          less: "less moves",
        },
    {
      figure: "stability",
      title: "Static stability factor",
      about:
        "Half the track over the height: the sideways g at which a stiff car's inner wheels carry nothing. Higher is steadier.",
      show: plain(""),
      more: "steadier",
      less: "less steady",
    },
    {
      figure: "height",
      title: "Height of the centre",
      about: "Above the ground, as the car stands level.",
      show: (item, signed = false) => showLength(item.value, unitOf("length"), expanded(item), signed),
      more: "higher",
      less: "lower",
    },
    {
      figure: "perPower",
      title: "Weight per power",
      about: "The car as weighed, with what was in it, for every unit of power. Less is livelier.",
      show: plain(`kg/${unit}`),
      more: "more to pull",
      less: "less to pull",
    },
  ];
  return figures.filter((figure) => figure !== null);
}

function One({ shown, states }: { shown: Shown; states: States }) {
  const { figure, title, about, show } = shown;
  const rows = states.flatMap(({ words, told }) => (told[figure] ? [{ name: words, value: show(told[figure]) }] : []));
  return (
    <Section title={title}>
      <p class="small quiet">{about}</p>
      {rows.length ? <Facts rows={rows} /> : <Lacking figure={figure} />}
      {rows.length > 0 && <Changed shown={shown} states={states} />}
    </Section>
  );
}

/** Between the first state and the last; what is common to both, such as the height of the lift, cancels. */
function Changed({ shown: { figure, show, more, less }, states }: { shown: Shown; states: States }) {
  const [first, last] = [states[0]!.told[figure], states.at(-1)!.told[figure]];
  if (!first || !last || states.length < 2) return null;
  const change = subtract(last, first);
  if (!beyondDoubt(change))
    return <p class="small">The work changes it by less than can be told: {show(change, true)}.</p>;
  return (
    <p class="small">
      <strong>{show(change, true)}</strong>: {change.value > 0 ? more : less} than at the start.
    </p>
  );
}

const LACKING = {
  lateral: "tracks_unknown",
  longitudinal: "wheelbase_unknown",
  stability: "tracks_unknown",
  height: "height_unknown",
  perPower: "power_unknown",
} as const;

function Lacking({ figure }: { figure: Figure }) {
  const { sentence, do: todo } = describe(LACKING[figure]);
  return (
    <p>
      {sentence} <a href={to("car-sheet")}>{todo}</a>
    </p>
  );
}
