/** What a disagreement among weigh-ins most likely is, the likeliest first. */
import { causeSentence, isOne, likelySentence, type Names } from "../../core/causes/causeWords";
import { type Cause, isExplained } from "../../core/causes/search";
import { garage } from "../../garage/garage";
import { CAUSE_SENTENCES } from "../../generated/causeSentences";
import { sayMoment } from "../words/moments";
import { refName } from "../words/naming";
import "./Likely.css";

const names: Names = (kind, id) => {
  if (kind !== "weigh_in") return refName(id);
  return sayMoment(garage.value.byId.get(id)?.values.at as string | undefined) || "unknown date";
};

export function Likely({ causes }: { causes: readonly Cause[] }) {
  return (
    <div class="stack">
      {!isExplained(causes) && <p>{CAUSE_SENTENCES.unexplained}</p>}
      <ul class="likely">
        {causes.map((cause) => (
          <li key={cause.code}>
            {causeSentence(cause, names).text}
            {!isOne(cause) && cause.likely.map((each) => <p class="quiet">{likelySentence(each, names).text}</p>)}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** That parts moved without a weight, and which. */
export function movedUnweighed(parts: readonly string[]): string {
  return CAUSE_SENTENCES.moved_unweighed.replace(/\.$/, `: ${parts.map(refName).join(", ")}.`);
}
