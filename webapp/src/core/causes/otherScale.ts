/**
 * A weigh-in that stood on another of the known scales than the one noted.
 *
 * Its look then has the errors of that scale's gain in place of the noted one's: with the look's own column 1, the
 * covariance of the looks becomes S' = S + 1vᵀ + v1ᵀ, where v takes out what the noted gain shares with every look and
 * puts in what the other does. By Woodbury's identity and the matrix determinant lemma [Hager, SIAM Rev. 31 (1989) 221]
 * that is a matter of 2 × 2, in what the looks tell beside their mean too.
 */

import { movedBy } from "../fusion/evidence";
import { order } from "../garage/order";
import { dot } from "../numbers/plain";
import type { Uncertain } from "../numbers/uncertain";
import type { ScaleModel } from "../weighing/scale";
import { wholeCarGain } from "../weighing/tradeScale";
import type { Weighed } from "../wholeCar/weighed";
import { at, type Fit, type Looks, row, type Shape, times, type Vector } from "./looks";
import type { Tried } from "./slip";
import type { Trail } from "./trail";

const CARS = new Set(["corner_pads", "axle_pads", "platform"]);

export function tryOtherScales(trail: Trail, looks: Looks, tried: Tried): void {
  const { garage, known, counted } = trail;
  const used = new Set(counted.map(({ record }) => record.scale));
  const scales = [...garage.scales.values()].filter(({ id, kind }) => CARS.has(kind) || used.has(id));
  const moves: Moves = new Map();
  counted.forEach(({ record, loads }, look) => {
    const whole = loads.loads.total;
    for (const { id } of scales) {
      if (!whole || id === record.scale) continue;
      const gain = wholeCarGain(garage, known.scales.get(id) as ScaleModel, whole.value);
      const likely = otherwise(trail, looks, look, [loads.gain, gain], moves);
      tried.add(likely, "other_scale", { weigh_in: record.id, scale: id });
    }
  });
}

/** With the second of two gains in place of the first in one look. */
function otherwise(
  { counted, evidence }: Trail,
  looks: Looks,
  look: number,
  [noted, other]: readonly [Uncertain, Uncertain],
  moves: Moves,
): Fit {
  const load = (counted[look] as Weighed).loads.loads.total?.value ?? 0;
  const through = 1 + other.value;
  const stood = (load * (1 + noted.value)) / through;
  let swap: number[] = Array(looks.count).fill(0);
  let image: number[] = Array(looks.count).fill(0);
  for (const name of [...new Set([...Object.keys(noted.sources), ...Object.keys(other.sources)])].sort(order)) {
    const [column, told] = moves.get(name) ?? toldOf(looks, movedBy(evidence, name));
    moves.set(name, [column, told]);
    const gone = (load * (noted.sources[name] ?? 0)) / (1 + noted.value);
    const change = gone - (stood * (other.sources[name] ?? 0)) / through;
    swap = swap.map((each, n) => each + change * at(column, n));
    const own = 0.5 * change * change;
    swap[look] = at(swap, look) + own;
    image = image.map((each, n) => each + change * at(told, n) + own * at(row(looks.told, look), n));
  }
  const shape = looks.singles[look] as Shape;
  const [g, own] = looks.of(shape);
  return { likely: swapped(looks, look, swap, image, load - stood), shape, size: own ? g / own : 0 };
}

/** By error: how far it moves each look, and what the looks tell of that. */
type Moves = Map<string, readonly [Vector, Vector]>;

const toldOf = (looks: Looks, column: Vector) => [column, times(looks.told, column)] as const;

/**
 * ln L of a look that is `size` too high, and whose covariance with all looks changes by `swap`, twice its own.
 *
 * `image`: what the looks tell of that change.
 */
function swapped(looks: Looks, look: number, swap: Vector, image: Vector, size: number): number {
  const [a, b, c] = [at(row(looks.told, look), look), at(image, look), dot(swap, image)];
  // The inverse of [[0, 1], [1, 0]] is itself; what is added to it is what the looks tell of the two columns.
  const determinant = (1 + b) * (1 + b) - a * c;
  if (determinant <= 0) return Number.NEGATIVE_INFINITY;
  const pull = at(looks.pull, look);
  const [first, second] = [pull - size * a, dot(swap, looks.pull) - size * b];
  const fitted = (first * first * c - 2 * first * second * (1 + b) + second * second * a) / -determinant;
  return size * pull - 0.5 * size * size * a + 0.5 * fitted - 0.5 * Math.log(determinant);
}
