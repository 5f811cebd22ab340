/** The jobs in the car when it was weighed, as confirmed there: what "since that weigh-in" is counted from. */
import { describe } from "../../errors";
import { garage, type Rec } from "../../garage/garage";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { refName } from "../../parts/words/naming";
import { to } from "../../route";

export function JobsThen({ rec }: { rec: Rec<"weigh_in"> }) {
  const { jobs } = rec.values;
  return (
    <Section title={jobs ? `Jobs then in the car (${jobs.length})` : "Jobs then in the car"}>
      {!jobs && <p class="quiet">{describe("jobs_not_confirmed").sentence}</p>}
      {jobs?.length === 0 && <p class="quiet">None: the car as it was.</p>}
      <div>
        {jobs?.map((job) => (
          <Row
            key={job}
            name={refName(job)}
            note={garage.value.byId.get(job)?.deleted ? "deleted since" : undefined}
            href={to("job", job)}
          />
        ))}
      </div>
    </Section>
  );
}
