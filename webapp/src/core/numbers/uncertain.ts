/**
 * A value and where its doubt comes from: one signed standard deviation for each named, independent source.
 *
 * `uncertain(12.3, {"cal:s1": 0.03, "round:w1": 0.006})` says: if the calibration of scale s1 is one standard
 * deviation high, this value is 0.03 high. Two values that name the same source move together, so that a sum of
 * ten readings of one scale carries ten times its calibration error, and a difference of two carries none of
 * what they share; what nobody shares adds in quadrature. That is the law of propagation of uncertainty
 * [JCGM 100:2008, 5.1 and 5.2], with each source an input of its own and every step linear.
 *
 * Everything is in SI doubles. Sums are correctly rounded, so the order of the records never changes a digit, and
 * Python and TypeScript agree to the last bit.
 */

export type Uncertain = { readonly value: number; readonly sources: Readonly<Record<string, number>> };

/** `value` in SI units; `sources`: name → signed sensitivity times standard deviation, in the same unit. */
export function uncertain(value: number, sources: Readonly<Record<string, number>> = {}): Uncertain {
  return { value, sources };
}

/** Standard uncertainty: the root of the sum of the squared contributions. */
export function u(item: Uncertain): number {
  return Math.sqrt(fsum(Object.values(item.sources).map((part) => part * part)));
}

/** The half-width of the interval people read: k standard uncertainties, 95 % for k = 2. */
export function expanded(item: Uncertain, k = 2): number {
  return k * u(item);
}

/** Whether it can be told from nothing: more than its own expanded uncertainty. */
export function beyondDoubt(item: Uncertain): boolean {
  return Math.abs(item.value) > expanded(item);
}

/** Σ weight × item, source by source. A source that cancels is gone. */
export function weightedSum(items: readonly Uncertain[], weights: readonly number[]): Uncertain {
  if (items.length !== weights.length) throw new RangeError("as many weights as items are needed");
  // Most sources come once; only those that come again need a list to be summed.
  const terms = new Map<string, number | number[]>();
  const values = items.map((item, at) => {
    const weight = weights[at] as number;
    for (const name in item.sources) addTerm(terms, name, weight * (item.sources[name] as number));
    return weight * item.value;
  });
  const sources: Record<string, number> = {};
  for (const [name, term] of terms) {
    const part = typeof term === "number" ? term : fsum(term);
    if (part !== 0) sources[name] = part;
  }
  return { value: fsum(values), sources };
}

function addTerm(terms: Map<string, number | number[]>, name: string, term: number): void {
  const known = terms.get(name);
  if (known === undefined) terms.set(name, term);
  else if (typeof known === "number") terms.set(name, [known, term]);
  else known.push(term);
}

/** The sum of all items, correctly rounded once, whatever their order. */
export function total(items: readonly Uncertain[]): Uncertain {
  return weightedSum(
    items,
    items.map(() => 1),
  );
}

export function add(a: Uncertain, b: Uncertain): Uncertain {
  return weightedSum([a, b], [1, 1]);
}

/** a − b; what they share cancels. */
export function subtract(a: Uncertain, b: Uncertain): Uncertain {
  return weightedSum([a, b], [1, -1]);
}

/** The item times an exact number. */
export function scale(item: Uncertain, factor: number): Uncertain {
  const sources: Record<string, number> = {};
  for (const name in item.sources) {
    const part = factor * (item.sources[name] as number);
    if (part !== 0) sources[name] = part;
  }
  return { value: factor * item.value + 0, sources };
}

/** a × b to first order, as litres times density. */
export function multiply(a: Uncertain, b: Uncertain): Uncertain {
  return { value: a.value * b.value, sources: weightedSum([a, b], [b.value, a.value]).sources };
}

/** a ÷ b to first order, as rear over total. Throws RangeError when b is zero. */
export function divide(a: Uncertain, b: Uncertain): Uncertain {
  if (b.value === 0) throw new RangeError("division by a value of zero");
  const quotient = a.value / b.value;
  return { value: quotient, sources: weightedSum([a, b], [1 / b.value, -quotient / b.value]).sources };
}

/** A value computed from the items otherwise, with their doubt to first order: `partials` are its derivatives. */
export function derived(value: number, items: readonly Uncertain[], partials: readonly number[]): Uncertain {
  return { value, sources: weightedSum(items, partials).sources };
}

/** Standard deviation of a value that lies anywhere within ± halfWidth [JCGM 100:2008, 4.3.7]. */
export function rectangular(halfWidth: number): number {
  return halfWidth / Math.sqrt(3);
}

/** Standard deviation of one look at a display of this division [JCGM 100:2008, F.2.2.1]. */
export function resolution(division: number): number {
  return division / Math.sqrt(12);
}

/**
 * The correctly rounded sum, as CPython's math.fsum: Shewchuk's exact partial sums (Discrete & Computational
 * Geometry 18, 1997), then one rounding with ties to even. Throws RangeError when the sum is not finite.
 */
export function fsum(terms: Iterable<number>): number {
  const partials: number[] = [];
  for (const term of terms) addExactly(partials, term);
  const sum = roundOnce(partials);
  if (!Number.isFinite(sum)) throw new RangeError("the sum is not a finite number");
  return sum;
}

/** Keeps `partials` non-overlapping and increasing in size, their exact sum grown by `term`. */
function addExactly(partials: number[], term: number): void {
  let kept = 0;
  let high = term;
  for (const partial of partials) {
    const sum = high + partial;
    const [large, small] = Math.abs(high) < Math.abs(partial) ? [partial, high] : [high, partial];
    const lost = small - (sum - large);
    if (lost !== 0) partials[kept++] = lost;
    high = sum;
  }
  partials.length = kept;
  if (high !== 0) partials.push(high);
}

function roundOnce(partials: number[]): number {
  let at = partials.length - 1;
  if (at < 0) return 0;
  let high = partials[at] as number;
  let low = 0;
  while (at > 0 && low === 0) {
    const partial = partials[--at] as number;
    const sum = high + partial;
    low = partial - (sum - high);
    high = sum;
  }
  // A tie was broken without the smaller partials; when they lie on the other side, the rounding goes that way.
  const next = at > 0 ? (partials[at - 1] as number) : 0;
  const twice = low * 2;
  const other = high + twice;
  return low !== 0 && Math.sign(low) === Math.sign(next) && other - high === twice ? other : high;
}
