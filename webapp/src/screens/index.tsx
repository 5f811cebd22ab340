/**
 * Which screen an address opens, and which of the five doors it stands behind.
 *
 * A screen is a folder of its own: `<Name>/<Name>.tsx` draws, and whatever it alone needs lies beside it. The first screen comes
 * with the app; every other one is a file of its own, which the service worker keeps, so it opens without a server too.
 */
import type { ComponentChildren, VNode } from "preact";
import { car } from "../answers";
import { own } from "../own";
import { Loaded } from "../parts/frame/Loaded";
import type { Place } from "../route";
import { Car } from "./Car/Car";

type Door = "car" | "weigh" | "jobs" | "yard" | "more";
type Draw = (id: string, query: URLSearchParams) => VNode;
type Opened = { door: Door; draw: Draw };

function later<M>(
  door: Door,
  load: () => Promise<M>,
  draw: (screen: M, id: string, query: URLSearchParams) => ComponentChildren,
): Opened {
  return { door, draw: (id, query) => <Loaded load={load} draw={(screen) => draw(screen, id, query)} /> };
}

/** Until there is a car to look at. */
function Welcome() {
  return <Loaded load={() => import("./Welcome/Welcome")} draw={({ Welcome }) => <Welcome />} />;
}

/** Address → door and screen. An id of "new" opens an empty form. */
const SCREENS: Record<string, Opened> = {
  car: { door: "car", draw: () => (car.value ? <Car /> : <Welcome />) },
  standing: later(
    "car",
    () => import("./Standing/Standing"),
    ({ Standing }) => <Standing />,
  ),
  fuel: later(
    "car",
    () => import("./Fuel/Fuel"),
    ({ Fuel }) => <Fuel />,
  ),
  balance: later(
    "car",
    () => import("./Balance/Balance"),
    ({ Balance }) => <Balance />,
  ),
  parts: later(
    "car",
    () => import("./Parts/Parts"),
    ({ Parts }, _, query) => <Parts show={query.get("show")} />,
  ),
  part: later(
    "car",
    () => import("./Part/Part"),
    ({ Part }, id) => <Part key={id} id={id} />,
  ),
  weighing: later(
    "car",
    () => import("./Weighing/Weighing"),
    ({ Weighing }, id) => <Weighing key={id} id={id} />,
  ),
  ballast: later(
    "car",
    () => import("./Ballast/Ballast"),
    ({ Ballast }, id) => <Ballast key={id} id={id} />,
  ),
  "weigh-in": later(
    "car",
    () => import("./WeighIn/WeighIn"),
    ({ WeighIn }, id) => <WeighIn key={id} id={id} />,
  ),
  lift: later(
    "car",
    () => import("./Lift/Lift"),
    ({ Lift }, id, query) => <Lift key={`${id}${query}`} id={id} replaces={query.get("replaces")} />,
  ),
  "load-transfer": later(
    "car",
    () => import("./LoadTransfer/LoadTransfer"),
    ({ LoadTransfer }) => <LoadTransfer />,
  ),
  weigh: later(
    "weigh",
    () => import("./Weigh/Weigh"),
    ({ Weigh }) => <Weigh />,
  ),
  "weigh-part": later(
    "weigh",
    () => import("./WeighPart/WeighPart"),
    ({ WeighPart }, id, query) => (
      <WeighPart key={`${id}${query}`} of={id || null} replaces={query.get("replaces")} back={query.get("back")} />
    ),
  ),
  "weigh-car": later(
    "weigh",
    () => import("./WeighCar/WeighCar"),
    ({ WeighCar }, _, query) => <WeighCar replaces={query.get("replaces")} />,
  ),
  sheet: later(
    "more",
    () => import("./Sheet/Sheet"),
    ({ Sheet }, id, query) => (
      <Sheet
        key={`${id}${query}`}
        part={id || "new"}
        going={{ job: query.get("job"), way: query.get("way") === "off" ? "off" : "on" }}
      />
    ),
  ),
  jobs: later(
    "jobs",
    () => import("./Jobs/Jobs"),
    ({ Jobs }, _, query) => <Jobs key={String(query)} stage={query.get("stage")} />,
  ),
  job: later(
    "jobs",
    () => import("./Job/Job"),
    ({ Job }, id) => <Job key={id} id={id} />,
  ),
  "loose-ends": later(
    "jobs",
    () => import("./LooseEnds/LooseEnds"),
    ({ LooseEnds }) => <LooseEnds />,
  ),
  yard: later(
    "yard",
    () => import("./Yard/Yard"),
    ({ Yard }) => <Yard />,
  ),
  donor: later(
    "yard",
    () => import("./Donor/Donor"),
    ({ Donor }, id, query) => <Donor key={id} id={id} insteadOf={query.get("instead-of")} />,
  ),
  more: later(
    "more",
    () => import("./More/More"),
    ({ More }) => <More />,
  ),
  "car-sheet": later(
    "more",
    () => import("./CarSheet/CarSheet"),
    ({ CarSheet }) => <CarSheet />,
  ),
  "class-sheet": later(
    "more",
    () => import("./ClassSheet/ClassSheet"),
    ({ ClassSheet }) => <ClassSheet />,
  ),
  scales: later(
    "more",
    () => import("./Scales/Scales"),
    ({ Scales }) => <Scales />,
  ),
  scale: later(
    "more",
    () => import("./Scale/Scale"),
    ({ Scale }, id) => <Scale key={id} id={id} />,
  ),
  drivers: later(
    "more",
    () => import("./Drivers/Drivers"),
    ({ Drivers }) => <Drivers />,
  ),
  stages: later(
    "more",
    () => import("./Stages/Stages"),
    ({ Stages }) => <Stages />,
  ),
  devices: later(
    "more",
    () => import("./Devices/Devices"),
    ({ Devices }) => <Devices />,
  ),
  units: later(
    "more",
    () => import("./Units/Units"),
    ({ Units }) => <Units />,
  ),
  records: later(
    "more",
    () => import("./Records/Records"),
    ({ Records }) => <Records />,
  ),
};

export function screenFor({ path, query }: Place): { name: string; screen: VNode; door: Door } {
  const name = own(SCREENS, path[0] ?? "") ? path[0]! : "car";
  const { door, draw } = SCREENS[name]!;
  return { name, screen: draw(path[1] ?? "", query), door };
}
