/** The weigh-ins the weight is made of, each with the weight now by it alone and its share; and those that cannot count. */
import { say, stand } from "../../answers";
import { showPercent } from "../../core/numbers/shown";
import { type Counted, countedOf } from "../../core/standing/counted";
import type { Fused } from "../../core/standing/estimate";
import { describe } from "../../errors";
import { Row } from "../../parts/figures/Row";
import { to } from "../../route";
import { isOfficial, weighInName } from "./weighInName";

export function WeighInsOf({ fused }: { fused: Fused }) {
  const counted = countedOf(fused.fusion);
  const isAlone = counted.length === 1;
  return (
    <>
      {counted.reverse().map((each) => (
        <Row
          key={each.weigh_in}
          name={weighInName(each.weigh_in)}
          note={isAlone ? alone(each) : share(each)}
          value={say(each.alone)}
          href={to("weigh-in", each.weigh_in)}
        />
      ))}
      {Object.entries(fused.left_out).map(([weighIn, { code, data }]) => (
        <Row
          key={weighIn}
          name={weighInName(weighIn)}
          note={`left out: ${describe(code, data).sentence}`}
          href={to("weigh-in", weighIn)}
        />
      ))}
      {!isAlone && (
        <p class="small quiet">
          Beside each: the weight now by that weigh-in and the jobs since, as the class weighs. The surer one counts for
          more.
        </p>
      )}
    </>
  );
}

const alone = ({ weigh_in }: Counted): string =>
  `${isOfficial(weigh_in) ? "official" : "own scales"}, with the jobs since, as the class weighs`;

function share({ weigh_in, share }: Counted): string {
  const scales = isOfficial(weigh_in) ? "official" : "own scales";
  const shown = showPercent(share);
  if (shown === showPercent(1)) return `${scales} · it alone counts`;
  if (shown !== showPercent(0)) return `${scales} · counts for ${shown}`;
  const isLast = stand.value.fused?.fusion.evidence.counted.at(-1)?.record.id === weigh_in;
  return `${scales} · does not count: ${stand.value.fused?.answers[0]?.off && isLast ? "it is off in the weight shown" : "the others say it surer"}`;
}
