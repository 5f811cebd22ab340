/** What is typed of a run, kept on the phone as a draft; and the question it asks of the core. */
import { MOST_LAPS, type RunQuestion } from "../../core/fuelRun/fuelGiven";
import { type Quantity, read } from "../../core/numbers/quantity";
import { AppError } from "../../errors";
import { readingOf, whyNot } from "../../parts/words/reading";

/** Texts as typed. `perLap`: null while the car's own figure stands. */
export type RunForm = {
  laps: number;
  start: string;
  startWithin: string;
  perLap: string | null;
  perLapWithin: string;
};

export type OfRun = { form: RunForm; change: (patch: Partial<RunForm>) => void };

export const emptyRun = (): RunForm => ({ laps: 10, start: "", startWithin: "", perLap: null, perLapWithin: "" });

/** A typed volume; null when nothing, or nothing that can be read, is typed. */
export function volumeOf(text: string, unit: string, positive = false): Quantity | null {
  if (text.trim() === "") return null;
  try {
    return read("volume", text, unit, positive);
  } catch (error) {
    if (error instanceof AppError) return null;
    throw error;
  }
}

/** What is typed of a run and cannot be read, in the field's own sentence; null when all can. */
export function unreadRun(form: RunForm, unit: string): string | null {
  const typed = [form.start, form.perLap ?? "", form.startWithin, form.perLapWithin];
  return typed.map((text, at) => troubleIn(text, unit, at === 1)).find((said) => said !== null) ?? null;
}

/** Why a volume cannot be read; null when it can, or nothing is typed. */
export function troubleIn(text: string, unit: string, positive = false): string | null {
  return whyNot(readingOf("volume", text, unit, positive));
}

/** The question, what cannot be read left out. `unit`: what bare numbers are in. */
export function questionOf(form: RunForm, unit: string): RunQuestion {
  return {
    laps: form.laps,
    start: volumeOf(form.start, unit),
    start_within: volumeOf(form.startWithin, unit),
    per_lap: volumeOf(form.perLap ?? "", unit, true),
    per_lap_within: volumeOf(form.perLapWithin, unit),
  };
}

/** A number of laps that can be told. */
export function lapsWithin(laps: number): number {
  return Number.isFinite(laps) ? Math.max(0, Math.min(Math.round(laps), MOST_LAPS)) : 0;
}
