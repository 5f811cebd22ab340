/** Slips in what a part or a driver weighs: a unit, what held it, a claim far off, water in it. */

import { FACTORS, RANGES, RATES, SOMEBODY, SPREADS } from "../../generated/slipPriors";
import type { Weighing } from "../garage/records";
import type { Mass } from "../weighing/weighing";
import type { Looks, Shape } from "./looks";
import type { Of, Tried, Unit } from "./slip";
import { movedBy, type Trail } from "./trail";

const SHARE = 0.9; // of what was on the scale: a container or a person is no more of it
const HELD = new Set(["difference", "container"]);
// Against one another: a container of that scale, any, a person on it, what held it taken out twice.
const [THERE, UNKNOWN, STOOD, TAKEN_TWICE] = [2, 0.2, 0.2, 0.4];
const WET = 0.05; // how much rarer a wet part is than a wet car

/** Each factor with how often it is the slip. */
export const UNITS = (Object.keys(FACTORS) as Unit[]).map((unit) => ({
  unit,
  factor: FACTORS[unit] as number,
  rate: (RATES as Partial<Record<Unit, number>>)[unit] ?? 1,
}));

/**
 * What is known of a part or driver: `shape` of an error of one kilogram in its mass, `kg` of one piece.
 *
 * `share` of the reading in that mass, `pieces` weighed at once. Without a weighing it is a claim.
 */
type Read = {
  readonly ids: Of;
  readonly isDriver: boolean;
  readonly mass: Mass;
  readonly shape: Shape;
  readonly kg: number;
  readonly share: number;
  readonly pieces: number;
  readonly weighing: Weighing | null;
};

/** What may have held a part, kg: `containers` by the scale they were weighed empty on, and `people`. */
type Held = { readonly containers: ReadonlyMap<string | null, readonly number[]>; readonly people: readonly number[] };

export function tryWeighings(trail: Trail, looks: Looks, tried: Tried): void {
  const drivers = [...trail.garage.drivers.keys()].map((driver) => trail.known.of.get(driver)?.mass?.value);
  const held: Held = { containers: containersOf(trail), people: drivers.filter((kg) => kg !== undefined) };
  const spreads = SPREADS as Readonly<Record<string, readonly number[]>>;
  for (const read of readOf(trail)) {
    const { shape, ids, kg, share } = read;
    unitIn(read, looks, tried);
    if (read.weighing) {
      tareIn(read, read.weighing, looks, tried, held);
      const [low, high] = RANGES.wet_part;
      if (!read.isDriver) tried.add(looks.between(shape, low * share * kg, high * share * kg), "wet", ids, WET);
    } else {
      for (const spread of spreads[read.mass.basis ?? ""] ?? []) {
        tried.add(looks.about(shape, 0, spread * kg), "guess", ids);
      }
    }
  }
}

/** Every reading and claim that the looks rest on. */
function* readOf(trail: Trail): Generator<Read> {
  for (const [part, course] of trail.pieces) {
    const shape = movedBy(course);
    if (new Set(shape).size > 1) yield* readingsOf(trail, part, shape, false);
  }
  for (const driver of trail.garage.drivers.keys()) {
    const aboard = trail.counted.map(({ record }) => (record.driver === driver ? -1 : 0));
    if (new Set(aboard).size > 1) yield* readingsOf(trail, driver, aboard, true);
  }
}

function* readingsOf({ known, garage }: Trail, name: string, shape: Shape, isDriver: boolean): Generator<Read> {
  const mass = known.of.get(name);
  if (!mass?.mass) return;
  const of: Of = isDriver ? { driver: name } : { part: name };
  const read = { ids: of, isDriver, mass, shape, kg: mass.mass.value, share: 1, pieces: 1, weighing: null };
  if (!mass.readings.length && mass.basis !== "worked_out") yield read;
  for (const { weighing, value } of mass.readings) {
    const record = garage.weighings.get(weighing) as Weighing;
    const ids = { ...of, weighing };
    yield { ...read, ids, kg: value, share: 1 / mass.readings.length, pieces: record.pieces || 1, weighing: record };
  }
}

function unitIn({ shape, ids, kg: read, share }: Read, looks: Looks, tried: Tried): void {
  for (const { unit, factor, rate } of UNITS) {
    const kg = (1 - factor) * share * read;
    tried.add(looks.about(shape, kg), "unit", { ...ids, unit, kg }, rate);
  }
}

/** What was weighed empty, kg, by the scale it stood on; the same one once. */
function containersOf({ garage }: Trail): Map<string | null, number[]> {
  const held = new Map<string | null, number[]>();
  for (const { method, shown_empty, scale } of garage.weighings.values()) {
    if (!HELD.has(method) || !shown_empty) continue;
    const all = new Set([...(held.get(scale) ?? []), shown_empty.value]);
    held.set(
      scale,
      [...all].sort((a, b) => a - b),
    );
  }
  return held;
}

/** What held it is in the mass; or it was taken out though the display had done so. */
function tareIn(
  { shape, ids, kg, share, pieces }: Read,
  { method, shown_empty, scale }: Weighing,
  looks: Looks,
  tried: Tried,
  held: Held,
): void {
  const most = SHARE * kg * pieces;
  const each = share / pieces;
  const add = (size: number, weight: number, doubt = 0) =>
    tried.add(looks.about(shape, size * each, doubt * each), "tare", { ...ids, kg: size * each }, weight);
  if (HELD.has(method) && shown_empty) {
    add(-shown_empty.value, TAKEN_TWICE);
    return;
  }
  const [low, high] = RANGES.container;
  if (low < most) tried.add(looks.between(shape, low * each, Math.min(high, most) * each), "tare", ids, UNKNOWN);
  const there = (held.containers.get(scale) ?? []).filter((known) => known < most);
  for (const known of there) add(known, THERE / there.length);
  const known = held.people.map((person) => [person, 0] as const);
  const people = (known.length ? known : [SOMEBODY]).filter(([person]) => person < most);
  for (const [person, doubt] of people) add(person, STOOD / people.length, doubt);
}
