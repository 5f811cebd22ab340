/** Fields two people set without knowing of each other: both values, who and when; one tap settles which holds. */
import { useState } from "preact/hooks";
import { garage, type Head, type Rec } from "../../garage/garage";
import { deletion } from "../../garage/undo";
import { save } from "../../garage/write";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { Section } from "../../parts/frame/Screen";
import { useSaving } from "../../parts/frame/saving";
import { deviceName } from "../../parts/words/deviceNames";
import { fieldWord, valueWords } from "../../parts/words/fieldWords";
import { momentOfId, sayMoment } from "../../parts/words/moments";
import { kindWord, nameOf } from "../../parts/words/naming";

type Dispute = { rec: Rec; field: string; claims: Head[] };

export function Conflicts() {
  const [settled, setSettled] = useState<string | null>(null);
  const disputes = openDisputes([...garage.value.byId.values()]);
  if (!disputes.length && !settled) return null;
  return (
    <Section title={disputes.length ? `To settle (${disputes.length})` : "Settled"}>
      {disputes.length > 0 && (
        <p class="small quiet">
          Two phones wrote different things. The first stands until you choose; nothing was lost.
        </p>
      )}
      {settled && <Notice sort="saved">{settled}</Notice>}
      {disputes.map((dispute) => (
        <DisputeRow key={`${dispute.rec.id} ${dispute.field}`} dispute={dispute} onSettled={setSettled} />
      ))}
    </Section>
  );
}

function DisputeRow({
  dispute: { rec, field, claims },
  onSettled,
}: {
  dispute: Dispute;
  onSettled: (words: string) => void;
}) {
  const saving = useSaving();
  const choose = (claim: Head) =>
    saving.run(async () => {
      const gone = field === "deleted" && claim.value === true;
      const set = gone ? deletion(rec.kind, rec.id).set : { [field]: claim.value };
      await save([{ kind: rec.kind, record: rec.id, set, base: rec.heads }]);
      onSettled(
        `Settled on this phone: ${nameOf(rec)}, ${fieldWord(rec.kind, field)}: ${valueWords(rec.kind, field, claim.value)}.`,
      );
    });
  return (
    <div class="dispute">
      <h3>
        {nameOf(rec)}{" "}
        <span class="quiet">
          ({kindWord(rec.kind)}): {fieldWord(rec.kind, field)}
        </span>
      </h3>
      <div class="claims">
        {claims.map((claim) => (
          <button
            key={claim.entry}
            type="button"
            class="claim-button"
            disabled={saving.busy}
            onClick={() => choose(claim)}
          >
            <span class="claimed num">{valueWords(rec.kind, field, claim.value)}</span>
            <span class="by">
              {deviceName(claim.device)}, {sayMoment(momentOfId(claim.entry))}
            </span>
          </button>
        ))}
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}

/** Every field in dispute, with each differing value once. */
export function openDisputes(records: readonly Rec[]): Dispute[] {
  return records.flatMap((rec) =>
    Object.entries(rec.conflicts).map(([field, heads]) => ({ rec, field, claims: onceEach(heads) })),
  );
}

function onceEach(heads: readonly Head[]): Head[] {
  const seen = new Set<string>();
  return heads.filter(({ value }) => {
    const text = JSON.stringify(value);
    return !seen.has(text) && seen.add(text);
  });
}
