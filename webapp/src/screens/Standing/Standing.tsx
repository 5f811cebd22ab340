/** Where the weight now comes from: the weigh-ins, the jobs since, the condition, what does not fit, and what the doubt is made of. */
import { account } from "../../account";
import { minimumWords, say, stand } from "../../answers";
import { showChance, showPercent } from "../../core/numbers/shown";
import { inHandSentence, marginSentence } from "../../core/standing/sentences";
import type { Standing as Stand } from "../../core/standing/standing";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { own } from "../../own";
import { Doubts } from "../../parts/figures/Doubts";
import { MassFigure } from "../../parts/figures/MassFigure";
import { Row } from "../../parts/figures/Row";
import { Screen, Section } from "../../parts/frame/Screen";
import { Warnings } from "../../parts/frame/Warnings";
import { HowSure } from "../../parts/weighIn/HowSure";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import { DoesNotFit } from "./DoesNotFit";
import { ForetoldAndRead } from "./ForetoldAndRead";
import { FromStart } from "./FromStart";
import { Gaps } from "./Gaps";
import { LookAgain } from "./LookAgain";
import { RestsOn } from "./RestsOn";
import { Surer } from "./Surer";
import { WeighInsOf } from "./WeighInsOf";

export function Standing() {
  const now = stand.value;
  return (
    <Screen title="Weight now" back={to("car")}>
      <div class="stack">
        <MassFigure mass={now.weight ?? now.removed} under={(now.margin?.value ?? 0) < 0} />
        <p>{marginSentence(now, massUnit()).text}.</p>
        <HowSure />
        {now.fused && <RestsOn fused={now.fused} />}
        {now.weight ? (
          <MadeOf now={now} />
        ) : (
          <Row name="The jobs written down" value={say(now.removed)} href={to("jobs")} />
        )}
        <LookAgain />
        <FromStart now={now} />
        {now.fused && <DoesNotFit fused={now.fused} />}
        {now.official && now.minimum != null && <AtTheOfficialScale now={now} />}
        <ForetoldAndRead history={now.history} />
        {now.weight && (
          <Section title="How sure, and why">
            <Doubts mass={now.weight} />
            <p class="small quiet">
              ± means: true 19 times in 20. The widest line is where a check or a better scale helps most.
            </p>
          </Section>
        )}
        {now.fused && <Surer />}
        {now.gaps.length > 0 && <Gaps gaps={now.gaps} />}
        <Warnings of={[...Object.values(now.reasons), ...now.warnings]} />
      </div>
    </Screen>
  );
}

function MadeOf({ now }: { now: Stand }) {
  const { since, fused } = now;
  if (!since || !fused) return null;
  return (
    <Section title="Made of">
      <div>
        <WeighInsOf fused={fused} />
        {[...since.put_in, ...since.taken_out].map((job) => (
          <Row
            key={job}
            name={refName(job)}
            note={sinceWords(job, since.put_in.includes(job))}
            value={changeOf(now, job)}
            href={to("job", job)}
          />
        ))}
      </div>
    </Section>
  );
}

/** An event's job is not undone for the drive home: its parts are just back in. */
function sinceWords(job: string, isIn: boolean): string {
  if (isIn) return "done since, in each line above already";
  return garage.value.one("job", job)?.values.state === "fitted"
    ? "not in this trim, out of each line above already"
    : "undone since, out of each line above already";
}

function changeOf(now: Stand, job: string): string {
  const lines = account.value.jobs.get(job)?.total.mass.lines.length ?? 0;
  const change = now.since && own(now.since.changes, job);
  return lines && change ? say(change, true) : "not weighed";
}

function AtTheOfficialScale({ now }: { now: Stand }) {
  const { official, minimum, risk } = now;
  if (!official || minimum == null) return null;
  return (
    <Section title="At the official scale">
      <div>
        <Row name="Minimum" note="with what the class adds" value={minimumWords.value} href={to("class-sheet")} />
        <Row
          name="It should show"
          note="with that scale's own doubt: how true it is, its steps, how it repeats"
          value={say(official.expected)}
        />
        <Row name="Chance that it shows under" value={showChance(official.chance_under)} />
        <Row
          name={inHandSentence(official, massUnit()).text}
          note={`for a risk of ${showPercent(risk)}`}
          href={to("class-sheet")}
        />
      </div>
    </Section>
  );
}
