/** The three things to do that narrow ± most per minute, each at one tap; tried one after the other, so nothing stalls. */

import { useEffect, useState } from "preact/hooks";
import { book, stand } from "../../answers";
import { loweringSentence } from "../../core/fusion/fusionWords";
import type { Lowering } from "../../core/fusion/lowering";
import { bestOf, lowered, trialsOf } from "../../core/standing/lowerDoubt";
import { asked } from "../../core/standing/trials";
import { massUnit } from "../../garage/units";
import { Row } from "../../parts/figures/Row";
import { momentNow } from "../../parts/words/momentFields";
import { to } from "../../route";

export function Lowerings() {
  const [found, setFound] = useState<readonly Lowering[] | null>(null);
  const garage = book.value;
  useEffect(() => {
    let isWanted = true;
    setFound(null);
    void tried(() => isWanted).then((best) => isWanted && setFound(best));
    return () => {
      isWanted = false;
    };
  }, [garage]);
  if (!found) return <p class="small quiet">Trying what would help…</p>;
  if (!found.length) return <p>Nothing to weigh or check now would make it surer by a tenth of a kilogram.</p>;
  return (
    <>
      <div>
        {found.map((each) => (
          <Row
            key={`${each.way} ${each.of}`}
            name={loweringSentence(each, nameOf(each.of), nameOf(each.on), massUnit()).text}
            href={placeOf(each)}
          />
        ))}
      </div>
      <p class="small quiet">Best for the minutes first, if the readings come out as expected.</p>
    </>
  );
}

/** A standing for each, with a breath between for the thumb. */
async function tried(isWanted: () => boolean): Promise<Lowering[]> {
  const { condition, risk } = stand.value;
  const now = asked(book.value, momentNow().slice(0, 10), risk, condition.class_sheet);
  const found: Lowering[] = [];
  for (const trial of now ? trialsOf(now) : []) {
    await new Promise((resolve) => setTimeout(resolve));
    if (!isWanted()) return [];
    if (now) found.push(lowered(now, trial));
  }
  return bestOf(found);
}

/** As it stands within a sentence. */
function nameOf(id: string | null): string | null {
  if (id === null) return null;
  const { scales, parts, drivers } = book.value;
  const name = (scales.get(id) ?? parts.get(id) ?? drivers.get(id))?.name;
  return name ?? (scales.has(id) ? "a scale without a name" : "what has no name");
}

function placeOf({ way, of }: Lowering): string {
  if (way === "check" && of) return to("scale", of);
  return way === "weigh" && of ? to("weigh-part", of, { back: to("standing") }) : to("weigh-car");
}
