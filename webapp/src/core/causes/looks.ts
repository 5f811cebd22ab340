/**
 * How well a slip explains what does not fit, from all looks at once.
 *
 * With W what the looks tell beside their mean (and beside what else is named), and r the looks, a slip that put e into
 * them has the likelihood, against none at all, ln L = eᵀWr − ½ eᵀWe. A slip is a shape h, so much in each look, times a
 * size t: ln L = t g − ½ t² G with g = hᵀWr and G = hᵀWh. Where the size is not known it is integrated over what it may
 * be: normal about a size, or evenly between two.
 */

import { at, type Matrix, times, type Vector } from "../fusion/precision";
import { erfc } from "../numbers/normal";
import { dot, plainSum } from "../numbers/plain";

export type Shape = Vector;

const TELLS_NOTHING = 1e-9; // of the most a look tells

/**
 * The looks of a fusion, asked about one shape after another; each shape is worked out once.
 *
 * `told`: what they tell beside their mean; `values`: the weight now by each, kg. `singles`: one kilogram too much in a
 * look. `steps`: one more in the car from between a look and the next on: those before it lack it.
 */
export class Looks {
  readonly told: Matrix;
  readonly count: number;
  readonly pull: Vector;
  readonly singles: readonly Shape[];
  readonly steps: readonly Shape[];
  readonly #least: number;
  readonly #known = new Map<string, readonly [number, number]>();

  constructor(told: Matrix, values: Vector) {
    this.told = told;
    this.count = values.length;
    this.pull = times(told, values);
    this.#least = TELLS_NOTHING * told.reduce((most, each, look) => Math.max(most, at(each, look)), 0);
    const every = values.map((_, look) => look);
    this.singles = every.map((look) => every.map((each) => (each === look ? 1 : 0)));
    this.steps = every.slice(0, -1).map((gap) => every.map((each) => (each <= gap ? -1 : 0)));
  }

  /** g and G of a shape; nothing when the looks tell nothing of it. */
  of(shape: Shape): readonly [number, number] {
    const key = shape.join();
    const found = this.#known.get(key) ?? this.#worked(shape);
    this.#known.set(key, found);
    return found;
  }

  #worked(shape: Shape): readonly [number, number] {
    const own = dot(shape, times(this.told, shape));
    return own > this.#least * dot(shape, shape) ? [dot(shape, this.pull), own] : [0, 0];
  }

  /** ln L of a shape of this size, kg, known so well. */
  about(shape: Shape, size: number, doubt = 0): number {
    const [g, own] = this.of(shape);
    const wider = 1 + doubt * doubt * own;
    return (size * g - 0.5 * size * size * own + 0.5 * doubt * doubt * g * g) / wider - 0.5 * Math.log(wider);
  }

  /** ln L of a shape of a size anywhere between two, kg. */
  between(shape: Shape, low: number, high: number): number {
    const [g, own] = this.of(shape);
    if (own <= 0 || high <= low) return this.about(shape, low);
    const root = Math.sqrt(own);
    const ends = [(low * own - g) / root, (high * own - g) / root] as const;
    const [a, b] = ends[0] + ends[1] < 0 ? [-ends[1], -ends[0]] : ends; // the tail that keeps its digits
    const within = 0.5 * (erfc(a / Math.sqrt(2)) - erfc(b / Math.sqrt(2)));
    if (within <= 0) return Number.NEGATIVE_INFINITY;
    const spread = Math.log(Math.sqrt(2 * Math.PI) / (root * (high - low)));
    return (0.5 * g * g) / own + spread + Math.log(within);
  }
}

/** The chances that logarithms of odds stand for. */
export function sharedOut(logs: readonly number[]): number[] {
  const most = logs.reduce((a, b) => Math.max(a, b));
  const odds = logs.map((each) => Math.exp(each - most));
  const whole = plainSum(odds);
  return odds.map((each) => each / whole);
}
