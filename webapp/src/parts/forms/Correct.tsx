/** A fact is never edited: it is replaced by a new reading, or withdrawn and, if that was wrong, taken back. */

import { useState } from "preact/hooks";
import type { Rec } from "../../garage/garage";
import { save } from "../../garage/write";
import { place, to } from "../../route";
import { Unsettled } from "../conflicts/Unsettled";
import { Button, ButtonLink } from "../frame/Button";
import { Notice, TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { ADDRESS, correctedOf, type Fact } from "./corrected";
import { Rivals } from "./Rivals";

type Shown<K extends Fact> = {
  rec: Rec<K> /** What a reading of this sort comes to. */;
  shows: (rec: Rec<K>) => string;
};

/** Whether the fact still counts, and if not, why. */
export function CountsOrNot<K extends Fact>({ rec, shows }: Shown<K>) {
  const fact = correctedOf(rec);
  const isRival = fact !== null && fact.rivals.length > 1 && fact.rivals.includes(rec.id);
  const newer = fact && !rec.deleted && !fact.rivals.includes(rec.id) ? fact.counts : null;
  const older = rec.values.replaces;
  const address = ADDRESS[rec.kind];
  return (
    <>
      <Unsettled of={rec.id} />
      {place.value.query.get("saved") && (
        <Notice sort="saved">
          <p>
            <strong>Saved on this phone.</strong>
          </p>
        </Notice>
      )}
      {rec.deleted && (
        <Notice sort="caution">
          <p>
            <strong>Withdrawn: it does not count.</strong> It stays here to be looked at.
          </p>
        </Notice>
      )}
      {newer && (
        <Notice sort="caution">
          <p>
            <strong>A newer reading took its place: this one does not count.</strong>
          </p>
          <p>
            <a href={to(address, newer)}>Look at the newer one</a>
          </p>
        </Notice>
      )}
      {isRival && <Rivals rec={rec} fact={fact} shows={shows} />}
      {typeof older === "string" && (
        <p class="small quiet">
          It took the place of <a href={to(address, older)}>an earlier reading</a>.
        </p>
      )}
    </>
  );
}

type Correctable = { rec: Rec<Fact> /** Where the reading of this id is replaced. */; again: (id: string) => string };

export function Correct({ rec, again }: Correctable) {
  const fact = correctedOf(rec);
  const isReplaced = fact !== null && !fact.rivals.includes(rec.id);
  const [asked, setAsked] = useState(false);
  const saving = useSaving();
  const withdraw = (deleted: boolean) =>
    saving.run(async () => {
      await save([{ kind: rec.kind, record: rec.id, set: { deleted }, base: rec.heads }]);
      setAsked(false);
    });
  return (
    <div class="section stack">
      {!rec.deleted && (
        <ButtonLink look="wide" label="Replace with a new reading" href={again(fact?.counts ?? rec.id)} />
      )}
      {rec.deleted && <Button look="wide" label="Let it count again" onClick={() => withdraw(false)} />}
      {!rec.deleted && !isReplaced && !asked && (
        <Button look="plain" label="Withdraw it" onClick={() => setAsked(true)} />
      )}
      {asked && (
        <Notice sort="caution">
          <p>It will count no more, on every phone. It stays in the records and can be brought back.</p>
          <div class="pair">
            <Button label="Keep it" onClick={() => setAsked(false)} />
            <Button label="Withdraw" onClick={() => withdraw(true)} />
          </div>
        </Notice>
      )}
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}
