/**
 * A running total of uncertain values that can be read after every step.
 *
 * Summing anew at each of a thousand jobs would touch every error source a million times. Here each sum is kept as the
 * exact list of doubles whose sum it is (Shewchuk's partials, as in `fsum`), so a step costs only its own sources, and
 * taking out what was put in leaves exactly nothing.
 */

import { fsum, type Uncertain } from "../numbers/uncertain";

/** `add` values one by one; `value` and `u` (kg) are those of their sum, rounded once. */
export class Running {
  readonly #value: number[] = [];
  readonly #variance: number[] = [];
  readonly #sources = new Map<string, number[]>();

  add(item: Uncertain): void {
    grow(this.#value, item.value);
    for (const source in item.sources) this.#addSource(source, item.sources[source] as number);
  }

  #addSource(source: string, deviation: number): void {
    const partials = this.#sources.get(source);
    if (!partials) {
      this.#sources.set(source, [deviation]);
      grow(this.#variance, deviation * deviation);
      return;
    }
    const before = fsum(partials);
    grow(partials, deviation);
    const after = fsum(partials);
    grow(this.#variance, after * after);
    grow(this.#variance, -(before * before));
  }

  get value(): number {
    return fsum(this.#value);
  }

  get u(): number {
    return Math.sqrt(fsum(this.#variance));
  }
}

/** Adds x to the exact sum the partials stand for. */
function grow(partials: number[], x: number): void {
  let kept = 0;
  for (let i = 0; i < partials.length; i++) {
    const partial = partials[i] as number;
    const sum = x + partial;
    const rest = Math.abs(x) >= Math.abs(partial) ? partial - (sum - x) : x - (sum - partial);
    if (rest !== 0) partials[kept++] = rest;
    x = sum;
  }
  partials.length = kept;
  partials.push(x);
}
