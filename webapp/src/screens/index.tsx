/**
 * Which screen an address opens, and which of the five doors it stands behind.
 *
 * A screen is a folder of its own: `<Name>/<Name>.tsx` draws, and whatever it alone needs lies beside it. The first screen comes
 * with the app; every other one is a file of its own, which the service worker keeps, so it opens without a server too.
 */
import type { VNode } from "preact";
import { car } from "../answers";
import { own } from "../own";
import { Loaded } from "../parts/frame/Loaded";
import type { Address, Place } from "../route";
import { Car } from "./Car/Car";

type Door = "car" | "weigh" | "jobs" | "yard" | "more";
type Opened = { door: Door; draw: (address: Address) => VNode };

/** Drawn anew for another record, and for a new one at every visit; `by` the whole address, for another query too. */
function later(door: Door, load: () => Promise<(address: Address) => VNode | null>, by: "id" | "whole" = "id"): Opened {
  const key = ({ id, query, visit }: Address) => `${id}${id === "new" ? visit : ""}${by === "whole" ? query : ""}`;
  const draw = (address: Address) => (
    <Loaded load={load} draw={(Screen) => <Screen key={key(address)} {...address} />} />
  );
  return { door, draw };
}

const welcome = later("car", async () => (await import("./Welcome/Welcome")).Welcome);

/** Address → door and screen. An id of "new" opens an empty form. */
const SCREENS: Record<string, Opened> = {
  car: { door: "car", draw: (address) => (car.value ? <Car /> : welcome.draw(address)) },
  standing: later("car", async () => (await import("./Standing/Standing")).Standing),
  fuel: later("car", async () => (await import("./Fuel/Fuel")).Fuel),
  balance: later("car", async () => (await import("./Balance/Balance")).Balance),
  parts: later("car", async () => (await import("./Parts/Parts")).Parts),
  part: later("car", async () => (await import("./Part/Part")).Part),
  weighing: later("car", async () => (await import("./Weighing/Weighing")).Weighing),
  ballast: later("car", async () => (await import("./Ballast/Ballast")).Ballast),
  "weigh-in": later("car", async () => (await import("./WeighIn/WeighIn")).WeighIn),
  lift: later("car", async () => (await import("./Lift/Lift")).Lift, "whole"),
  "load-transfer": later("car", async () => (await import("./LoadTransfer/LoadTransfer")).LoadTransfer),
  weigh: later("weigh", async () => (await import("./Weigh/Weigh")).Weigh),
  "weigh-part": later("weigh", async () => (await import("./WeighPart/WeighPart")).WeighPart, "whole"),
  swap: later("weigh", async () => (await import("./Swap/Swap")).Swap, "whole"),
  "weigh-car": later("weigh", async () => (await import("./WeighCar/WeighCar")).WeighCar, "whole"),
  sheet: later("more", async () => (await import("./Sheet/Sheet")).Sheet, "whole"),
  jobs: later("jobs", async () => (await import("./Jobs/Jobs")).Jobs, "whole"),
  job: later("jobs", async () => (await import("./Job/Job")).Job),
  "loose-ends": later("jobs", async () => (await import("./LooseEnds/LooseEnds")).LooseEnds),
  yard: later("yard", async () => (await import("./Yard/Yard")).Yard),
  donor: later("yard", async () => (await import("./Donor/Donor")).Donor),
  more: later("more", async () => (await import("./More/More")).More),
  "car-sheet": later("more", async () => (await import("./CarSheet/CarSheet")).CarSheet),
  "class-sheet": later("more", async () => (await import("./ClassSheet/ClassSheet")).ClassSheet),
  scales: later("more", async () => (await import("./Scales/Scales")).Scales),
  scale: later("more", async () => (await import("./Scale/Scale")).Scale),
  drivers: later("more", async () => (await import("./Drivers/Drivers")).Drivers),
  stages: later("more", async () => (await import("./Stages/Stages")).Stages),
  devices: later("more", async () => (await import("./Devices/Devices")).Devices),
  units: later("more", async () => (await import("./Units/Units")).Units),
  bin: later("more", async () => (await import("./Bin/Bin")).Bin),
  records: later("more", async () => (await import("./Records/Records")).Records),
};

export function screenFor({ path, query, visit }: Place): { name: string; screen: VNode; door: Door } {
  const name = own(SCREENS, path[0] ?? "") ? path[0]! : "car";
  const { door, draw } = SCREENS[name]!;
  return { name, screen: draw({ id: path[1] ?? "", query, visit }), door };
}
