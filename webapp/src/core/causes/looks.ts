/**
 * How well a slip explains what does not fit, from all looks at once.
 *
 * With W what the looks tell beside their mean (and beside what else is named), and r the looks, a slip that put e into
 * them has the likelihood, against none at all, ln L = eᵀWr − ½ eᵀWe. A slip is a shape h, so much in each look, times a
 * size t: ln L = t g − ½ t² G with g = hᵀWr and G = hᵀWh. Where the size is not known it is integrated over what it may
 * be: normal about a size, or evenly between two.
 */

import { erfc, inverse } from "../numbers/normal";
import { dot, plainSum } from "../numbers/plain";

export type Vector = readonly number[];
export type Matrix = readonly Vector[];
export type Shape = Vector;

/** An element that is there. */
export const at = (vector: Vector, index: number): number => vector[index] as number;
export const row = (matrix: Matrix, index: number): Vector => matrix[index] as Vector;

export function times(matrix: Matrix, column: Vector): number[] {
  return matrix.map((each) => dot(each, column));
}

type Pair = readonly [g: number, own: number];

const BY_CHANCE = 0.01; // a second slip is rarer than one: what is left must stand out the more
const TELLS_NOTHING = 1e-9; // of the most a look tells

/** How well a slip explains the looks: ln L, and what it would have put into them, `size` kg of the shape. */
export type Fit = { readonly likely: number; readonly shape: Shape; readonly size: number };

/**
 * The looks of a fusion, asked about one shape after another; each shape is worked out once.
 *
 * `told`: what they tell beside their mean; `values`: the weight now by each, kg. `singles`: one kilogram too much in a
 * look. `steps`: one more in the car from between a look and the next on: those before it lack it.
 */
export class Looks {
  readonly told: Matrix;
  readonly values: Vector;
  readonly count: number;
  readonly pull: Vector;
  readonly singles: readonly Shape[];
  readonly steps: readonly Shape[];
  readonly #least: number;
  readonly #known = new Map<Shape, Pair>();
  readonly #alike = new Map<string, Pair>(); // by what they are, where they were made anew

  constructor(told: Matrix, values: Vector) {
    this.told = told;
    this.values = values;
    this.count = values.length;
    this.pull = times(told, values);
    this.#least = TELLS_NOTHING * told.reduce((most, each, look) => Math.max(most, at(each, look)), 0);
    const every = values.map((_, look) => look);
    this.singles = every.map((look) => every.map((each) => (each === look ? 1 : 0)));
    this.steps = every.slice(0, -1).map((gap) => every.map((each) => (each <= gap ? -1 : 0)));
    this.#knowStepsAndSingles();
  }

  /** Those that nearly every slip is of, in one pass: a step is the looks before it, one after the other. */
  #knowStepsAndSingles(): void {
    let image: Vector = this.values.map(() => 0);
    let before = 0;
    this.told.forEach((each, look) => {
      const pull = at(this.pull, look);
      this.#keep(this.singles[look] as Shape, pull, at(each, look), 1);
      image = image.map((x, n) => x + at(each, n));
      before += pull;
      const step = this.steps[look];
      if (step) this.#keep(step, -before, plainSum(image.slice(0, look + 1)), look + 1);
    });
  }

  #keep(shape: Shape, g: number, own: number, size: number): Pair {
    const found: Pair = own > this.#least * size ? [g, own] : [0, 0];
    this.#known.set(shape, found);
    this.#alike.set(shape.join(), found);
    return found;
  }

  /** g and G of a shape; nothing when the looks tell nothing of it. */
  of(shape: Shape): Pair {
    const known = this.#known.get(shape);
    if (known) return known;
    const alike = this.#alike.get(shape.join());
    if (!alike) return this.#keep(shape, dot(shape, this.pull), dot(shape, times(this.told, shape)), dot(shape, shape));
    this.#known.set(shape, alike);
    return alike;
  }

  /** A shape of this size, kg, known so well. */
  about(shape: Shape, size: number, doubt = 0): Fit {
    const [g, own] = this.of(shape);
    const wider = 1 + doubt * doubt * own;
    const likely = (size * g - 0.5 * size * size * own + 0.5 * doubt * doubt * g * g) / wider - 0.5 * Math.log(wider);
    return { likely, shape, size: (size + doubt * doubt * g) / wider };
  }

  /** A shape of a size anywhere between two, kg. */
  between(shape: Shape, low: number, high: number): Fit {
    const [g, own] = this.of(shape);
    if (own <= 0 || high <= low) return this.about(shape, low);
    const root = Math.sqrt(own);
    const ends = [(low * own - g) / root, (high * own - g) / root] as const;
    const [a, b] = ends[0] + ends[1] < 0 ? [-ends[1], -ends[0]] : ends; // the tail that keeps its digits
    const within = 0.5 * (erfc(a / Math.sqrt(2)) - erfc(b / Math.sqrt(2)));
    if (within <= 0) return { likely: Number.NEGATIVE_INFINITY, shape, size: low };
    const spread = Math.log(Math.sqrt(2 * Math.PI) / (root * (high - low)));
    const likely = (0.5 * g * g) / own + spread + Math.log(within);
    return { likely, shape, size: Math.min(Math.max(g / own, low), high) };
  }

  /** The same looks as they would be without a slip. */
  without({ shape, size }: Fit): Looks {
    return new Looks(
      this.told,
      this.values.map((value, look) => value - size * at(shape, look)),
    );
  }

  /** Whether no step and no single look stands out by more than chance lets one of them. */
  nameNothing(): boolean {
    const shapes = [...this.steps, ...this.singles.slice(1, -1)];
    const telling = shapes.map((shape) => this.of(shape)).flatMap(([g, own]) => (own ? [(g * g) / own] : []));
    if (!telling.length) return true;
    const z = inverse(BY_CHANCE / (2 * telling.length));
    return Math.max(...telling) <= z * z;
  }
}

/** The chances that logarithms of odds stand for. */
export function sharedOut(logs: readonly number[]): number[] {
  const most = logs.reduce((a, b) => Math.max(a, b));
  const odds = logs.map((each) => Math.exp(each - most));
  const whole = plainSum(odds);
  return odds.map((each) => each / whole);
}
