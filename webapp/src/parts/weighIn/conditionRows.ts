/** How a whole car gets from the scales to the condition the class weighs it in, line by line. */
import { say } from "../../answers";
import type { Uncertain } from "../../core/numbers/uncertain";
import type { WholeCar } from "../../core/wholeCar/weighIn";
import type { Fact } from "../figures/Facts";
import { refName } from "../words/naming";

/** The steps from the scales to the class's condition. `inSeat`: the driver who sat in it, where somebody said who. */
export function conditionRows({ loads, condition, fuel, driver, weight }: WholeCar, inSeat: string | null): Fact[] {
  const total = loads.loads.total;
  const stays = condition.lightest !== null && condition.lightest === inSeat;
  const rows: (Fact | null)[] = [
    total ? { name: "As it stood", value: say(total) } : null,
    condition.fuel === "as_it_is"
      ? { name: "Fuel", value: "as it is in the tank" }
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
    weight ? { name: "In the class's condition, by this weigh-in alone", value: say(weight) } : null,
  ];
  return rows.filter((row) => row !== null);
}

const minus = (mass: Uncertain): string => `− ${say(mass)}`;
const plus = (mass: Uncertain): string => `+ ${say(mass)}`;
