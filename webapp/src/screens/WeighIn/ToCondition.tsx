/** From the car as it stood to the condition the class weighs it in: fuel and driver out, the class's in. */
import { say } from "../../answers";
import type { Uncertain } from "../../core/uncertain";
import type { WholeCar } from "../../core/weighIn";
import { describe } from "../../generated/errors";
import { refName } from "../../parts/naming";
import { Facts, type Fact } from "../../parts/Facts";
import { Section } from "../../parts/Screen";
import { to } from "../../route";

const FUEL = { as_it_is: "as it is", empty: "empty tank", full: "full tank", stated: "as the class states" } as const;

export function ToCondition({ whole, driver }: { whole: WholeCar; /** Who sat in it then. */ driver: string | null }) {
  const { condition, reason } = whole;
  const why = reason && describe(reason.code, reason.data);
  return (
    <Section
      title="As the class weighs it"
      aside={
        <a class="button plain" href={to("class-sheet")}>
          Class sheet
        </a>
      }
    >
      <p class="small quiet">
        The class weighs it with the driver {condition.driver}, fuel {FUEL[condition.fuel as keyof typeof FUEL]}.
      </p>
      <Facts rows={rowsOf(whole, driver)} />
      {why && (
        <p>
          <strong>{why.sentence}</strong> {why.do}
        </p>
      )}
    </Section>
  );
}

function rowsOf({ loads, condition, fuel, driver, weight }: WholeCar, inSeat: string | null): Fact[] {
  const total = loads.loads.total;
  const stays = condition.lightest !== null && condition.lightest === inSeat;
  const rows: (Fact | null)[] = [
    total ? { name: "As it stood", value: say(total) } : null,
    condition.fuel === "as_it_is"
      ? null
      : fuel
        ? { name: "Fuel out", value: minus(fuel) }
        : { name: "Fuel out", value: "not noted then" },
    condition.fuel_mass ? { name: "Class's fuel in", value: plus(condition.fuel_mass) } : null,
    stays ? { name: "Driver", value: "stays in, the same" } : null,
    driver && driver.value > 0 && !stays ? { name: "Driver out", value: minus(driver) } : null,
    condition.driver_mass && !stays
      ? {
          name: `${condition.lightest ? refName(condition.lightest) : "Driver"} in`,
          value: plus(condition.driver_mass),
        }
      : null,
    weight ? { name: "In the class's condition", value: say(weight) } : null,
  ];
  return rows.filter((row) => row !== null);
}

const minus = (mass: Uncertain): string => `− ${say(mass)}`;
const plus = (mass: Uncertain): string => `+ ${say(mass)}`;
