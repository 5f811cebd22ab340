/** What is doubtful about a scale's check: a reading it cannot show, or a slip that would explain it, in either mass. */
import { book } from "../../answers";
import type { Quantity } from "../../core/numbers/quantity";
import { UNKNOWN } from "../../core/weighing/display";
import { knownOfCheck } from "../../core/weighing/known";
import { slipInLoads } from "../../core/weighing/slips";
import { misreading } from "../../parts/weighing/misreading";
import type { Doubt } from "../../parts/weighing/Question";
import { againstWords, slipWords } from "../../parts/weighing/slipWords";

export type Masses = Partial<Record<"known" | "shown", string>>;

/** The first doubt there is; null when all is as it should be. `known`: put on; `shown`: what the scale said of it. */
export function doubtOf(scale: string, known: Quantity, shown: Quantity): Doubt<Masses> | null {
  const display = book.value.scales.get(scale) ?? UNKNOWN;
  const unshown = misreading([["shown", shown]], display);
  if (unshown) return unshown;
  const read = slipInLoads([shown], display, knownOfCheck(known.value));
  const put = slipInLoads([known], UNKNOWN, knownOfCheck(shown.value));
  const slipped = read ?? put;
  if (!slipped) return null;
  const [showed, weighs] = [read?.looks[0]?.reads, put?.looks[0]?.reads];
  return {
    sort: "slip",
    says: slipWords(slipped.slip, [read ? shown : known], slipped.looks),
    against: read ? againstWords(read.against) : `The scale showed ${shown.reads}.`,
    likely: [
      ...(showed ? [{ label: `It showed ${showed}`, change: { shown: showed } }] : []),
      ...(weighs ? [{ label: `It weighs ${weighs}`, change: { known: weighs } }] : []),
    ],
    typed: read ? shown.reads : known.reads,
  };
}
