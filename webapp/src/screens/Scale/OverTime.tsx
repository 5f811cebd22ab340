/** What the scale was believed to be day by day: a drawing whose days can be tapped, its table, when a check pays. */

import { book, known, stand } from "../../answers";
import { groups } from "../../core/fusion/behaviour";
import { type Ageing, type Belief, believed } from "../../core/fusion/believed";
import { checkSentence } from "../../core/fusion/fusionWords";
import { showPlain } from "../../core/numbers/shown";
import { Disclosure } from "../../parts/controls/Disclosure";
import { Row } from "../../parts/figures/Row";
import { Section } from "../../parts/frame/Screen";
import { momentNow } from "../../parts/words/momentFields";
import { sayMoment } from "../../parts/words/moments";
import { go, to } from "../../route";
import { Days } from "./Days";

/** What a gain makes of a load of 1000 kg, or of 1000 lb. */
const PER = 1000;
const say = (gain: number, within?: number) => showPlain(PER * gain, "kg", within && PER * within, true);

export function OverTime({ scale }: { scale: string }) {
  const ageing = overTime(scale);
  const pays = checkSentence(ageing, sayMoment);
  const open = ({ sort, record }: Belief) => {
    if (sort === "weigh_in" && record) go(to("weigh-in", record));
    if (sort === "check") document.getElementById(`check-${record}`)?.scrollIntoView({ block: "center" });
  };
  if (ageing.beliefs.length < 2) return pays && <p>{pays.text}.</p>;
  return (
    <Section title="How true it has been">
      <Days ageing={ageing} onOpen={open} />
      <p class="small quiet">A weight is a check, a notch a weigh-in: tap one to open it.</p>
      <p>{toldOf(ageing)}</p>
      {pays && (
        <p>
          <strong>{pays.text}.</strong>
        </p>
      )}
      <Disclosure title="Day by day">
        <div>
          {ageing.beliefs.map((each) => (
            <Row
              key={`${each.sort} ${each.record}`}
              name={nameOf(each)}
              note={each.read === null ? undefined : `the check alone: ${say(each.read)}`}
              value={say(each.gain, 2 * each.u)}
              {...(each.record && { onTap: () => open(each) })}
            />
          ))}
        </div>
        <p class="small quiet">
          In each 1000 kg; + is too much, − too little. ± means: true 19 times in 20. All that the weigh-ins tell of the
          scale is in it, so an earlier day may change with a later weigh-in.
        </p>
      </Disclosure>
    </Section>
  );
}

function overTime(scale: string): Ageing {
  const fusion = stand.value.fused?.fusion ?? null;
  const among = fusion ? groups(book.value, known.value.scales, fusion.evidence.counted) : [];
  return believed(book.value, known.value, fusion, among, scale, momentNow().slice(0, 10));
}

function nameOf({ at, sort }: Belief): string {
  if (sort === "day") return "Today";
  return `${sort === "check" ? "Check" : "Weigh-in"} of ${sayMoment(at)}`;
}

function toldOf({ beliefs }: Ageing): string {
  const { gain, u } = beliefs.at(-1) as Belief;
  return `Today it is off by ${say(gain, 2 * u)} in each 1000 kg.`;
}
