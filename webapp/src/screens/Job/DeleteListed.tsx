/** Deleting a job that weigh-ins list: if it was in the car then, it is undone and no slip, and the figures need it. */
import { useState } from "preact/hooks";
import { garage } from "../../garage/garage";
import { deletion } from "../../garage/undo";
import { save } from "../../garage/write";
import { Button } from "../../parts/frame/Button";
import { relisted } from "../../parts/weighIn/relisted";
import { replace, to } from "../../route";
import { WasItIn } from "./Late";
import { alsoFor, listedBy } from "./late";

export function DeleteListed({ job }: { job: string }) {
  const [isAsked, ask] = useState(false);
  const asked = listedBy(job);
  const first = asked[0];
  if (!first || !isAsked) return <Button look="plain" label="Delete this job" onClick={() => ask(true)} />;
  const isUndone = garage.value.one("job", job)?.values.state === "undone";
  const keep = async () => {
    if (!isUndone) await save([{ kind: "job", record: job, set: { state: "undone" } }]);
    ask(false);
  };
  const remove = async () => {
    await save([deletion("job", job), ...relisted(asked, job, false)]);
    replace(to("jobs"));
  };
  return (
    <WasItIn
      at={first}
      yes={{ label: isUndone ? "Yes: keep it" : "Yes: keep it, as undone", act: keep }}
      no={{ label: "No: delete it", act: remove }}
    >
      The weigh-in of that day lists it, and what changed since is counted from that list.{alsoFor(asked)}
    </WasItIn>
  );
}
