/** A field two people set without knowing of each other: the values, by whom and when; one tap settles which holds. */
import type { Value } from "../../garage/garage";
import { deletion } from "../../garage/undo";
import { type Dispute, disputesOn } from "../../garage/unsettled";
import { save } from "../../garage/write";
import { Button } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { deviceName } from "../words/deviceNames";
import { fieldWord } from "../words/fieldWords";
import { momentOfId, sayMoment } from "../words/moments";
import { kindWord, nameOf } from "../words/naming";
import { bothTexts, claimWords, deletionWords } from "./words";
import "./conflicts.css";

/** With the record's name, where that is not plain from the place. */
export function DisputeRow({ dispute }: { dispute: Dispute }) {
  const { rec, field } = dispute;
  return (
    <div class="dispute">
      <h3>
        {nameOf(rec)}{" "}
        <span class="quiet">
          ({kindWord(rec.kind)}){field !== "deleted" && `: ${fieldWord(rec.kind, field)}`}
        </span>
      </h3>
      <Claims dispute={dispute} />
    </div>
  );
}

/** Below the field itself, if it is in dispute. */
export function InDispute({ record, field }: { record: string; field: string }) {
  const dispute = disputesOn(record).find((each) => each.rec.id === record && each.field === field);
  if (!dispute) return null;
  return (
    <div class="dispute" role="group" aria-label={`To settle: ${fieldWord(dispute.rec.kind, field)}`}>
      <p class="small">
        <strong>Two phones wrote different things.</strong> The first counts until you choose.
      </p>
      <Claims dispute={dispute} />
    </div>
  );
}

function Claims({ dispute }: { dispute: Dispute }) {
  const { rec, field, claims } = dispute;
  const saving = useSaving();
  const both = bothTexts(dispute);
  const settle = (value: Value) => {
    const isGone = field === "deleted" && value === true;
    const set = isGone ? deletion(rec.kind, rec.id).set : { [field]: value };
    return saving.run(() => save([{ kind: rec.kind, record: rec.id, set, base: rec.heads }]));
  };
  return (
    <>
      {field === "deleted" && <p>{deletionWords(rec)}</p>}
      <div class="claims">
        {claims.map(({ entry, value, device }) => (
          <button
            key={entry}
            type="button"
            class="claim-button"
            disabled={saving.busy}
            onClick={() => void settle(value)}
          >
            <span class="claimed num">{claimWords(dispute, value)}</span>
            <span class="by">
              {deviceName(device)}, {sayMoment(momentOfId(entry))}
            </span>
          </button>
        ))}
      </div>
      {both !== null && <Button label="Keep both" disabled={saving.busy} onClick={() => void settle(both)} />}
      <TroubleNotice trouble={saving.trouble} />
    </>
  );
}
