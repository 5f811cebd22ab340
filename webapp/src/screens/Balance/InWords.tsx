/** The balance in a few sentences, or what is missing for them and where to enter it. */

import { describe } from "../../errors";
import { unitOf } from "../../garage/units";
import { ButtonLink } from "../../parts/frame/Button";
import { Notice } from "../../parts/frame/Notice";
import { to } from "../../route";
import { reasonsOf } from "./reasons";
import type { Told } from "./told";
import { movedWords, shareWords } from "./words";

const WAYS_OUT: Readonly<Record<string, readonly [screen: string, words: string]>> = {
  wheelbase_unknown: ["car-sheet", "Enter the car's dimensions"],
  tracks_unknown: ["car-sheet", "Enter the car's dimensions"],
  no_weigh_in: ["weigh-car", "Weigh the whole car"],
  axles_unknown: ["weigh-car", "Weigh the whole car"],
  sides_unknown: ["weigh-car", "Weigh the whole car"],
};

export function InWords({ told: { balance } }: { told: Told }) {
  const before = balance.states.start ? "start" : "weighed";
  const now = balance.states.now ? "now" : "weighed";
  const shares = (["front", "left"] as const)
    .map((side) => shareWords(balance, side, before, now))
    .filter((words) => words !== null);
  const moved = movedWords(balance, before, now, unitOf("length"));
  const planned = balance.jobs.length ? shareWords(balance, "front", null, "after") : null;
  return (
    <div class="stack">
      {shares.map((words, i) => (
        <p key={i} class={i === 0 ? "share-words" : "share-words small-share"}>
          {words}.
        </p>
      ))}
      {moved && <p>{moved} since the start.</p>}
      {planned && <p>After the jobs chosen: {planned}.</p>}
      {reasonsOf(balance).map((reason) => {
        const said = describe(reason.code, reason.data);
        const out = WAYS_OUT[reason.code];
        return (
          <Notice key={reason.code} sort="caution">
            <p>
              <strong>{said.sentence}</strong> {said.do}
            </p>
            {out && <ButtonLink label={out[1]} href={to(out[0])} />}
          </Notice>
        );
      })}
    </div>
  );
}
