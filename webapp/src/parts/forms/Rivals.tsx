/** Corrections of one fact by people who had not seen each other's: one counts, all are shown, a tap says which is right. */

import type { Corrected } from "../../core/garage/corrections";
import { garage, type Rec } from "../../garage/garage";
import { type Change, save } from "../../garage/write";
import { to } from "../../route";
import { Button } from "../frame/Button";
import { Notice, TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { ADDRESS, type Fact } from "./corrected";

type Props<K extends Fact> = { rec: Rec<K>; fact: Corrected; shows: (rec: Rec<K>) => string };

export function Rivals<K extends Fact>({ rec, fact, shows }: Props<K>) {
  const saving = useSaving();
  const rivals = fact.rivals.map((id) => garage.value.one(rec.kind, id)!);
  const others = rivals.filter(({ id }) => id !== rec.id);
  const times = rivals.length === 2 ? "twice" : `${rivals.length} times`;
  return (
    <Notice sort="caution">
      <p>
        <strong>
          Corrected {times}: {standsHow(rec, fact, others.map(shows))}
        </strong>
      </p>
      {rivals.toReversed().map((rival) => (
        <Button
          key={rival.id}
          look="wide"
          label={tapWords(rival.id === rec.id ? "this one" : onlyOne(others, shows(rival)), rival.id === fact.counts)}
          onClick={() => saving.run(() => save(without(rec.kind, fact, rival.id)))}
        />
      ))}
      {others.map((other) => (
        <p key={other.id}>
          <a href={to(ADDRESS[rec.kind], other.id)}>Look at the one that shows {shows(other)}</a>
        </p>
      ))}
      <p class="small quiet">The rest is withdrawn and can be brought back.</p>
      <TroubleNotice trouble={saving.trouble} />
    </Notice>
  );
}

function standsHow(rec: Rec<Fact>, fact: Corrected, shown: readonly string[]): string {
  const [one, ...more] = shown;
  if (fact.counts !== rec.id) return more.length ? "this one does not count." : `the other counts, and shows ${one}.`;
  return more.length
    ? `this one counts, the others show ${shown.join(" and ")}.`
    : `this one counts, the other shows ${one}.`;
}

function tapWords(which: string, counts: boolean): string {
  return counts ? `Keep ${which}` : `Let ${which} count`;
}

function onlyOne(others: readonly unknown[], shown: string): string {
  return others.length === 1 ? "the other" : shown;
}

/** Withdraws every record of the fact but one and those that one took the place of. */
function without(kind: Fact, fact: Corrected, right: string): Change[] {
  const kept = new Set<string>();
  for (let id: string | undefined = right; id && !kept.has(id); id = garage.value.one(kind, id)?.values.replaces)
    kept.add(id);
  const wrong = fact.all
    .map((id) => garage.value.one(kind, id))
    .filter((rec) => rec && !rec.deleted && !kept.has(rec.id));
  return wrong.map((rec) => ({ kind, record: rec!.id, set: { deleted: true }, base: rec!.heads }));
}
