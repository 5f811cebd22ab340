/** From the car as it stood to the condition the class weighs it in: fuel and driver out, the class's in. */

import type { WholeCar } from "../../core/wholeCar/weighIn";
import { describe } from "../../errors";
import { Facts } from "../../parts/figures/Facts";
import { WeightNow } from "../../parts/figures/WeightNow";
import { ButtonLink } from "../../parts/frame/Button";
import { Section } from "../../parts/frame/Screen";
import { conditionRows } from "../../parts/weighIn/conditionRows";
import { HowSure } from "../../parts/weighIn/HowSure";
import { to } from "../../route";

const FUEL = { as_it_is: "as it is", empty: "empty tank", full: "full tank", stated: "as the class states" } as const;

export function ToCondition({ whole, driver }: { whole: WholeCar /** Who sat in it then. */; driver: string | null }) {
  const { condition, reason } = whole;
  const why = reason && describe(reason.code, reason.data);
  return (
    <Section
      title="As the class weighs it"
      aside={<ButtonLink look="plain" label="Class sheet" href={to("class-sheet")} />}
    >
      <p class="small quiet">
        The class weighs it with the driver {condition.driver}, fuel {FUEL[condition.fuel as keyof typeof FUEL]}.
      </p>
      <Facts rows={conditionRows(whole, driver)} />
      <WeightNow />
      <HowSure />
      {why && (
        <p>
          <strong>{why.sentence}</strong> {why.do}
        </p>
      )}
    </Section>
  );
}
