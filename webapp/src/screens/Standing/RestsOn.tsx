/**
 * On what the ± rests: that everything since is written down, and that the scale repeats as its record says.
 *
 * Where there are two answers, these tell already why readings differ.
 */

import { book } from "../../answers";
import { showDoubt } from "../../core/numbers/shown";
import { scatterSentence, sinceSentence } from "../../core/standing/doubtSentences";
import type { Fused } from "../../core/standing/estimate";
import { massUnit } from "../../garage/units";
import { save } from "../../garage/write";
import { Button, ButtonLink } from "../../parts/frame/Button";
import { Notice, TroubleNotice } from "../../parts/frame/Notice";
import { useSaving } from "../../parts/frame/saving";
import { to } from "../../route";
import { dayOf } from "./weighInName";

export function RestsOn({ fused }: { fused: Fused }) {
  const last = fused.fusion.evidence.counted.at(-1)?.record.id;
  return (
    <>
      <p class="quiet">{sinceSentence(dayOf(last)).text}.</p>
      {fused.scatter && fused.answers.length === 1 && <Scattered of={fused.scatter} />}
    </>
  );
}

/** What would explain it is noted on the scale at one tap; that is an act like any other, and can be taken back. */
function Scattered({ of }: { of: NonNullable<Fused["scatter"]> }) {
  const saving = useSaving();
  const scale = book.value.scales.get(of.scale ?? "");
  const repeats = showDoubt(of.repeats, massUnit());
  const note = (record: string) => {
    return saving.run(() => save([{ kind: "scale", record, set: { repeatability: repeats } }]));
  };
  return (
    <Notice sort="caution">
      <p>{scatterSentence(of, scale?.name ?? "a scale without a name", massUnit()).text}.</p>
      {scale && (
        <div class="pair">
          <Button label={`Note it: repeats to ${repeats}`} disabled={saving.busy} onClick={() => note(scale.id)} />
          <ButtonLink label="Look at the scale" href={to("scale", scale.id)} />
        </div>
      )}
      <TroubleNotice trouble={saving.trouble} />
    </Notice>
  );
}
