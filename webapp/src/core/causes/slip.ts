/**
 * One slip the records could hide, and the list of those that were tried.
 *
 * A slip names the records it would be in. What it is told as, its kind (`code`) says: those of `generated/slipPriors`.
 */

import { type FACTORS, PRIORS } from "../../generated/slipPriors";
import { type Fit, sharedOut } from "./looks";

const FAR_LESS = 25; // a slip this much less likely (in ln) than another says nothing

export type Code = keyof typeof PRIORS;
export type Unit = keyof typeof FACTORS;

/**
 * `code`: its kind. The others are ids of the records it is in, as far as it is in any.
 *
 * `weigh_in`: where it is, `until` the later one of a gap. `job`, and the `other` it is the same as. `part` or `driver`
 * it is of; `weighing`: the reading that is wrong; `field`: that of a weigh-in. `scale`: it truly stood on. `unit`: which
 * of the factors a reading should be multiplied by. `way`: of a part, a person or ballast, "on" or "off" in truth; of a
 * job, "done" or "undone" at the weigh-in in truth. `kg`: the size in the looks, where it is known.
 */
export type Slip = {
  readonly code: Code;
  readonly weigh_in: string | null;
  readonly until: string | null;
  readonly job: string | null;
  readonly other: string | null;
  readonly part: string | null;
  readonly driver: string | null;
  readonly weighing: string | null;
  readonly scale: string | null;
  readonly place: string | null;
  readonly field: string | null;
  readonly unit: Unit | null;
  readonly way: "on" | "off" | "done" | "undone" | null;
  readonly kg: number | null;
};

export type Of = Partial<Omit<Slip, "code">>;

const NOTHING: Omit<Slip, "code"> = {
  ...{ weigh_in: null, until: null, job: null, other: null, part: null, driver: null, weighing: null },
  ...{ scale: null, place: null, field: null, unit: null, way: null, kg: null },
};

/** Slips with how likely they make the looks. */
export class Tried {
  readonly likely: [number, Slip, Fit][] = [];
  #best = 0;
  readonly #weights = new Map<Code, number>();

  /** `of`: the other fields of the slip; `weight`: among its kind. */
  add(fit: Fit, code: Code, of: Of, weight = 1): void {
    this.also(code, weight);
    if (!this.tells(fit.likely)) return;
    this.#best = Math.max(this.#best, fit.likely);
    this.likely.push([fit.likely + Math.log(weight), { code, ...NOTHING, ...of }, fit]);
  }

  /** Whether a slip with this ln L, or less, says anything beside the best. */
  tells(likely: number): boolean {
    return likely > this.#best - FAR_LESS;
  }

  /** Instances of a kind, tried or too unlikely to be. */
  also(code: Code, weight: number): void {
    this.#weights.set(code, (this.#weights.get(code) ?? 0) + weight);
  }

  /** The chance of each slip, all together one; what is one and the same slip is one. */
  odds(): [Slip, number][] {
    const chances = sharedOut(this.#logs());
    const together = new Map<string, [Slip, number]>();
    this.likely.forEach(([, slip], at) => {
      const key = JSON.stringify(slip);
      together.set(key, [slip, (together.get(key)?.[1] ?? 0) + (chances[at] as number)]);
    });
    return [...together.values()];
  }

  /** What the likeliest of all would have put into the looks. */
  likeliest(): Fit {
    const logs = this.#logs();
    return (this.likely[logs.indexOf(Math.max(...logs))] as [number, Slip, Fit])[2];
  }

  #logs(): number[] {
    return this.likely.map(
      ([likely, { code }]) => likely + Math.log(PRIORS[code] / (this.#weights.get(code) as number)),
    );
  }
}
