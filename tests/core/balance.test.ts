/** Balance on the phone: bodies, lifts and load transfer keep statics' laws, whatever the numbers. */

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axleLift } from "../../webapp/src/core/balance/axleLift";
import { balance } from "../../webapp/src/core/balance/balance";
import { type Body, changed, type Load, yawChange } from "../../webapp/src/core/balance/body";
import { transfer } from "../../webapp/src/core/balance/loadTransfer";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { scale, type Uncertain, uncertain } from "../../webapp/src/core/numbers/uncertain";
import { GARAGES } from "./garages";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const known = (name: string, min: number, max: number, part: number): fc.Arbitrary<Uncertain> =>
  between(min, max).map((value) => uncertain(value, { [name]: part }));

const BODIES: fc.Arbitrary<Body> = fc.record({
  mass: known("car", 700, 1300, 1),
  x: known("car:x", 0.8, 1.4, 0.003),
  y: known("car:y", -0.05, 0.05, 0.003),
  z: known("car:z", 0.4, 0.6, 0.01),
});
const load = (name: string): fc.Arbitrary<Load> =>
  fc.record({
    mass: known(name, -40, 40, 0.1),
    x: known(`${name}:x`, -0.8, 3.2, 0.1),
    y: known(`${name}:y`, -0.8, 0.8, 0.1),
    z: known(`${name}:z`, 0.1, 1.2, 0.1),
    own: between(0, 0.5),
  });
const LOADS = fc.tuple(load("a"), load("b"), load("c"));

/** Inertia of points about their own centre, by direct summation. */
function inertia(points: readonly (readonly [number, number, number])[]): number {
  const mass = points.reduce((sum, [m]) => sum + m, 0);
  const [x, y] = [1, 2].map((at) => points.reduce((sum, point) => sum + point[0] * (point[at] as number), 0) / mass);
  return points.reduce((sum, [m, px, py]) => sum + m * ((px - (x ?? 0)) ** 2 + (py - (y ?? 0)) ** 2), 0);
}

function at(body: Body): [number, number] {
  return [body.x?.value ?? NaN, body.y?.value ?? NaN];
}

describe("a body", () => {
  test("with a load put on and taken off again is as it was, and as sure", () => {
    fc.assert(
      fc.property(BODIES, load("a"), (body, on) => {
        const off = { ...on, mass: scale(on.mass, -1) };
        expect(changed(body, [on, off]).mass).toEqual(body.mass);
        expect(changed(body, [on, off]).x?.value).toBeCloseTo(body.x?.value ?? NaN, 12);
        expect(yawChange(body, [on, off])?.value).toBeCloseTo(0, 8);
      }),
    );
  });

  test("changed in two steps is as changed in one", () => {
    fc.assert(
      fc.property(BODIES, LOADS, (body, [a, b, c]) => {
        const half = changed(body, [a]);
        expect(changed(half, [b, c]).x?.value).toBeCloseTo(changed(body, [a, b, c]).x?.value ?? NaN, 12);
        const steps = (yawChange(body, [a])?.value ?? NaN) + (yawChange(half, [b, c])?.value ?? NaN);
        expect(steps).toBeCloseTo(yawChange(body, [a, b, c])?.value ?? NaN, 8);
      }),
    );
  });

  test("changes its yaw inertia by what direct summation finds", () => {
    fc.assert(
      fc.property(BODIES, LOADS, (body, loads) => {
        const [x, y] = at(body);
        const car = [
          [body.mass.value / 2, x - 1, y],
          [body.mass.value / 2, x + 1, y],
        ] as const;
        const points = loads.map((each) => [each.mass.value, each.x?.value ?? NaN, each.y?.value ?? NaN] as const);
        const own = loads.reduce((sum, each) => sum + each.mass.value * each.own, 0);
        const wanted = inertia([...car, ...points]) + own - inertia(car);
        expect(yawChange(body, loads)?.value).toBeCloseTo(wanted, 7);
      }),
    );
  });
});

describe("an axle lift", () => {
  test("undoes the car it was built from", () => {
    fc.assert(
      fc.property(between(0.3, 1.2), between(0.35, 0.8), (rise, height) => {
        const [wheelbase, radius, mass, rear] = [2.42, 0.285, 920, 402.4];
        const tilt = Math.tan(Math.asin(rise / wheelbase));
        const tilted = mass - rear + (mass * (height - radius) * tilt) / wheelbase;
        const axles = {
          wheelbase: uncertain(wheelbase),
          radius_front: uncertain(radius),
          radius_rear: uncertain(radius),
        };
        const found = axleLift(axles, uncertain(mass - rear), uncertain(rear), uncertain(tilted), uncertain(rise));
        expect(found.height?.value).toBeCloseTo(height, 10);
      }),
    );
  });
});

describe("load transfer", () => {
  test("empties the inner wheels at the static stability factor", () => {
    fc.assert(
      fc.property(BODIES, between(1.2, 1.7), (body, track) => {
        const factor = transfer(body, uncertain(track), null, 0, 0).stability?.value ?? NaN;
        const moved = transfer(body, uncertain(track), null, factor, 0).lateral?.value ?? NaN;
        expect(moved / body.mass.value).toBeCloseTo(0.5, 12);
      }),
    );
  });
});

describe("the balance of a garage", () => {
  const kilograms = fc.integer({ min: 1500, max: 3500 }).map((tenths) => `${tenths / 10} kg`);
  const corners = fc.record({ lf: kilograms, rf: kilograms, lr: kilograms, rr: kilograms });
  const cars = fc.record(
    { wheelbase: fc.constant("2420 mm"), track_front: fc.constant("1430 mm"), track_rear: fc.constant("56 in") },
    { requiredKeys: [] },
  );

  test("shares the whole between front and rear, whatever the records", () => {
    fc.assert(
      fc.property(GARAGES, corners, cars, (lists, loads, car) => {
        const weighIn = { id: "w", layout: "corners", trim: "road", jobs: ["j0"], ...loads };
        const told = balance(readGarage({ ...lists, cars: [{ id: "c", ...car }], weigh_ins: [weighIn] }));
        for (const { body, shares } of Object.values(told.states)) {
          if (!shares.front) continue;
          expect((shares.front.value ?? 0) + (shares.rear?.value ?? 0)).toBeCloseTo(1, 12);
          if (body.x) expect(shares.rear?.value).toBeCloseTo(body.x.value / 2.42, 9);
        }
        expect(Object.keys({ ...told.states, ...told.reasons }).sort()).toEqual(["after", "now", "start", "weighed"]);
      }),
    );
  });
});
