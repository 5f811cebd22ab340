/** From the car before any work to the weight now, line by line: it adds up. */
import { account } from "../../account";
import { book, known, say } from "../../answers";
import { jobsAsRead } from "../../core/ledger/asRead";
import { addingUp, fromStart } from "../../core/standing/fromStart";
import type { Standing } from "../../core/standing/standing";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import { weighInName } from "./weighInName";

export function FromStart({ now }: { now: Standing }) {
  const found = fromStart(book.value, known.value, now);
  if (!found || !now.weight) return null;
  const { start, corrected, fuel, driver, ballast, weigh_in } = found;
  const stages = account.value.by_stage.filter(({ states }) => states.fitted!.mass.lines.length > 0);
  const lines = [start, fuel, driver, ballast, ...stages.map(({ states }) => states.fitted!.mass.net)];
  return (
    <Section title="From the start">
      <div>
        <Row
          name="The car before any job"
          note={`without fuel, driver and ballast; ${weighInName(weigh_in)}`}
          value={say(start)}
          href={to("weigh-in", weigh_in)}
        />
        {stages.map(({ stage, states }) => (
          <Row
            key={stage ?? ""}
            name={stage ? refName(stage) : "Without a stage"}
            note={noteOf(states.fitted!.effort.jobs)}
            value={say(states.fitted!.mass.net, true)}
            href={to("jobs", { stage: stage ?? "" })}
          />
        ))}
        <Row
          name="Beside the jobs, by the weigh-ins"
          note="not written down, or a reading was off"
          value={say(addingUp(corrected, lines, now.weight, massUnit()), true)}
        />
        <Row name="Fuel" note={fuelWords(now)} value={say(fuel, true)} href={to("class-sheet")} />
        <Row name="Driver" note={driverWords(now)} value={say(driver, true)} href={to("drivers")} />
        <Row name="Ballast" note="on board now" value={say(ballast, true)} href={to("ballast")} />
        <Row name="Weight now" value={say(now.weight)} />
      </div>
      <p class="small quiet">Each line is rounded by its own ±.</p>
    </Section>
  );
}

/** The plain sum of the readings, where there is one on paper. */
function noteOf(jobs: readonly string[]): string | null {
  const read = jobsAsRead(book.value, account.value, jobs);
  return read && `as read ${read}`;
}

const TANK = { empty: "tank empty", full: "tank full", stated: "as the class says" };

function fuelWords({ condition: { fuel }, fused }: Standing): string {
  if (fuel !== "as_it_is") return TANK[fuel];
  const litres = garage.value.one("weigh_in", fused?.fusion.evidence.counted.at(-1)?.record.id)?.values.fuel;
  return litres ? `${litres}, as at the weigh-in` : "as at the weigh-in, not said how much";
}

function driverWords({ condition: { driver, lightest } }: Standing): string {
  if (driver === "out") return "not counted by the class";
  return lightest ? `${refName(lightest)}, the lightest` : "nobody weighed yet";
}
