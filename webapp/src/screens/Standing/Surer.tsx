/** What one more weigh-in now would make of the doubt, scale by scale. */

import { book, known } from "../../answers";
import { nextSentence } from "../../core/fusion/fusionWords";
import { type Next, weighNext } from "../../core/fusion/weighNext";
import type { Fused } from "../../core/standing/estimate";
import { massUnit } from "../../garage/units";
import { ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { to } from "../../route";
import "../../parts/causes/causes.css";

export function Surer({ fused }: { fused: Fused }) {
  const found = weighNext(book.value, known.value, fused.fusion);
  if (!found.length) return null;
  return (
    <Section title="What would make it surer">
      <ul class="likely">
        {found.map((each) => (
          <li key={each.scale}>{nextSentence(each, nameOf(each), massUnit()).text}.</li>
        ))}
      </ul>
      <ButtonLink label="Weigh the whole car" href={to("weigh-car")} />
    </Section>
  );
}

/** As it stands within a sentence. */
function nameOf({ scale }: Next): string | null {
  const found = scale === null ? null : book.value.scales.get(scale);
  return found ? (found.name ?? "a scale without a name") : null;
}
