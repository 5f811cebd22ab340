/** What was done to a record, by whom and when; what still stands can be taken back, at any time later. */

import { historyOf, takeBack } from "../../garage/undo";
import type { Act } from "../../journal/history";
import { Disclosure } from "../controls/Disclosure";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { actWords } from "../words/acts";
import { deviceName } from "../words/deviceNames";
import { sayMoment } from "../words/moments";

const SHOWN = 50; // acts of one record, the latest

export function History({ of }: { of: string }) {
  const saving = useSaving();
  const acts = historyOf(of, SHOWN);
  if (acts.length === 0) return null;
  return (
    <Disclosure title="History">
      {acts.map((act) => (
        <div class="row" key={act.entry.id}>
          <span class="row-text">
            <span class="row-name">{actWords(act.entry, act.begins)}</span>
            <span class="small quiet">{byWhom(act)}</span>
          </span>
          {canUndo(act) && (
            <Button
              look="plain"
              label="Undo"
              aria-label={`Undo ${actWords(act.entry, act.begins)}`}
              onClick={() => void saving.run(() => takeBack([act.entry.id]))}
            />
          )}
        </div>
      ))}
      <TroubleNotice trouble={saving.trouble} />
    </Disclosure>
  );
}

/** Who did it and when, by that phone's clock. */
export function byWhom({ entry }: Pick<Act, "entry">): string {
  return [deviceName(entry.device), sayMoment(entry.made_at)].filter(Boolean).join(", ");
}

/** What made the record is taken back by deleting it. */
function canUndo({ stands, begins }: Act): boolean {
  return !begins && stands.length > 0;
}
