/** What a weighing is used for: the mass of its part, and through that the jobs that move the part. */
import { known, say } from "../../answers";
import { garage, type Rec } from "../../garage/garage";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { basisWord } from "../../parts/words/basis";
import { nameOf } from "../../parts/words/naming";
import { to } from "../../route";

export function UsedFor({ rec }: { rec: Rec<"weighing"> }) {
  const of = garage.value.byId.get(rec.values.of ?? "");
  if (!of) return null;
  const mass = known.value.of.get(of.id);
  const counts = mass?.readings.some((reading) => reading.weighing === rec.id) ?? false;
  const others = (mass?.readings.length ?? 0) - 1;
  const words = counts
    ? others > 0
      ? `with ${others} other ${others === 1 ? "weighing" : "weighings"}`
      : "from this weighing alone"
    : "this weighing does not count";
  const lines = garage.value.of("job_part").filter((line) => line.values.part === of.id);
  return (
    <Section title="Used for">
      <Row
        name={nameOf(of)}
        note={words}
        value={mass?.mass ? say(mass.mass) : "—"}
        under={basisWord(mass?.basis)}
        href={of.kind === "part" ? to("part", of.id) : to("drivers")}
      />
      {lines.map((line) => (
        <JobRow key={line.id} line={line} />
      ))}
    </Section>
  );
}

function JobRow({ line }: { line: Rec<"job_part"> }) {
  const job = garage.value.one("job", line.values.job);
  if (!job || job.deleted) return null;
  return (
    <Row
      name={nameOf(job)}
      note={line.values.way === "on" ? "goes on in this job" : "comes off in this job"}
      value={job.values.state ?? "idea"}
      href={to("job", job.id)}
    />
  );
}
