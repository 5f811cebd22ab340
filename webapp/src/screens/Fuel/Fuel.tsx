/**
 * Fuel over a run: how light the car gets against the minimum, what to start with, and how it balances on the way.
 *
 * The answer comes first, in words; every key typed changes it. What a lap takes belongs to the car; start and laps are
 * kept on this phone as a draft.
 */
import { useMemo } from "preact/hooks";
import { book, car, known, trim } from "../../answers";
import { readyToRun } from "../../core/fuelRun/fuelGiven";
import { type FuelRun, fuelRun } from "../../core/fuelRun/fuelRun";
import { lightestSentence, startSentence } from "../../core/fuelRun/fuelWords";
import type { Warned } from "../../core/garage/records";
import { showBoth } from "../../core/numbers/shownLater";
import { describe } from "../../errors";
import { massUnit, unitOf } from "../../garage/units";
import { Disclosure } from "../../parts/controls/Disclosure";
import { QuantityField } from "../../parts/controls/QuantityField";
import { Row } from "../../parts/figures/Row";
import { WeightNow } from "../../parts/figures/WeightNow";
import { useDraft } from "../../parts/forms/useDraft";
import { Notice } from "../../parts/frame/Notice";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { to } from "../../route";
import { Balance } from "./Balance";
import { emptyRun, type OfRun, questionOf, type RunForm, unreadRun } from "./form";
import "./Fuel.css";
import { LapByLap } from "./LapByLap";
import { Laps } from "./Laps";
import { PerLap } from "./PerLap";
import { RunDrawing } from "./RunDrawing";

export function Fuel() {
  return (
    <Screen title="Fuel" back={to("car")}>
      <Run key={car.value?.id} />
    </Screen>
  );
}

function Run() {
  const { form, change } = useDraft<RunForm>(`fuel-run:${car.value?.id ?? ""}`, emptyRun);
  const [garage, masses, unit] = [book.value, known.value, unitOf("volume")];
  const ready = useMemo(() => readyToRun(garage, masses), [garage, masses]); // not weighed and balanced anew at every key
  const run = useMemo(() => form && fuelRun(garage, questionOf(form, unit), masses, ready), [form, ready, unit]);
  if (!form || !run) return null;
  const unread = unreadRun(form, unit);
  return (
    <div class="fuel-run">
      <div class="stack answer-side">
        {unread ? (
          <Notice sort="caution">
            <p>
              <strong>{unread}</strong>
            </p>
          </Notice>
        ) : (
          <Answer run={run} />
        )}
        <Laps laps={form.laps} onLaps={(laps) => change({ laps })} />
      </div>
      <div class="stack">
        <TheRun form={form} change={change} />
        <Caution />
      </div>
      <div class="stack">
        {!unread && <Balance run={run} />}
        {!unread && <LapByLap run={run} />}
        {!unread && <Warnings of={toldOnce(run)} />}
      </div>
    </div>
  );
}

function Answer({ run }: { run: FuelRun }) {
  const lightest = lightestSentence(run, massUnit());
  const start = startSentence(run, massUnit(), unitOf("volume"));
  const isUnder = lightest.code === "lightest_under";
  return (
    <div class="stack" aria-live="polite">
      <Warnings of={run.warnings.filter(isAboveTank)} />
      <p class={isUnder ? "run-answer under" : "run-answer"}>{unbroken(lightest.text)}.</p>
      <p class="run-answer">{unbroken(start.text)}.</p>
      <p class="small quiet">
        {trim.value === "event" ? "In event trim" : "In road trim"}
        {counted(run)}
      </p>
      <RunDrawing run={run} label={`${lightest.text}. ${start.text}.`} />
    </div>
  );
}

/** A start above the tank is said where the answer for a full one stands. */
const isAboveTank = ({ code }: Warned): boolean => code === "fuel_start_above_tank";

/** No figure is torn from its unit or its doubt at the end of a line. */
const unbroken = (text: string): string =>
  text.replace(/(\d|±) (?=±|[\d%a-zA-Z]+\b)/g, (_, end: string) => `${end}\u00a0`);

/** Whom and what the class counts; where it sets the fuel itself, that the run does not matter for the minimum. */
function counted({ condition, reasons }: FuelRun): string {
  const driver = condition.driver === "in" ? ", with the lightest driver." : ", without a driver.";
  const { margin } = reasons;
  if (condition.fuel === "as_it_is" || !margin) return `${driver} The fuel that is left counts.`;
  return `${driver} ${describe(margin.code, margin.data).sentence}`;
}

function TheRun({ form, change }: OfRun) {
  const tank = book.value.car?.tank_size;
  const full = tank && `A full tank unless you say otherwise: ${showBoth(tank, unitOf("volume"))}.`;
  const field = (name: "start" | "startWithin" | "perLapWithin", label: string, hint: string) => (
    <QuantityField
      kind="volume"
      label={label}
      value={form[name]}
      onValue={(text) => change({ [name]: text })}
      hint={hint}
    />
  );
  return (
    <Section title="The run">
      <div class="stack">
        {field("start", "Fuel at the start", full ?? "The car's tank has no size yet.")}
        <PerLap form={form} change={change} />
        <Disclosure title="How closely that is known">
          {field("startWithin", "The start may be off by", "Half a litre unless you say otherwise.")}
          {field("perLapWithin", "A lap may be off by", "A tenth of it unless you say otherwise.")}
        </Disclosure>
        <WeightNow />
        <Row name="The tank: size, place and what is in it" href={to("car-sheet")} />
      </div>
    </Section>
  );
}

function Caution() {
  return (
    <Notice sort="caution">
      <p class="small">
        <strong>Care: fuel.</strong> No smoking, sparks or flames; vapour creeps along the ground. Fill and drain
        outdoors or well aired, engine off, only into approved cans, with an extinguisher at hand.
      </p>
      <p class="small">
        Officials may take a sample: the rule book says how much must be left in the tank, and when you may drain it.
      </p>
    </Notice>
  );
}

/** Every reason and warning once; that the class sets the fuel stands below the answer already. */
function toldOnce(run: FuelRun): Warned[] {
  const all = [...Object.values(run.reasons), ...run.warnings].filter(
    (each) => !each.code.startsWith("fuel_class_") && !isAboveTank(each),
  );
  const texts = all.map((each) => JSON.stringify(each));
  return all.filter((_, at) => texts.indexOf(texts[at]!) === at);
}
