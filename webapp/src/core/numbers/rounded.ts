/**
 * Rounding, in whole numbers only: half away from zero, of the exact value, as `shown` asks for it.
 *
 * A value scaled by a power of ten and rounded is a whole number from there on, so no digit depends on how a language
 * prints a double.
 */

import { MINUS } from "./quantity";
import { add, compare, multiply, powerOfTen, type Ratio, ratio } from "./ratio";

/** [decimals, scaled U]: two digits when the first is 1, else one; never finer than `most`, never zero. */
export function marginPlaces(margin: Ratio, most: number): [number, bigint] {
  const exponent = exponentOf(margin);
  const one = compare(margin, multiply(ratio(2n), powerOfTen(exponent))) < 0;
  const wanted = one ? 1 - exponent : -exponent;
  if (wanted <= most) return [wanted, rounded(margin, wanted)];
  // What is over by less than a twentieth of the place is let go.
  const scaled = rounded(add(margin, multiply(ratio(-1n, 20n), powerOfTen(-most))), most, true);
  return [most, scaled > 0n ? scaled : 1n];
}

/** The power of ten of the first digit. */
export function exponentOf(positive: Ratio): number {
  const guess = `${positive.n}`.length - `${positive.d}`.length;
  return compare(positive, powerOfTen(guess)) >= 0 ? guess : guess - 1;
}

/** `exact` in units of 10^-places, half away from zero; or `up`, to the next one above. */
export function rounded(exact: Ratio, places: number, up = false): bigint {
  const { n, d } = multiply(exact, powerOfTen(places));
  if (up) return n > 0n ? (n + d - 1n) / d : n / d;
  const whole = (2n * (n < 0n ? -n : n) + d) / (2n * d);
  return n < 0n ? -whole : whole;
}

/** The digits of a size that counts 10^-places. */
export function digitsOf(scaled: bigint, places: number): string {
  const size = scaled < 0n ? -scaled : scaled;
  if (places <= 0) return `${size * 10n ** BigInt(-places)}`;
  const text = `${size}`.padStart(places + 1, "0");
  return `${text.slice(0, -places)}.${text.slice(-places)}`;
}

/** "−", "+" where asked for, or nothing: never a sign before zero. */
export function sign(scaled: bigint, signed: boolean): string {
  if (scaled < 0n) return MINUS;
  return signed && scaled > 0n ? "+" : "";
}
