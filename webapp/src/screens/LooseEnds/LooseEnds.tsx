/** Everything the fitted jobs left behind and nobody has closed yet, each at its job. */
import { jobs } from "../../answers";
import { garage } from "../../garage/garage";
import { Row } from "../../parts/figures/Row";
import { Screen, Section } from "../../parts/frame/Screen";
import { nameOf } from "../../parts/words/naming";
import { to } from "../../route";

export function LooseEnds() {
  const fitted = jobs.value.filter((job) => job.values.state === "fitted");
  const open = garage.value.of("loose_end").filter((end) => !end.values.closed);
  const groups = fitted
    .map((job) => ({ job, ends: open.filter((end) => end.values.job === job.id) }))
    .filter(({ ends }) => ends.length);
  return (
    <Screen title="Loose ends" back={to("car")}>
      {!groups.length && <p>Nothing is left open.</p>}
      {groups.map(({ job, ends }) => (
        <Section key={job.id} title={nameOf(job)}>
          <div>
            {ends.map((end) => (
              <Row key={end.id} name={end.values.text} note={end.values.sort} href={to("job", job.id)} />
            ))}
          </div>
        </Section>
      ))}
    </Screen>
  );
}
