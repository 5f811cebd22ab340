/**
 * What a scale's display can show: readings in its unit, in whole steps, up to its capacity.
 *
 * A reading it cannot have shown is a slip of the eye or the thumb, or the scale's record is wrong: the person is asked,
 * with what the display most likely showed. Nothing is refused, since a display may be switched to another unit and a
 * record may be wrong. What is not known of the scale asks nothing.
 */

import { factor, type Quantity, QuantityError, readMass, readNumber } from "../numbers/quantity";
import { add, compare, divide, multiply, powerOfTen, type Ratio, ratio } from "../numbers/ratio";

/** `unit`: what it shows ("kg", "lb oz" …). */
export type Display = {
  readonly unit: string | null;
  readonly division: Quantity | null;
  readonly capacity: Quantity | null;
};
/** Of a scale that nothing is known of. */
export const UNKNOWN: Display = { unit: null, division: null, capacity: null };

/** Why the display cannot have shown it, and what it most likely showed: none, one, or the steps to either side. */
export type Misread = { readonly why: "unit" | "capacity" | "step"; readonly likely: readonly Quantity[] };

/** Null when the display can have shown it. */
export function misread(shown: Quantity, display: Display): Misread | null {
  const { unit, capacity } = display;
  if (unit && shown.unit.split(" ").some((part) => !unit.split(" ").includes(part)))
    return { why: "unit", likely: inItsUnit(shown, unit, display) };
  if (capacity && compare(shown.exact, capacity.exact) > 0)
    return { why: "capacity", likely: withItsPoint(shown, display) };
  return isStep(shown, display) ? null : { why: "step", likely: besideIt(shown, display) };
}

/** The same digits with another unit; null where that is no reading. `unit`: one. */
export function sameDigits(shown: Quantity, unit: string): Quantity | null {
  return shown.unit.includes(" ") ? null : readOrNull(`${digitsOf(shown)} ${unit}`);
}

/** The reading with its point moved so many places to the right (to the left below nothing); null for fractions. */
export function pointMoved(shown: Quantity, places: number): Quantity | null {
  const digits = digitsOf(shown);
  if (shown.unit.includes(" ") || digits.includes("/")) return null;
  const { n, d } = multiply(readNumber(digits), powerOfTen(places));
  return readOrNull(`${decimal({ n, d })} ${shown.unit}`);
}

function digitsOf({ reads }: Quantity): string {
  return reads.slice(0, reads.lastIndexOf(" "));
}

function readOrNull(text: string): Quantity | null {
  try {
    return readMass(text, null, true);
  } catch (error) {
    if (error instanceof QuantityError) return null;
    throw error;
  }
}

function isStep({ exact }: Quantity, { division }: Display): boolean {
  return !division || division.exact.n === 0n || divide(exact, division.exact).d === 1n;
}

/** Whether the display, its unit aside, can show it. */
export function canShow(reading: Quantity, display: Display): boolean {
  return isStep(reading, display) && !(display.capacity && compare(reading.exact, display.capacity.exact) > 0);
}

/** Most likely only the unit is wrong; else somebody has converted what it showed. */
function inItsUnit(shown: Quantity, unit: string, display: Display): Quantity[] {
  const same = unit.includes(" ") ? null : sameDigits(shown, unit);
  if (same && canShow(same, display)) return [same];
  return display.division ? besideIt(shown, display).slice(0, 1) : [];
}

/** The point forgotten, one place or two. */
function withItsPoint(shown: Quantity, display: Display): Quantity[] {
  const moved = [-1, -2].map((places) => pointMoved(shown, places));
  return moved.filter((each) => each !== null && canShow(each, display)).slice(0, 1) as Quantity[];
}

/** The nearest step the display has; both where it lies halfway between them. */
function besideIt(shown: Quantity, display: Display): Quantity[] {
  const steps = divide(shown.exact, (display.division as Quantity).exact);
  const below = steps.n / steps.d;
  const over = compare(multiply(ratio(steps.n - below * steps.d, steps.d), ratio(2n)), ratio(1n));
  const nearest = over === 0 ? [below, below + 1n] : [over < 0 ? below : below + 1n];
  const readings = nearest.map((count) => readOrNull(asShown(count, display)));
  return readings.filter((each) => each !== null && canShow(each, display)) as Quantity[];
}

/** So many steps, as the display writes them: "13.2 kg", "6 3/8 oz", "3 lb 4 oz". */
function asShown(count: bigint, { unit, division }: Display): string {
  const { exact, unit: own, reads } = division as Quantity;
  const [large, small] = (unit ?? own).split(" ") as [string, string?];
  const mass = multiply(ratio(count), exact);
  const size = divide(mass, factor("mass", small ?? large));
  if (!small) return `${written(size, reads.includes("/"))} ${large}`;
  const many = divide(factor("mass", large), factor("mass", small)).n;
  const whole = size.n / size.d / many;
  const rest = add(size, ratio(-whole * many));
  return whole === 0n ? `${written(rest, false)} ${small}` : `${whole} ${large} ${written(rest, false)} ${small}`;
}

function written(size: Ratio, inFractions: boolean): string {
  if (!inFractions) return decimal(size);
  const [whole, above] = [size.n / size.d, size.n % size.d];
  return [whole || !above ? `${whole}` : "", above ? `${above}/${size.d}` : ""].filter(Boolean).join(" ");
}

const MOST_PLACES = 6;

/** A positive ratio as a decimal, to the millionth where it has no end. */
function decimal({ n, d }: Ratio): string {
  const scaled = `${(n * 10n ** BigInt(MOST_PLACES)) / d}`.padStart(MOST_PLACES + 1, "0");
  const [whole, places] = [scaled.slice(0, -MOST_PLACES), scaled.slice(-MOST_PLACES).replace(/0+$/, "")];
  return places ? `${whole}.${places}` : whole;
}
