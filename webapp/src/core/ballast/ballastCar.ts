/**
 * The car without ballast, as it runs: the shares of its front and left, and the height of its centre.
 *
 * They are those of the car with the driver and the fuel the class weighs it with (`core/balance/laden`); where that is
 * not known, of the car as it was weighed. What ballast was on board at that weigh-in is taken out at the places where
 * blocks are fitted now, if these weigh as much as was noted then; else nobody knows where it stood, and shares and
 * height stay as they are, as if it had stood at the car's own centre.
 */

import "../../laterErrors";
import { balance, type CarState } from "../balance/balance";
import { laden, withFuel } from "../balance/laden";
import { type BallastPlace, type Car, type Garage, type Warned, type WeighIn, warned } from "../garage/records";
import { divide, fsum, multiply, subtract, type Uncertain, uncertain } from "../numbers/uncertain";
import type { Standing } from "../standing/standing";
import type { Masses } from "../weighing/weighing";
import { fuelIn } from "../wholeCar/aboard";
import type { Place } from "./ballastAnswer";

/** `whole` (kg) with shares of the `front` axle and the `left` side, and the `height` of its centre (m). */
export type Bare = {
  readonly whole: Uncertain;
  readonly front: Uncertain | null;
  readonly left: Uncertain | null;
  readonly height: number | null;
  readonly notes: readonly Warned[];
};

const LAST_BITS = 1e-9; // kg: what adding up may cost

type Stood = readonly { readonly kg: number; readonly place: Place }[];

/** The garage's car without ballast. Never throws over data: what cannot be told is null. */
export function bareCar(garage: Garage, known: Masses, now: Standing): Bare {
  const found = balance(garage, { jobs: [] }, known, now);
  const state = found.states.now ?? found.states.weighed;
  const record = garage.weigh_ins.get(found.weigh_in ?? "");
  if (!state || !record) return { whole: uncertain(0), front: null, left: null, height: null, notes: [] };
  const told = asItRuns(garage, record, known, now, state) ?? asWeighed(state);
  if (!record.ballast?.value) return told;
  const stood = stoodAt(garage, record);
  if (stood) return takenOut(garage.car, told, stood);
  return { ...told, notes: [...told.notes, warned("ballast_then_anywhere", { weigh_in: record.id })] };
}

/** Null while it lacks anything. */
export function placeOfRecord({ id, x, y, z, block, most }: BallastPlace): Place | null {
  if (!x || !y || !z || !block || !(block.value > 0) || most === null) return null;
  return { id, x: x.value, y: y.value, z: z.value, block: block.value, most };
}

/** Null when neither share is known so; one that is not stays as weighed. */
function asItRuns(garage: Garage, record: WeighIn, known: Masses, now: Standing, state: CarState): Bare | null {
  const { condition } = now;
  const car = laden(garage, condition, known, now);
  const fuel = condition.fuel === "as_it_is" ? fuelIn(garage, record) : condition.fuel_mass;
  if (!fuel || (!car.sides.front && !car.sides.left)) return null;
  const [trimmed, weighed] = [withFuel(car, fuel), asWeighed(state)];
  const isWeighed = (["front", "left"] as const).some((side) => !trimmed[side] && state.shares[side]);
  return {
    whole: uncertain(car.body.mass.value + fuel.value),
    front: trimmed.front ?? weighed.front,
    left: trimmed.left ?? weighed.left,
    height: trimmed.z?.value ?? weighed.height,
    notes: isWeighed ? weighed.notes : [],
  };
}

function asWeighed({ body, shares }: CarState): Bare {
  return {
    whole: uncertain(body.mass.value),
    front: shares.front ?? null,
    left: shares.left ?? null,
    height: body.z?.value ?? null,
    notes: [warned("centre_as_weighed")],
  };
}

/** Where the ballast of a weigh-in stood: at the places of today, if it weighs the same to its last digit. */
function stoodAt(garage: Garage, { ballast: noted }: WeighIn): Stood | null {
  const stood = [...garage.ballast_places.values()].flatMap((each) => {
    const place = placeOfRecord(each);
    return each.fitted && place ? [{ kg: each.fitted * place.block, place }] : [];
  });
  if (!noted || Math.abs(sum(stood, () => 1) - noted.value) > 0.5 * noted.last_digit + LAST_BITS) return null;
  return stood;
}

function takenOut(car: Car | null, told: Bare, stood: Stood): Bare {
  const base = car?.wheelbase?.value;
  const track = trackOfBoth(car);
  const rest = subtract(told.whole, uncertain(sum(stood, () => 1)));
  const raised = sum(stood, ({ z }) => z);
  return {
    whole: rest,
    front: base
      ? less(
          told,
          told.front,
          rest,
          sum(stood, ({ x }) => 1 - x / base),
        )
      : null,
    left: track
      ? less(
          told,
          told.left,
          rest,
          sum(stood, ({ y }) => 0.5 - y / track),
        )
      : null,
    height: told.height === null ? null : (told.whole.value * told.height - raised) / rest.value,
    notes: told.notes,
  };
}

/** The mean track, m, when both are known. */
function trackOfBoth(car: Car | null): number | null {
  return car?.track_front && car.track_rear ? 0.5 * (car.track_front.value + car.track_rear.value) : null;
}

function sum(stood: Stood, lever: (place: Place) => number): number {
  return fsum(stood.map(({ kg, place }) => kg * lever(place)));
}

/** The share once `onto` kg of the load is taken out and the `rest` remains. */
function less({ whole }: Bare, share: Uncertain | null, rest: Uncertain, onto: number): Uncertain | null {
  return share && divide(subtract(multiply(share, whole), uncertain(onto)), rest);
}
