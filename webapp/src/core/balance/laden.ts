/**
 * The car as it runs: balanced with the driver the class counts, and with any amount of fuel in the tank.
 *
 * It starts from the car of a weigh-in with the jobs now in it (`core/balance`, the state "now"). The fuel it was
 * weighed with comes out at the tank, the driver is exchanged at the driver's seat, and fuel goes back in at the tank.
 * Fuel that comes out and goes in shares its density and the tank's place, so that a car weighed with ten litres is
 * known best with ten litres in it. Every axis is taken on its own: without the tank's height there is still a front
 * share.
 *
 * The fuel's centre is taken at the tank's, whatever is in it; how far the two are apart is allowed for
 * (`core/balance/aboard`).
 */

import "../../laterErrors";
import { type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import { divide, multiply, subtract, total, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Standing } from "../standing/standing";
import type { Masses } from "../weighing/weighing";
import { aboard } from "../wholeCar/aboard";
import { type Condition, driverChange, isWarned } from "../wholeCar/condition";
import { placeAboard } from "./aboard";
import { balance, leverOf, sideOf } from "./balance";
import { type Body, changed, type Load } from "./body";
import { AXES, type Axis } from "./place";

const NOT_OF_IT = ["centre_as_weighed", "level_unsure"]; // what a balance says that is not so of the car as it runs
const NOTHING = uncertain(0);
const NOWHERE: Body = { mass: NOTHING, x: null, y: null, z: null };
type Share = "front" | "left";
type Sides = Readonly<Record<Share, Uncertain | null>>;
export type LadenReasons = Readonly<Partial<Record<Axis | Share, Warned>>>;

/**
 * The car without fuel: `body`, and what stands on the front axle and the left side, kg; null where not known.
 *
 * `at`: the empty load at the tank, with its place. `reasons`: why "x", "y", "z", "front" or "left" is missing.
 * `warnings`: what was taken on trust for it.
 */
export type Laden = {
  readonly body: Body;
  readonly sides: Sides;
  readonly at: Load;
  readonly levers: Sides;
  readonly reasons: LadenReasons;
  readonly warnings: readonly Warned[];
};

/** The centre of gravity, m, and the shares of the front axle and the left side with some fuel in the tank. */
export type Trimmed = Readonly<Record<Axis | Share, Uncertain | null>>;

/** The car of the garage as it runs, without fuel. Never throws over data. `stand`: the standing of it. */
export function laden(garage: Garage, condition: Condition, known: Masses, stand: Standing): Laden {
  const { car } = garage;
  const found = balance(garage, { jobs: [] }, known, stand);
  const state = found.states.now;
  const tank = placeAboard(car, "tank");
  if (!state || found.weigh_in === null) return unknown(tank, found.reasons.now as Warned);
  const exchanged = exchangedIn(garage, garage.weigh_ins.get(found.weigh_in) as WeighIn, condition, known, tank);
  if (isWarned(exchanged)) return unknown(tank, exchanged);
  const body = changed(state.body, exchanged);
  if (body.mass.value <= 0) return unknown(tank, warned("nothing_left"));
  const sides = both((name) => sideOf(car, name, state.loads[name] ?? null, exchanged));
  const levers = both((name) => leverOf(car, name, tank));
  const warnings = found.warnings.filter(({ code }) => !NOT_OF_IT.includes(code));
  return { body, sides, at: tank, levers, reasons: reasonsOf(state.reasons, body, sides, tank, levers), warnings };
}

/** The car with so much fuel (kg) in its tank. */
export function withFuel({ body, sides, at, levers }: Laden, fuel: Uncertain): Trimmed {
  const { mass, x, y, z } = changed(body, [{ ...at, mass: fuel }]);
  const shares = both((name) => {
    const [side, lever] = [sides[name], levers[name]];
    return side && lever && divide(total([side, multiply(fuel, lever)]), mass);
  });
  return { x, y, z, ...shares };
}

function both(make: (name: Share) => Uncertain | null): Sides {
  return { front: make("front"), left: make("left") };
}

function unknown(tank: Load, reason: Warned): Laden {
  const none = { front: null, left: null };
  const reasons = { x: reason, y: reason, z: reason, front: reason, left: reason };
  return { body: NOWHERE, sides: none, at: tank, levers: none, reasons, warnings: [] };
}

/** What leads from the car as weighed to the car without fuel and with the driver who counts. */
function exchangedIn(
  garage: Garage,
  record: WeighIn,
  condition: Condition,
  known: Masses,
  tank: Load,
): Load[] | Warned {
  const then = aboard(garage, record, known);
  if (!then.fuel) return warned("fuel_unknown", { weigh_in: record.id });
  const driver = driverChange(then, condition);
  if (driver && isWarned(driver)) return driver;
  const out = { ...tank, mass: subtract(NOTHING, then.fuel) };
  const isSame = !driver || (driver.value === 0 && Object.keys(driver.sources).length === 0);
  return isSame ? [out] : [out, { ...placeAboard(garage.car, "driver"), mass: driver }];
}

/** Why an axis or a share is missing: the car was not known so far, else the tank's place, else the driver's. */
function reasonsOf(
  before: Readonly<Record<string, Warned>>,
  body: Body,
  sides: Sides,
  tank: Load,
  levers: Sides,
): LadenReasons {
  const why = (axis: Axis): Warned =>
    before[axis] ?? warned(tank[axis] ? "driver_place_unknown" : "tank_place_unknown");
  const axes = AXES.filter((axis) => !body[axis] || !tank[axis]).map((axis) => [axis, why(axis)] as const);
  const shares = (
    [
      ["front", "x"],
      ["left", "y"],
    ] as const
  ).flatMap(([name, axis]) => {
    return sides[name] && levers[name] ? [] : [[name, why(axis)] as const];
  });
  return Object.fromEntries([...axes, ...shares]);
}
