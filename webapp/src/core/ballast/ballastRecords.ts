/**
 * Ballast from a garage's records: the car without any, the places, what is wanted, and what to move.
 *
 * The whole ballast is chosen anew, so what is on board comes off first: off the weight (`core/standing`) as much as is
 * counted in it, and off the shares what was there when they were weighed (`core/ballast/ballastCar`).
 */

import { own } from "../../own";
import "../../laterErrors";
import { type Car, type Garage, type Warned, warned } from "../garage/records";
import { toNumber } from "../numbers/ratio";
import { multiply, subtract, uncertain } from "../numbers/uncertain";
import { type Standing, standing } from "../standing/standing";
import { type Masses, masses } from "../weighing/weighing";
import { isWarned } from "../wholeCar/condition";
import { type Ballast, ballast, type Carried, type Place, type Share, type Wanted } from "./ballast";
import { meanTrack } from "./ballastAnswer";
import { bareCar, placeOfRecord } from "./ballastCar";

/** What is given in the records' stead: kg, m and fractions. `most`: ceiling of the car's weight. */
export type BallastQuestion = {
  readonly places?: readonly Place[] | null;
  readonly total?: number | null;
  readonly minimum?: number | null;
  readonly guard?: number | null;
  readonly most?: number | null;
  readonly more?: number | null;
  readonly height?: number | null;
  readonly front_share?: number | null;
  readonly left_share?: number | null;
  readonly roll_front?: number | null;
  readonly front?: Share | null;
  readonly left?: Share | null;
  readonly prefer?: Wanted["prefer"] | null;
};

/**
 * `car`: without ballast; `wanted` of it. `aboard`: kg of ballast the weight now has in it.
 *
 * `fitted`: blocks by place now; `moves`: how many more each place wants, negative to take out. `reason`: why no ballast
 * was looked for.
 */
export type BallastChoice = {
  readonly car: Carried | null;
  readonly wanted: Wanted | null;
  readonly aboard: number;
  readonly fitted: Readonly<Record<string, number>>;
  readonly found: Ballast | null;
  readonly moves: Readonly<Record<string, number>>;
  readonly reason: Warned | null;
  readonly warnings: readonly Warned[];
};

/** kg the car lacks without any ballast, zero when it lacks nothing. */
export function lacking({ car, wanted }: BallastChoice): number {
  return car && wanted ? Math.max(0, wanted.least - car.total.value) : 0;
}

/** The best ballast for the garage's car. `known`, `now`: its masses and standing, when they are at hand already. */
export function ballastChoice(
  garage: Garage,
  asked: BallastQuestion = {},
  known: Masses = masses(garage),
  now: Standing = standing(garage, known),
): BallastChoice {
  const question = filled(asked, garage.car);
  const read = question.places ? { places: question.places, open: [] } : placesOf(garage);
  const { car, notes } = carried(garage, question, known, now);
  const { wanted, unaimed } = wantedOf(garage, question, now, car);
  const found = foundFor(car, read.places, wanted);
  const fitted = Object.fromEntries(
    [...garage.ballast_places.values()].flatMap((each) => (each.fitted ? [[each.id, each.fitted] as const] : [])),
  );
  const answer = isWarned(found) ? null : found;
  return {
    car,
    wanted,
    aboard: now.ballast,
    fitted,
    found: answer,
    moves: answer ? movesTo(answer.put, fitted) : {},
    reason: isWarned(found) ? found : null,
    warnings: [...read.open, ...notes, ...unaimed],
  };
}

/** The car's places in order of id, and a warning for each that lacks something. */
export function placesOf(garage: Garage): { places: Place[]; open: Warned[] } {
  const read = [...garage.ballast_places.values()].map((each) => ({ each, place: placeOfRecord(each) }));
  return {
    places: read.flatMap(({ place }) => place ?? []),
    open: read.flatMap(({ each, place }) =>
      place ? [] : [warned("ballast_place_open", { name: each.name ?? each.id })],
    ),
  };
}

