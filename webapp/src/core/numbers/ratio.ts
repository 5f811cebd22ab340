/**
 * Exact rational numbers, as Python's Fraction: what a person typed is never rounded while it is read.
 *
 * Always in lowest terms with a positive denominator, so that equal values have equal parts.
 */

export type Ratio = { readonly n: bigint; readonly d: bigint };

export const ZERO: Ratio = { n: 0n, d: 1n };
/** Up to here a double is the same whole number; almost all that people type stays below, and doubles are much faster. */
const SAFE = BigInt(Number.MAX_SAFE_INTEGER);

export function ratio(n: bigint, d: bigint = 1n): Ratio {
  if (d === 0n) throw new RangeError("a ratio has no zero below its line");
  const common = gcd(n, d) * (d < 0n ? -1n : 1n);
  return { n: n / common, d: d / common };
}

export function add(a: Ratio, b: Ratio): Ratio {
  return ratio(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function multiply(a: Ratio, b: Ratio): Ratio {
  return ratio(a.n * b.n, a.d * b.d);
}

export function divide(a: Ratio, b: Ratio): Ratio {
  return ratio(a.n * b.d, a.d * b.n);
}

export function negate(a: Ratio): Ratio {
  return { n: -a.n, d: a.d };
}

/** Negative, zero or positive as a is less than, equal to or more than b. */
export function compare(a: Ratio, b: Ratio): number {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

/** 10 to a whole power of either sign. */
export function powerOfTen(exponent: number): Ratio {
  return exponent < 0 ? { n: 1n, d: 10n ** BigInt(-exponent) } : { n: 10n ** BigInt(exponent), d: 1n };
}

/** The exact value of a double. */
export function fromNumber(x: number): Ratio {
  if (!Number.isFinite(x)) throw new RangeError(`${x} is not a number of anything`);
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, x);
  const word = bits.getBigUint64(0);
  const exponent = Number((word >> 52n) & 0x7ffn);
  const fraction = word & 0xfffffffffffffn;
  const digits = exponent === 0 ? fraction : fraction | 0x10000000000000n;
  const shift = Math.max(exponent, 1) - 1075;
  const size = shift < 0 ? ratio(digits, 1n << BigInt(-shift)) : ratio(digits << BigInt(shift));
  return word >> 63n ? negate(size) : size;
}

/** The nearest double, ties to even, as Python's `float(Fraction)`. */
export function toNumber(a: Ratio): number {
  if (a.n < 0n) return -toNumber(negate(a));
  // Two whole doubles divide with one rounding, to the nearest (IEEE 754-2019, 5.1).
  if (a.n <= SAFE && a.d <= SAFE) return Number(a.n) / Number(a.d);
  // The power of two of the last of 53 binary digits; a double has none below 2^-1074.
  const guess = Math.max(bitLength(a.n) - bitLength(a.d) - 53, -1074);
  const [tried] = shiftedQuotient(a, guess);
  const exponent = tried >> 53n ? guess + 1 : guess;
  const [quotient, twiceRest, below] = shiftedQuotient(a, exponent);
  const up = twiceRest > below || (twiceRest === below && (quotient & 1n) === 1n);
  return fromDigits(up ? quotient + 1n : quotient, exponent);
}

/** a / 2^exponent as [whole part, twice the rest, divisor]. */
function shiftedQuotient(a: Ratio, exponent: number): [bigint, bigint, bigint] {
  const above = exponent < 0 ? a.n << BigInt(-exponent) : a.n;
  const below = exponent > 0 ? a.d << BigInt(exponent) : a.d;
  const quotient = above / below;
  return [quotient, 2n * (above - quotient * below), below];
}

/** digits × 2^exponent from its bits; a carry out of the 53rd digit lands in the exponent, where it belongs. */
function fromDigits(digits: bigint, exponent: number): number {
  const word = (BigInt(exponent + 1075) << 52n) + digits - (1n << 52n);
  if (word >> 52n >= 0x7ffn) throw new RangeError("too large for a number");
  const bits = new DataView(new ArrayBuffer(8));
  bits.setBigUint64(0, word);
  return bits.getFloat64(0);
}

function bitLength(positive: bigint): number {
  const digits = positive.toString(16);
  return 4 * digits.length - Math.clz32(Number.parseInt(digits.charAt(0), 16)) + 28;
}

function gcd(a: bigint, b: bigint): bigint {
  let [large, small] = [a < 0n ? -a : a, b < 0n ? -b : b];
  while (small > 0n) {
    if (large <= SAFE && small <= SAFE) return BigInt(gcdOfDoubles(Number(large), Number(small)));
    [large, small] = [small, large % small];
  }
  return large;
}

function gcdOfDoubles(large: number, small: number): number {
  while (small > 0) [large, small] = [small, large % small];
  return large;
}
