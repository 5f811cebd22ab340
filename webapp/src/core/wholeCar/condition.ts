/**
 * The condition a class weighs a car in: with a driver or without, with what fuel; ballast stays where it is.
 *
 * A weigh-in happens in whatever condition the car was in that day. To compare it with a minimum, the fuel then in the
 * tank goes out of the sum and the class's goes in, and so with the driver. What both have in common cancels: a full
 * tank weighed for a class that weighs full tanks says nothing of the density of fuel. When the driver counts, the
 * lightest who will drive decides. Where the class sheet is silent, the driver is out and the fuel is as it is, and a
 * warning says so.
 */

import { order } from "../garage/order";
import { type ClassSheet, type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import { compare } from "../numbers/ratio";
import { scale, subtract, type Uncertain, uncertain, weightedSum } from "../numbers/uncertain";
import type { Masses } from "../weighing/weighing";
import { type Aboard, isDriverSaid } from "./aboard";
import { fuelMass } from "./fuel";

/**
 * `driver`: "in" or "out"; `fuel`: "as_it_is", "empty", "full" or "stated".
 *
 * `lightest`: id of the driver who decides, with `driver_mass` (kg); both null when the driver is out or nobody's mass
 * is known. `fuel_mass` (kg): of the fuel the class asks for; null when it is as it is or, as `no_fuel` says, unknown.
 */
export type Condition = {
  readonly class_sheet: string | null;
  readonly driver: "in" | "out";
  readonly fuel: "as_it_is" | "empty" | "full" | "stated";
  readonly lightest: string | null;
  readonly driver_mass: Uncertain | null;
  readonly fuel_mass: Uncertain | null;
  readonly no_fuel: Warned | null;
  readonly warnings: readonly Warned[];
};

const NOTHING = uncertain(0);

/** The class sheet asked for by id, else the newest of the car (the last by id). */
export function chosenSheet(garage: Garage, asked: string | null = null): ClassSheet | null {
  if (asked !== null) return garage.class_sheets.get(asked) ?? null;
  return [...garage.class_sheets.values()].at(-1) ?? null;
}

/** The condition of a class sheet, or of none. */
export function conditionOf(garage: Garage, sheet: ClassSheet | null, known: Masses): Condition {
  const driver = (sheet?.driver ?? "out") as Condition["driver"];
  const fuel = (sheet?.fuel ?? "as_it_is") as Condition["fuel"];
  const lightest = driver === "in" ? lightestOf(garage, known) : null;
  const fuelNow = classFuel(garage, sheet, fuel);
  return {
    class_sheet: sheet?.id ?? null,
    driver,
    fuel,
    lightest,
    driver_mass: lightest === null ? null : massOf(known, lightest),
    fuel_mass: fuelNow && !isWarned(fuelNow) ? fuelNow : null,
    no_fuel: fuelNow && isWarned(fuelNow) ? fuelNow : null,
    warnings: [...unsaid(sheet), ...(driver === "in" ? unweighedDrivers(garage, known) : [])],
  };
}

/** Whether an answer is the reason why there is none. */
export function isWarned(answer: object): answer is Warned {
  return "code" in answer;
}

/** What the class sheet leaves open and was taken the cautious way. */
function unsaid(sheet: ClassSheet | null): Warned[] {
  if (sheet === null) return [];
  const said = { class_sheet: sheet.id };
  return [
    ...(sheet.driver === null ? [warned("driver_rule_unsaid", said)] : []),
    ...(sheet.fuel === null ? [warned("fuel_rule_unsaid", said)] : []),
  ];
}

function massOf(known: Masses, id: string): Uncertain | null {
  return known.of.get(id)?.mass ?? null;
}

/** Everyone who may still drive. */
function driversOf(garage: Garage): string[] {
  return [...garage.drivers.keys()].filter((driver) => !garage.retired.has(driver));
}

/** The lightest driver whose mass is known; the first by id of two equal ones. */
function lightestOf(garage: Garage, known: Masses): string | null {
  const weighed = driversOf(garage).flatMap((id) => {
    const mass = massOf(known, id);
    return mass ? [{ id, kg: mass.value }] : [];
  });
  weighed.sort((a, b) => a.kg - b.kg || order(a.id, b.id));
  return weighed[0]?.id ?? null;
}

function unweighedDrivers(garage: Garage, known: Masses): Warned[] {
  const drivers = driversOf(garage).filter((driver) => massOf(known, driver) === null);
  return drivers.length > 0 ? [warned("driver_without_mass", { drivers })] : [];
}

/** The fuel the class asks for, exactly so many litres; or why it is not known; null for fuel as it is. */
function classFuel(garage: Garage, sheet: ClassSheet | null, rule: Condition["fuel"]): Uncertain | Warned | null {
  if (rule === "as_it_is") return null;
  if (rule === "empty") return NOTHING;
  const volume = rule === "stated" ? sheet?.fuel_stated : garage.car?.tank_size;
  if (!volume) return warned(rule === "stated" ? "fuel_stated_missing" : "tank_unknown");
  return fuelMass(volume.value, garage.car?.fuel_kind ?? null);
}

/** The weight of the car of a weigh-in at the class's condition, kg, or why it cannot be told. */
export function atCondition(whole: Uncertain | undefined, then: Aboard, condition: Condition): Uncertain | Warned {
  if (!whole) return warned("reading_missing", { weigh_in: then.weigh_in });
  const changes: Uncertain[] = [];
  for (const change of [fuelChange(then, condition), driverChange(then, condition)]) {
    if (change && isWarned(change)) return change;
    if (change) changes.push(change);
  }
  return weightedSum([whole, ...changes], [1, ...changes.map(() => 1)]);
}

function fuelChange({ weigh_in, fuel }: Aboard, condition: Condition): Uncertain | Warned | null {
  if (condition.fuel === "as_it_is") return null;
  if (fuel === null) return warned("fuel_unknown", { weigh_in });
  return condition.fuel_mass ? subtract(condition.fuel_mass, fuel) : condition.no_fuel;
}

/** What exchanging the driver of a weigh-in for the one who counts adds, kg, or why that cannot be told. */
export function driverChange({ weigh_in, driver }: Aboard, condition: Condition): Uncertain | Warned | null {
  if (condition.driver === "in") {
    // Nobody can be put in the place of a driver of unknown mass; the car then counts with that driver.
    if (driver === null) return null;
    return condition.driver_mass ? subtract(condition.driver_mass, driver) : warned("no_driver");
  }
  return driver === null ? warned("driver_unknown", { weigh_in }) : scale(driver, -1);
}

/** What should be known of the condition the car was in at a weigh-in. */
export function conditionWarnings(garage: Garage, record: WeighIn, then: Aboard, condition: Condition): Warned[] {
  const found = fuelWarnings(garage, record, then, condition);
  if (!isDriverSaid(record) && then.driver) found.push(warned("driver_unsaid", { weigh_in: record.id }));
  if (then.driver === null) {
    const code = condition.driver === "in" ? "driver_as_weighed" : "driver_unknown";
    found.push(warned(code, { weigh_in: record.id }));
  }
  return found;
}

function fuelWarnings(garage: Garage, record: WeighIn, then: Aboard, condition: Condition): Warned[] {
  const of = { weigh_in: record.id };
  if (record.fuel === null) return [warned(then.fuel ? "fuel_unsaid" : "fuel_unknown", of)];
  const tank = garage.car?.tank_size;
  const found = tank && compare(record.fuel.exact, tank.exact) > 0 ? [warned("fuel_above_tank", of)] : [];
  if (condition.fuel === "as_it_is") return found;
  if (record.fuel_within === null) found.push(warned("fuel_within_assumed", of));
  if (!garage.car?.fuel_kind) found.push(warned("fuel_kind_unknown"));
  return found;
}
