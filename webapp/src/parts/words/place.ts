/** A place along one axis of the car, as a tape measure gives it: how far, to which side, and whether that can be. */
import { FARTHEST } from "../../core/garage/fieldValues";
import { readingOf, whyNot } from "./reading";

const MINUS = /^\s*[-−]\s*/;

/** The length without its side; `minus`: it is to the side below nothing (ahead, left). */
export function sidesOf(text: string): { far: string; minus: boolean } {
  return { far: text.replace(MINUS, ""), minus: MINUS.test(text) };
}

export function placed(far: string, minus: boolean): string {
  return far.trim() && minus ? `-${far}` : far;
}

/** A sentence when the length is more than a car is long. */
export function tooFar(text: string, unit: string): string | null {
  const reading = readingOf("length", sidesOf(text).far, unit);
  if (reading.state !== "read" || reading.value <= FARTHEST) return null;
  return `That is ${reading.words}, more than a car is long. Look at the number and its unit.`;
}

/** Why a typed place cannot be one, with what to do; null when it can, or nothing is typed. */
export function placeTrouble(text: string, unit: string): string | null {
  return whyNot(readingOf("length", sidesOf(text).far, unit)) ?? tooFar(text, unit);
}

/** Where a part sits, from what its record says of zone, tape measure and wheel; null when it says nothing. */
export function placeWords({ zone, x, y, unsprung, rotating }: Readonly<Record<string, unknown>>): string | null {
  const along = typeof x === "string" && measured(x, ["ahead of the front axle", "behind the front axle"]);
  const across = typeof y === "string" && measured(y, ["left of the centreline", "right of the centreline"]);
  const wheel = [unsprung === true && "unsprung", rotating === true && "rotating"];
  return [zone, along, across, ...wheel].filter(Boolean).join(", ") || null;
}

function measured(text: string, [minus, plus]: readonly [string, string]): string {
  const side = sidesOf(text);
  return `${side.far} ${side.minus ? minus : plus}`;
}
