/** What a disagreement among weigh-ins may have been, the likeliest first: each with its records and what would mend it. */
import { causeSentence, isOne, likelySentence, type Names } from "../../core/causes/causeWords";
import { type Cause, isExplained, type Likely } from "../../core/causes/search";
import { garage } from "../../garage/garage";
import { save } from "../../garage/write";
import { CAUSE_SENTENCES } from "../../generated/causeSentences";
import { to } from "../../route";
import { Button, ButtonLink } from "../frame/Button";
import { TroubleNotice } from "../frame/Notice";
import { useSaving } from "../frame/saving";
import { momentOf, sayMoment } from "../words/moments";
import { refName } from "../words/naming";
import { mendOf, recordOf } from "./mends";
import "./causes.css";

/** A weigh-in by its day, everything else by its name. */
const names: Names = (kind, id) => {
  const weighIn = kind === "weigh_in" && garage.value.one("weigh_in", id);
  return (weighIn ? sayMoment(momentOf(weighIn)) : kind !== "weigh_in" && refName(id)) || "unknown date";
};

type Props = { causes: readonly Cause[]; here: string };

/** `here`: the weigh-in they stand with, to which no way of their own leads. */
export function Causes({ causes, here }: Props) {
  return (
    <div class="stack">
      {!isExplained(causes) && <p>{CAUSE_SENTENCES.unexplained}</p>}
      <ul class="causes">
        {causes.map((cause) => (
          <li key={cause.code} class="stack">
            <p>{causeSentence(cause, names).text}</p>
            {cause.likely.map((each) => (
              <Instance key={JSON.stringify(each.slip)} of={each} isAlone={isOne(cause)} here={here} />
            ))}
          </li>
        ))}
      </ul>
    </div>
  );
}

type Told = { of: Likely; isAlone: boolean /** Then the kind is told by it. */; here: string };

function Instance({ of, isAlone, here }: Told) {
  const saving = useSaving();
  const [found, mend] = [recordOf(of.slip), mendOf(of.slip)];
  const record = found && found.href !== to("weigh-in", here) ? found : null;
  if (!record && !mend && isAlone) return null;
  return (
    <div class="stack">
      {!isAlone && <p class="quiet">{likelySentence(of, names).text}</p>}
      <div class="pair">
        {record && <ButtonLink label={record.label} href={record.href} />}
        {mend && "href" in mend && <ButtonLink label={mend.label} href={mend.href} />}
        {mend && "changes" in mend && (
          <Button label={mend.label} disabled={saving.busy} onClick={() => saving.run(() => save(mend.changes()))} />
        )}
      </div>
      <TroubleNotice trouble={saving.trouble} />
    </div>
  );
}

/** That parts moved without a weight, and which. */
export function movedUnweighed(parts: readonly string[]): string {
  return CAUSE_SENTENCES.moved_unweighed.replace(/\.$/, `: ${parts.map(refName).join(", ")}.`);
}
