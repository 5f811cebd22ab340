/**
 * Which screen an address opens, and which of the five doors it stands behind.
 *
 * A screen is a folder of its own: `<Name>/<Name>.tsx` draws, and whatever it alone needs lies beside it.
 */
import type { VNode } from "preact";
import type { Place } from "../route";
import { Car } from "./Car/Car";
import { CarSheet } from "./CarSheet/CarSheet";
import { ClassSheet } from "./ClassSheet/ClassSheet";
import { Devices } from "./Devices/Devices";
import { Donor } from "./Donor/Donor";
import { Drivers } from "./Drivers/Drivers";
import { Job } from "./Job/Job";
import { Jobs } from "./Jobs/Jobs";
import { More } from "./More/More";
import { Part } from "./Part/Part";
import { Parts } from "./Parts/Parts";
import { Records } from "./Records/Records";
import { Scale } from "./Scale/Scale";
import { Scales } from "./Scales/Scales";
import { Stages } from "./Stages/Stages";
import { Standing } from "./Standing/Standing";
import { Units } from "./Units/Units";
import { Weigh } from "./Weigh/Weigh";
import { WeighCar } from "./WeighCar/WeighCar";
import { WeighIn } from "./WeighIn/WeighIn";
import { Weighing } from "./Weighing/Weighing";
import { WeighPart } from "./WeighPart/WeighPart";
import { Yard } from "./Yard/Yard";

type Door = "car" | "weigh" | "jobs" | "yard" | "more";
type Draw = (id: string | undefined, query: URLSearchParams) => VNode;

/** Address → door and screen. An id of "new" opens an empty form. */
const SCREENS: Record<string, [Door, Draw]> = {
  car: ["car", () => <Car />],
  standing: ["car", () => <Standing />],
  parts: ["car", (_, query) => <Parts show={query.get("show")} />],
  part: ["car", (id) => <Part key={id} id={id!} />],
  weighing: ["car", (id) => <Weighing key={id} id={id!} />],
  "weigh-in": ["car", (id) => <WeighIn key={id} id={id!} />],
  weigh: ["weigh", () => <Weigh />],
  "weigh-part": ["weigh", (id, query) => <WeighPart key={`${id}${query}`} of={id ?? null} replaces={query.get("replaces")} back={query.get("back")} />],
  "weigh-car": ["weigh", (_, query) => <WeighCar replaces={query.get("replaces")} />],
  jobs: ["jobs", () => <Jobs />],
  job: ["jobs", (id) => <Job key={id} id={id!} />],
  yard: ["yard", () => <Yard />],
  donor: ["yard", (id, query) => <Donor key={id} id={id!} insteadOf={query.get("instead-of")} />],
  more: ["more", () => <More />],
  "car-sheet": ["more", () => <CarSheet />],
  "class-sheet": ["more", () => <ClassSheet />],
  scales: ["more", () => <Scales />],
  scale: ["more", (id) => <Scale key={id} id={id!} />],
  drivers: ["more", () => <Drivers />],
  stages: ["more", () => <Stages />],
  devices: ["more", () => <Devices />],
  units: ["more", () => <Units />],
  records: ["more", () => <Records />],
};

export function screenFor({ path, query }: Place): { screen: VNode; door: Door } {
  const [door, draw] = SCREENS[path[0] ?? "car"] ?? SCREENS["car"]!;
  return { screen: draw(path[1], query), door };
}
