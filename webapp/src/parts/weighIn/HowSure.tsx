/** What is said beside the weight now and its ±: both answers where there are two, and that one weigh-in proves little. */

import { stand } from "../../answers";
import { eitherSentence, oneOnlySentence } from "../../core/standing/doubtSentences";
import type { Fused } from "../../core/standing/estimate";
import { massUnit } from "../../garage/units";
import { to } from "../../route";
import { dayOf } from "./dayOf";
import { LastUnsaid } from "./Unsaid";

/** On the first screen: with what was not said of the last weigh-in. */
export function BesideWeight() {
  return (
    <>
      <HowSure />
      <LastUnsaid />
    </>
  );
}

export function HowSure() {
  const { fused } = stand.value;
  const said = fused && (either(fused) ?? oneOnly(fused));
  return said ? (
    <p class="how-sure">
      {said.text}. <a href={to("weigh-car")}>Weigh the car</a>
    </p>
  ) : null;
}

function either({ answers, fusion }: Fused) {
  return eitherSentence(answers, massUnit(), dayOf(fusion.evidence.counted.at(-1)?.record.id));
}

function oneOnly({ fusion }: Fused) {
  return fusion.evidence.counted.length === 1 ? oneOnlySentence() : null;
}
