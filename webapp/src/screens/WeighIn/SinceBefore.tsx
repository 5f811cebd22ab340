/** This weigh-in against the one before: what the jobs between should have changed, and what the scales say did. */
import { account } from "../../account";
import { say, stand } from "../../answers";
import { isSignificant } from "../../core/standing/gap";
import { gapSentence } from "../../core/standing/sentences";
import { massUnit } from "../../garage/units";
import { Causes, movedUnweighed } from "../../parts/causes/Causes";
import { Facts } from "../../parts/figures/Facts";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { sayMoment } from "../../parts/words/moments";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";
import type { GapTrail } from "./gap";

export function SinceBefore({ trail }: { trail: GapTrail }) {
  const { gap, found, causes } = trail;
  const { put_in, taken_out, net } = trail.since;
  return (
    <Section title="Against the weigh-in before">
      <p>
        <strong>{gapSentence(gap, massUnit()).text}.</strong>
      </p>
      <Facts
        rows={[
          { name: "By the jobs between", value: say(net, true) },
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
      {isSignificant(gap) && gap.unweighed.length > 0 && <p>{movedUnweighed(gap.unweighed)}</p>}
      {causes.length > 0 && <Causes causes={causes} here={gap.second} />}
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
