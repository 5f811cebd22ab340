/**
 * What only screens opened later show: areas, money, hours, lengths in steps, and a reading beside the other system.
 *
 * By the rules of `shown`, and apart from it only to keep the first screen light.
 */

import { DIMENSIONS, type Kind } from "../../generated/units";
import { factor, type Quantity, readNumber } from "./quantity";
import { compare, divide, fromNumber, multiply, type Ratio, ratio } from "./ratio";
import { exponentOf, rounded } from "./rounded";
import { COMPOUND_MOST, double, exactOf, marginOf, PLAIN_MOST, single } from "./shown";

const HOURS_MOST = 3;
const FOOT2 = ratio(9_290_304n, 100_000_000n);
/** Shown beside a reading typed in the other system, when the garage does not count in that system itself. */
const BESIDE_METRIC: Readonly<Record<string, string>> = {
  kg: "lb",
  g: "oz",
  t: "lb",
  mm: "in",
  cm: "in",
  m: "in",
  L: "gal_us",
  ml: "gal_us",
};
const BESIDE_OTHERS: Readonly<Record<Kind, string>> = { mass: "kg", length: "mm", volume: "L" };

/** Label, one in m², decimals, and the least that is shown in it, in m². */
type Area = readonly [string, Ratio, number, Ratio];
const AREAS: Readonly<Record<string, readonly [Area, Area]>> = {
  mm: [
    ["m²", ratio(1n), 2, ratio(1n, 10n)],
    ["cm²", ratio(1n, 10_000n), 1, ratio(0n)],
  ],
  in: [
    ["ft²", FOOT2, 2, FOOT2],
    ["in²", divide(FOOT2, ratio(144n)), 1, ratio(0n)],
  ],
};

/** A length to the nearest `step` (a plain decimal, in `unit`), or the next above: "1240 mm" of 1.2368 and "10". */
export function showStepped(m: number, unit: string, step: string, up = false): string {
  const width = readNumber(step);
  const steps = rounded(divide(divide(fromNumber(m), factor("length", unit)), width), 0, up);
  const places = step.split(".")[1]?.length ?? 0;
  const label = DIMENSIONS.length.units[unit]?.label ?? unit;
  return single(multiply(ratio(steps), width), null, label, [places, places], false).text;
}

/** An area beside lengths in `lengthUnit`: "0.42 m²", "25.0 cm²", "4.52 ft²", "12.5 in²". `U` in m². */
export function showArea(m2: number, lengthUnit: string, U: number | null = null): string {
  const exact = fromNumber(m2);
  const [large, small] = AREAS[lengthUnit] as readonly [Area, Area];
  const [label, one, places] = compare(exact, large[3]) >= 0 ? large : small;
  return single(divide(exact, one), marginOf(U, one), label, [places, PLAIN_MOST], false).text;
}

/** An amount with two decimals, none when it is whole: "120 EUR", "12.50 EUR". Text must be a plain decimal. */
export function showMoney(amount: string | number | Ratio, currency = "", signed = false): string {
  const exact = typeof amount === "string" ? readNumber(amount) : exactOf(amount);
  const places = rounded(exact, 2) % 100n === 0n ? 0 : 2;
  return single(exact, null, currency, [places, places], signed).text;
}

/** Hours as they were typed, without zeros at the end: "0.25 h", "2.5 h", "3 h". */
export function showHours(hours: string | number | Ratio): string {
  const exact = typeof hours === "string" ? readNumber(hours) : exactOf(hours);
  let places = HOURS_MOST;
  while (places && rounded(exact, places) % 10n === 0n) places--;
  return single(exact, null, "h", [places, places], false).text;
}

/**
 * The reading as it was read, and in the other system: "6 3/8 oz · 0.181 kg".
 *
 * `unit`: the unit the garage counts in; it is the other one when it is of the other system. The second value
 * ends where the typed one does.
 */
export function showBoth(reading: Quantity, unit: string | null = null): string {
  return `${reading.reads} · ${other(reading, unit)}`;
}

function other(reading: Quantity, unit: string | null): string {
  const units = DIMENSIONS[reading.kind].units;
  const metric = (name: string) => units[name.split(" ")[0] ?? ""]?.metric;
  const typed = reading.unit.split(" ").pop() ?? "";
  const beside = (metric(typed) ? BESIDE_METRIC[typed] : undefined) ?? BESIDE_OTHERS[reading.kind];
  const [large, small] = (unit && metric(unit) !== metric(typed) ? unit : beside).split(" ") as [string, string?];
  const one = factor(reading.kind, small ?? large);
  const most = small === undefined ? (units[large]?.most_places ?? 0) : COMPOUND_MOST;
  const exact = divide(reading.exact, one);
  const places = Math.min(placesBeside(reading, exact, one), most);
  if (small === undefined) return single(exact, null, units[large]?.label ?? large, [places, places], false).text;
  return double(exact, null, divide(factor(reading.kind, large), one).n, [large, small], false, places).text;
}

/** Decimals of `exact` that tell what was typed: to its last digit, a fraction to a third of it, two digits at least. */
function placesBeside(reading: Quantity, exact: Ratio, one: Ratio): number {
  const thirds = ratio(reading.reads.includes("/") ? 3n : 1n);
  const lastDigit = divide(divide(fromNumber(reading.last_digit), one), thirds);
  const size = exact.n < 0n ? ratio(-exact.n, exact.d) : exact;
  return Math.max(-exponentOf(lastDigit), size.n === 0n ? 0 : 1 - exponentOf(size), 0);
}
