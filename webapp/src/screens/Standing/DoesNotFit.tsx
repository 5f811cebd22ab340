/** What does not fit among the weigh-ins: how much, between which of them, and what it most likely is. */

import { account } from "../../account";
import { book, known } from "../../answers";
import { changeSentence } from "../../core/causes/causeWords";
import { type Change, changesOf } from "../../core/causes/changes";
import type { Fused } from "../../core/standing/estimate";
import { nowOf } from "../../core/wholeCar/weighed";
import { massUnit } from "../../garage/units";
import { Causes } from "../../parts/causes/Causes";
import { ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import { dayOf } from "./weighInName";

export function DoesNotFit({ fused }: { fused: Fused }) {
  const asked = { garage: book.value, known: known.value, nets: account.value.jobs, now: nowOf(book.value).jobs };
  const found = changesOf(asked, fused.fusion);
  const [first, ...others] = found;
  if (!first) return null;
  const isOne = others.length > 0 && others.every(({ causes }) => causes === first.causes);
  return (
    <Section title="What does not fit">
      {found.map((change) => (
        <Told key={`${change.first} ${change.second}`} change={change} isOne={isOne} />
      ))}
      {isOne && (
        <div class="stack">
          <p>One slip may explain all of it:</p>
          <Causes causes={first.causes} here="" />
        </div>
      )}
    </Section>
  );
}

function Told({ change, isOne }: { change: Change; isOne: boolean /** One slip explains all. */ }) {
  return (
    <div class="stack">
      <p>
        <strong>{changeSentence(change, massUnit()).text}.</strong> {place(change)}
      </p>
      {!isOne && <Causes causes={change.causes} here={change.second} />}
      <ButtonLink label="Look at that weigh-in" href={to("weigh-in", change.second)} />
    </div>
  );
}

function place({ kind, first, second, earliest, latest }: Change): string {
  if (kind === "outlier") return `It is that of ${dayOf(first)}.`;
  const between = `Between the weigh-ins of ${dayOf(first)} and ${dayOf(second)}`;
  if (earliest === first && latest === second) return `${between}.`;
  return `${between} most likely; at least between ${dayOf(earliest)} and ${dayOf(latest)}.`;
}