function foundFor(car: Carried | null, places: readonly Place[], wanted: Wanted | null): Ballast | Warned {
  if (!car) return warned("ballast_unweighed");
  return wanted ? ballast(car, places, wanted) : warned("no_minimum");
}

function movesTo(
  put: Readonly<Record<string, number>>,
  fitted: Readonly<Record<string, number>>,
): Record<string, number> {
  const places = [...new Set([...Object.keys(put), ...Object.keys(fitted)])].sort();
  const changes = places.map((place) => [place, (own(put, place) ?? 0) - (own(fitted, place) ?? 0)] as const);
  return Object.fromEntries(changes.filter(([, count]) => count !== 0));
}

/** With the car's own wishes where nothing else is asked; its ranges apart. */
function filled(question: BallastQuestion, car: Car | null): BallastQuestion {
  return {
    ...question,
    prefer: question.prefer ?? car?.ballast_for ?? null,
    more: question.more ?? car?.ballast_more?.value ?? null,
    roll_front: question.roll_front ?? (car?.roll_front ? toNumber(car.roll_front) : null),
  };
}

/** Null without a minimum. A range of the car's own that cannot be aimed at is left out, and said so. */
function wantedOf(
  garage: Garage,
  question: BallastQuestion,
  now: Standing,
  car: Carried | null,
): { wanted: Wanted | null; unaimed: Warned[] } {
  const minimum = question.minimum ?? now.minimum;
  if (minimum === null) return { wanted: null, unaimed: [] };
  const inHand = (question.minimum ?? null) === null ? (now.official?.in_hand ?? 0) : 0;
  const front = aim(question.front ?? null, rangeOf(garage.car, "front"), Boolean(car?.front && car.wheelbase));
  const left = aim(question.left ?? null, rangeOf(garage.car, "left"), Boolean(car?.left && meanTrack(car)));
  const wanted = {
    least: minimum + (question.guard ?? inHand),
    most: question.most ?? null,
    front: front.range,
    left: left.range,
    prefer: question.prefer ?? "mass",
    more: question.more ?? null,
  };
  const unaimed = [
    ...(front.isLeftOut ? [warned("ballast_no_front")] : []),
    ...(left.isLeftOut ? [warned("ballast_no_left")] : []),
  ];
  return { wanted, unaimed };
}

/** The range to aim at, and whether the car's own was left out. */
function aim(given: Share | null, own: Share | null, canBe: boolean): { range: Share | null; isLeftOut: boolean } {
  if (given || canBe) return { range: given ?? own, isLeftOut: false };
  return { range: null, isLeftOut: own !== null };
}

/** From one end to the other; an end left out is as far as it goes. */
function rangeOf(car: Car | null, side: "front" | "left"): Share | null {
  const [low, high] = [car?.[`${side}_from`] ?? null, car?.[`${side}_to`] ?? null];
  return low || high ? [low ? toNumber(low) : 0, high ? toNumber(high) : 1] : null;
}

/** The car without ballast: its weight, shares and height as given, else the standing's and as it runs. */
function carried(
  garage: Garage,
  question: BallastQuestion,
  known: Masses,
  now: Standing,
): { car: Carried | null; notes: readonly Warned[] } {
  const given = question.total ?? null;
  const total = given === null ? now.weight && subtract(now.weight, uncertain(now.ballast)) : uncertain(given);
  if (!total) return { car: null, notes: [] };
  const { wheelbase, track_front, track_rear } = garage.car ?? {};
  const bare = bareCar(garage, known, now);
  const front = question.front_share != null ? uncertain(question.front_share) : bare.front;
  const left = question.left_share != null ? uncertain(question.left_share) : bare.left;
  const isGiven = question.front_share != null && question.left_share != null;
  const car = {
    total,
    front: front && multiply(total, front),
    left: left && multiply(total, left),
    height: question.height ?? bare.height,
    wheelbase: wheelbase?.value ?? null,
    track_front: track_front?.value ?? null,
    track_rear: track_rear?.value ?? null,
    roll_front: question.roll_front ?? null,
  };
  return { car, notes: isGiven ? [] : bare.notes };
}
