/** Where every record is, in words; what two phones disagree about; what could not be used; the way out. */
import { Button } from "../../parts/frame/Button";
import "./Records.css";
import { garage } from "../../garage/garage";
import type { KindName } from "../../journal/kinds";
import { Screen, Section } from "../../parts/frame/Screen";
import { sayMoment } from "../../parts/words/moments";
import { kindWord, sentenceCase } from "../../parts/words/naming";
import { sync, syncNow } from "../../sync/state";
import { Conflicts } from "./Conflicts";
import { Export } from "./Export";
import { LastBackup } from "./LastBackup";
import { Protection } from "./Protection";
import { Refusal } from "./Refusal";
import { SetAside } from "./SetAside";
import { Unproven } from "./Unproven";

const COUNTED: KindName[] = [
  "weighing",
  "photo",
  "part",
  "job",
  "loose_end",
  "weigh_in",
  "scale",
  "scale_check",
  "driver",
  "class_sheet",
  "car",
];

export function Records() {
  return (
    <Screen title="Records" back="#/more">
      <Whereabouts />
      <Conflicts />
      <SetAside />
      <Unproven />
      <Section title="Everything as one file">
        <Export />
      </Section>
      <Section title="On this phone">
        <Counts />
        <Protection />
      </Section>
    </Screen>
  );
}

function Whereabouts() {
  const { words, refusal, lastHeard, phase } = sync.value;
  return (
    <div class="stack">
      <div class="where" role="status" aria-live="polite">
        {words.map((sentence, i) => (
          <p key={sentence} class={i === 0 ? "where-first" : undefined}>
            {sentence}
          </p>
        ))}
      </div>
      <Refusal refusal={refusal} />
      <p class="small quiet">
        {lastHeard
          ? `Last heard from the home computer ${sayMoment(lastHeard)}.`
          : "The home computer has not answered yet."}
      </p>
      <LastBackup />
      <Button
        look="wide"
        label={phase === "idle" ? "Send now" : "Sending…"}
        disabled={phase !== "idle"}
        onClick={syncNow}
      />
    </div>
  );
}

function Counts() {
  const counts = COUNTED.map((kind) => ({ kind, count: garage.value.of(kind).length })).filter(
    ({ count }) => count > 0,
  );
  if (!counts.length) return <p class="quiet">Nothing is recorded yet.</p>;
  return (
    <dl class="counts">
      {counts.map(({ kind, count }) => (
        <div key={kind} class="spread">
          <dt>{sentenceCase(kindWord(kind, count))}</dt>
          <dd class="num">{count}</dd>
        </div>
      ))}
    </dl>
  );
}
