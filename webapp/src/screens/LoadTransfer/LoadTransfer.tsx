/**
 * How much load moves between the sides in a turn and between the axles under power or brakes: start, now, after.
 *
 * One body on four wheels, at an acceleration the person steps through. It compares states of one car; it is no limit.
 */
import "./LoadTransfer.css";
import { useMemo } from "preact/hooks";
import { book, known, stand } from "../../answers";
import { balance, type StateName } from "../../core/balance/balance";
import { type Warned, warned } from "../../core/garage/records";
import { Row } from "../../parts/figures/Row";
import { useDraft } from "../../parts/forms/useDraft";
import { Notice } from "../../parts/frame/Notice";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { to } from "../../route";
import { Figures } from "./Figures";
import { type Asked, figuresOf } from "./figures";
import { Stepper } from "./Stepper";

const START: Asked = { turn: 10, along: -8 };
const STATES: readonly [StateName, string][] = [
  ["start", "At the start"],
  ["now", "Now"],
  ["after", "After the chosen jobs"],
];

export function LoadTransfer() {
  const { form: asked, change } = useDraft<Asked>("load-transfer", () => START);
  const found = useMemo(() => balance(book.value, {}, known.value, stand.value), [book.value]);
  if (!asked) return null;
  const states = STATES.flatMap(([name, words]) => {
    const state = found.states[name];
    return state && (name !== "after" || found.jobs.length)
      ? [{ words, told: figuresOf(book.value, state, asked) }]
      : [];
  });
  const missing = STATES.map(([name]) => found.reasons[name]).find((reason) => reason !== undefined);
  return (
    <Screen title="Load transfer" back={to("balance")}>
      <div class="stack">
        <Stepper label="In a turn" value={asked.turn} least={1} most={20} onValue={(turn) => change({ turn })} />
        <Stepper
          label="Brakes (−) or power (+)"
          value={asked.along}
          least={-15}
          most={10}
          onValue={(along) => change({ along })}
        />
        <NotALimit />
        <Warnings
          of={[
            ...(states.length ? [] : [missing ?? warned("no_weigh_in")]),
            ...aboutHeight(found.warnings),
            ...lifting(states),
          ]}
        />
      </div>
      {states.length > 0 && <Figures states={states} asked={asked} />}
      <NotModelled />
      <Section title="What it rests on">
        <div>
          <Row name="Where the weight is" note="Mass and centre before and after jobs" href={to("balance")} />
          {found.weigh_in && (
            <Row name="The weigh-in" note="And its lift, if there is one" href={to("weigh-in", found.weigh_in)} />
          )}
          <Row name="Car" note="Tracks, wheelbase, power" href={to("car-sheet")} />
        </div>
      </Section>
    </Screen>
  );
}

/** Of what the balance warns of, what bears on the height; the rest stands with the balance. */
function aboutHeight(warnings: readonly Warned[]): Warned[] {
  return warnings.filter(({ code }) => code === "height_assumed" || code === "height_carried");
}

function lifting(states: readonly { told: ReturnType<typeof figuresOf> }[]): Warned[] {
  const which = states.flatMap(({ told }) => told.wheels_lift)[0];
  return which ? [warned("wheels_lift", { which })] : [];
}

function NotALimit() {
  return (
    <Notice sort="caution">
      <p>
        <strong>Figures to compare states of this car, no limit to drive to.</strong> What a car really does is found
        out with care, on a closed course, within the rule book.
      </p>
    </Notice>
  );
}

function NotModelled() {
  return (
    <Section title="What is not in it">
      <p>
        This is one stiff body on four wheels. Springs, anti-roll bars, tyres, wings, bumps and slopes are left out, and
        so is how the two axles share what moves.
      </p>
    </Section>
  );
}
