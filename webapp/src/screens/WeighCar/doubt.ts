/** What is doubtful about the looks of a whole car: one its scales cannot show, or a slip that would explain the total. */
import { book, stand } from "../../answers";
import { type Quantity, readMass } from "../../core/numbers/quantity";
import { UNKNOWN } from "../../core/weighing/display";
import { knownOfCar } from "../../core/weighing/known";
import { slipInLoads } from "../../core/weighing/slips";
import { LOOKS, type Reading } from "../../core/wholeCar/weighIn";
import { misreading } from "../../parts/weighing/misreading";
import type { Doubt } from "../../parts/weighing/Question";
import { againstWords, slipWords } from "../../parts/weighing/slipWords";
import type { CarForm } from "./form";

export type Looks = Partial<Record<Reading, string>>;

/** The first doubt there is; null when all is as it should be. `form`: one that nothing is missing of. */
export function doubtOf(form: CarForm, replaces: string | null): Doubt<Looks> | null {
  const names = LOOKS[form.layout];
  const looks = names.map((name) => readMass(form[name], form.unit));
  const display = book.value.scales.get(form.scale ?? "") ?? UNKNOWN;
  const unshown = misreading(
    looks.map((look, at) => [names[at]!, look] as const),
    display,
  );
  if (unshown) return unshown;
  // What is replaced may be what slipped: then only the class tells about where a car weighs.
  const { weight, minimum } = stand.value;
  const slipped = slipInLoads(looks, display, knownOfCar(replaces ? null : (weight?.value ?? null), minimum));
  if (!slipped) return null;
  const changed = names.flatMap((name, at) => {
    const [before, after] = [looks[at] as Quantity, slipped.looks[at] as Quantity];
    return before.reads === after.reads ? [] : [{ name, before, after }];
  });
  const [before, after] = [changed.map((each) => each.before), changed.map((each) => each.after)];
  return {
    sort: "slip",
    says: slipWords(slipped.slip, before, after),
    against: againstWords(slipped.against),
    likely: [
      {
        label: after.length > 1 ? `They were in ${after[0]?.unit}` : `It was ${after[0]?.reads}`,
        change: Object.fromEntries(changed.map(({ name, after: { reads } }) => [name, reads])),
      },
    ],
    typed: before.length > 1 ? "them" : (before[0]?.reads ?? ""),
  };
}
