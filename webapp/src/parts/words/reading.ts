/**
 * A typed quantity as a form shows it while it is typed: nothing yet, how it will be read, or what to type instead.
 */
import { read } from "../../core/numbers/quantity";
import { showBoth } from "../../core/numbers/shownLater";
import { AppError } from "../../errors";
import { type Measure, unitOf } from "../../garage/units";
import "../../laterErrors";

export type Reading =
  | { state: "empty" }
  /** `typed`: the text to keep, with its unit. `value`: SI. `words`: as read, in both systems of units. */
  | { state: "read"; typed: string; value: number; unit: string; words: string }
  | { state: "trouble"; sentence: string; todo: string };

/** Reads `text`; a bare number takes `unit`. Zero is a trouble when `positive`. */
export function readingOf(kind: Measure, text: string, unit: string | null, positive = false): Reading {
  if (text.trim() === "") return { state: "empty" };
  try {
    const quantity = read(kind, text, unit, positive);
    const typed = standsAlone(kind, text) ? text.trim() : quantity.reads;
    return {
      state: "read",
      typed,
      value: quantity.value,
      unit: quantity.unit,
      words: showBoth(quantity, unitOf(kind)),
    };
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    return { state: "trouble", sentence: error.sentence, todo: error.do };
  }
}

/** Why a typed quantity cannot be read, with what to do; null when it can, or nothing is typed. */
export function whyNot(reading: Reading): string | null {
  return reading.state === "trouble" ? `${reading.sentence} ${reading.todo}` : null;
}

/** The same, behind what it is. */
export function troubleIn(name: string, reading: Reading): string | null {
  const why = whyNot(reading);
  return why && `${name}: ${why}`;
}

/** The text to keep: with its unit where it can be read, else exactly as typed. */
export function typedOf(kind: Measure, text: string, unit: string | null): string {
  const reading = readingOf(kind, text, unit);
  return reading.state === "read" ? reading.typed : text.trim();
}

function standsAlone(kind: Measure, text: string): boolean {
  try {
    read(kind, text);
    return true;
  } catch {
    return false;
  }
}
