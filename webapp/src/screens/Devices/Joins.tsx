/** The phones that wait for a yes on the home computer, each with the two words that it shows itself. */

import { useEffect, useState } from "preact/hooks";
import type { Join } from "../../generated/routes";
import { Button } from "../../parts/frame/Button";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { useSaving } from "../../parts/frame/saving";
import { askHome } from "./askHome";

const EVERY = 2_000;

/** `onDecided`: a phone was let in or refused, and its code is used up. */
export function Joins({ onDecided }: { onDecided: () => void }) {
  const [joins, setJoins] = useState<readonly Join[]>([]);
  const [isIn, setIsIn] = useState(false);
  const deciding = useSaving();
  useEffect(() => follow(setJoins), []);
  const decide = (join: Join, what: "confirm" | "refuse") =>
    deciding.run(async () => {
      const { joins: left } = await askHome(`POST /pair/joins/{name}/${what}`, { name: join.id });
      setJoins(left);
      setIsIn(what === "confirm");
      onDecided();
    });
  return (
    <div role="region" aria-live="polite" aria-label="Phones that wait">
      {joins.map((join) => (
        <Notice key={join.id} sort="caution">
          <p>
            <strong>A device called “{join.name}” wants to join.</strong> Let it in only if it shows these two words:
          </p>
          <p class="check-words">{join.words.join(" · ")}</p>
          <div class="pair">
            <Button label="Refuse" disabled={deciding.busy} onClick={() => void decide(join, "refuse")} />
            <Button label="Let it in" disabled={deciding.busy} onClick={() => void decide(join, "confirm")} />
          </div>
        </Notice>
      ))}
      {isIn && (
        <Notice sort="saved">It is in: the phone fetches its key by itself, and then stands in the list.</Notice>
      )}
      <TroubleNotice trouble={deciding.trouble} />
    </div>
  );
}

/** Asks who waits, again and again while someone looks. A try that fails says nothing: the next one will. */
function follow(onJoins: (joins: readonly Join[]) => void): () => void {
  const ask = async (): Promise<void> => {
    if (document.visibilityState === "hidden") return;
    onJoins((await askHome("GET /pair/joins", {})).joins);
  };
  const tick = (): void => void ask().catch(() => undefined);
  tick();
  const timer = setInterval(tick, EVERY);
  return () => clearInterval(timer);
}
