/** "Was it in the car on 12 Sept?": asked where a job and a weigh-in's list do not agree, answered at one tap. */
import type { ComponentChildren } from "preact";
import { save } from "../../garage/write";
import { Button } from "../../parts/frame/Button";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { useSaving } from "../../parts/frame/saving";
import { relisted } from "../../parts/weighIn/relisted";
import { alsoFor, dayOf, listedBy, movedBy, notIn, toAsk } from "./late";

type Answer = { label: string; act: () => unknown };

/** The question, what hangs on it, and its two answers. */
export function WasItIn({
  at,
  yes,
  no,
  children,
}: {
  at: string;
  yes: Answer;
  no: Answer;
  children: ComponentChildren;
}) {
  const saving = useSaving();
  const press = ({ act }: Answer) => void saving.run(async () => act());
  return (
    <Notice sort="caution">
      <p>
        <strong>Was it in the car on {dayOf(at)}?</strong> {children}
      </p>
      <div class="stack">
        <Button look="wide" label={yes.label} onClick={() => press(yes)} />
        <Button look="wide" label={no.label} onClick={() => press(no)} />
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </Notice>
  );
}

/** A job whose date lies before a weigh-in that does not list it. */
export function Late({ job }: { job: string }) {
  const asked = toAsk(job);
  const first = asked[0];
  if (!first) return null;
  const corrections = relisted(asked, job, true);
  const effect = movedBy(corrections);
  return (
    <WasItIn
      at={first}
      yes={{ label: "Yes, it was in", act: () => save(corrections) }}
      no={{ label: "No, it came later", act: () => save([notIn(job, asked)]) }}
    >
      The weigh-in of that day does not list it. {effect && `With yes, weight now ${effect}.`}
      {alsoFor(asked)}
    </WasItIn>
  );
}

/** A job that is in the car no more, though weigh-ins list it. */
export function NoMoreIn({ job, onDone }: { job: string; onDone: () => void }) {
  const asked = listedBy(job);
  const first = asked[0];
  if (!first) return null;
  const corrections = relisted(asked, job, false);
  const effect = movedBy(corrections);
  return (
    <WasItIn
      at={first}
      yes={{ label: "Yes, and it came out since", act: onDone }}
      no={{ label: "No, it was not in", act: () => save([notIn(job, asked), ...corrections]).then(onDone) }}
    >
      The weigh-in of that day lists it. {effect && `With no, weight now ${effect}.`}
      {alsoFor(asked)}
    </WasItIn>
  );
}
