/** What a disagreement among weigh-ins most likely is, the likeliest first. */
import type { Cause } from "../../core/fusion/causes";
import { causeSentence } from "../../core/fusion/fusionWords";
import { refName } from "../words/naming";
import "./Likely.css";

type Props = { causes: readonly Cause[]; unweighed?: readonly string[] };

/** `unweighed`: ids of the parts that moved without a weight, where the sentence about them should name them. */
export function Likely({ causes, unweighed = [] }: Props) {
  return (
    <div class="stack">
      <p>Look at these first:</p>
      <ul class="likely">
        {causes.map((cause) => (
          <li key={cause}>{cause === "moved_unweighed" ? movedUnweighed(unweighed) : causeSentence(cause).text}</li>
        ))}
      </ul>
    </div>
  );
}

/** That parts moved without a weight, and which. */
export function movedUnweighed(parts: readonly string[]): string {
  const { text } = causeSentence("moved_unweighed");
  return parts.length ? text.replace(/\.$/, `: ${parts.map(refName).join(", ")}.`) : text;
}
