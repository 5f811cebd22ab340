/** This weigh-in against the one before: what the jobs between should have changed, and what the scales say did. */
import { account, say, stand } from "../../answers";
import { isSignificant } from "../../core/standing/gap";
import { gapSentence } from "../../core/standing/sentences";
import { Facts } from "../../parts/figures/Facts";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { sayMoment } from "../../parts/words/moments";
import { refName } from "../../parts/words/naming";
import { massUnit } from "../../parts/words/units";
import { to } from "../../route";
import type { GapTrail } from "./gap";

export function SinceBefore({ trail }: { trail: GapTrail }) {
  const { gap, put_in, taken_out, written, found } = trail;
  return (
    <Section title="Against the weigh-in before">
      <p>
        <strong>{gapSentence(gap, massUnit()).text}.</strong>
      </p>
      <Facts
        rows={[
          { name: "By the jobs between", value: say(written, true) },
          { name: "By the scales", value: say(found, true), under: "without fuel, driver and ballast, both times" },
          { name: "Not written down", value: say(gap.difference, true) },
        ]}
      />
      <div>
        <Before weighIn={gap.first} />
        {put_in.map((job) => (
          <Between key={job} job={job} words="done between" />
        ))}
        {taken_out.map((job) => (
          <Between key={job} job={job} words="undone between" />
        ))}
      </div>
      {!put_in.length && !taken_out.length && <p class="quiet">No job was done or undone between the two.</p>}
      {isSignificant(gap) && <Causes trail={trail} />}
    </Section>
  );
}

function Before({ weighIn }: { weighIn: string }) {
  const past = stand.value.history.find((each) => each.weigh_in === weighIn);
  return (
    <Row
      name={`Weigh-in of ${sayMoment(past?.at) || "unknown date"}`}
      note={past?.official ? "the official scale, as it stood" : "our own scales, as it stood"}
      value={past?.total ? say(past.total) : "—"}
      href={to("weigh-in", weighIn)}
    />
  );
}

/** With what the job itself changes when it is done. */
function Between({ job, words }: { job: string; words: string }) {
  const net = account.value.jobs.get(job)?.total.mass.net;
  return <Row name={refName(job)} note={words} value={net ? say(net, true) : "—"} href={to("job", job)} />;
}

function Causes({ trail: { gap, unweighed } }: { trail: GapTrail }) {
  const isMore = gap.difference.value > 0;
  return (
    <div class="stack">
      <p>Look at these first:</p>
      <ul class="causes">
        {unweighed.length > 0 && <li>Moved between without a weight, so counted as nothing: {names(unweighed)}.</li>}
        <li>
          {isMore
            ? "Something was put in, or put back, and not written down. Tools or a spare wheel in the car count too."
            : "Something came out and was not written down."}
        </li>
        <li>A job is ticked in the list of one weigh-in though it was not in the car, or is missing there.</li>
        <li>Fuel, driver or ballast was noted otherwise than it was.</li>
        <li>A part of these jobs weighs something else than was guessed or quoted.</li>
        <li>A scale was not level or not set to zero, or a reading was copied wrongly.</li>
      </ul>
    </div>
  );
}

const names = (parts: readonly string[]): string => parts.map(refName).join(", ");
