/** Before there is an answer: what the car lacks, and the one thing to enter next. */

import { type BallastChoice, lacking } from "../../core/ballast/ballastRecords";
import { uncertain } from "../../core/numbers/uncertain";
import { MassFigure } from "../../parts/figures/MassFigure";
import { ButtonLink } from "../../parts/frame/Button";
import { Warnings } from "../../parts/frame/Warnings";
import { to } from "../../route";
import type { OfPlaces } from "./Ballast";
import { unaimedOf } from "./words";

const NEXT: Record<string, [words: string, screen: string]> = {
  ballast_unweighed: ["Weigh the whole car", "weigh-car"],
  no_minimum: ["Note the class minimum", "class-sheet"],
  ballast_no_front: ["Enter the car's sizes", "car-sheet"],
  ballast_no_left: ["Enter the car's sizes", "car-sheet"],
};

export function NoAnswer({ choice, places }: OfPlaces & { choice: BallastChoice }) {
  const { reason } = choice;
  const next = reason && NEXT[reason.code];
  return (
    <section class="ballast-answer" aria-label="How much, and where">
      <Warnings of={unaimedOf(choice)} />
      {reason ? <Warnings of={[reason]} /> : <Lacking kg={lacking(choice)} />}
      {next && <ButtonLink look="main" label={next[0]} href={to(next[1])} />}
      {!places.length && (
        <>
          <p>Note where ballast may be bolted in and what one block weighs; this screen then says how many go where.</p>
          <ButtonLink look={next ? "wide" : "main"} label="Add the first place" href={to("ballast", "new")} />
        </>
      )}
    </section>
  );
}

function Lacking({ kg }: { kg: number }) {
  if (!kg) return <p class="moves">The car is heavy enough without ballast.</p>;
  return (
    <>
      <p class="quiet small">Lacking to the minimum, with what to keep in hand</p>
      <MassFigure mass={uncertain(kg)} />
    </>
  );
}
