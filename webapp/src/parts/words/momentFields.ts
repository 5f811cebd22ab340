/** Moments as records state them and date fields take them; `moments` says them. */
import { two } from "./moments";

/** The present moment as a record states it: local time with its offset, to the minute. */
export function momentNow(now: Date = new Date()): string {
  const shift = -now.getTimezoneOffset();
  const local = new Date(now.getTime() + shift * 60_000).toISOString().slice(0, 16);
  return `${local}${shift < 0 ? "-" : "+"}${two(Math.abs(shift) / 60)}:${two(Math.abs(shift) % 60)}`;
}

/** A moment as a record states it, from what a date field holds ("2026-05-02T09:30", local); "" is now. */
export function momentTyped(text: string): string {
  const typed = new Date(text);
  return momentNow(Number.isNaN(typed.getTime()) ? new Date() : typed);
}

/** A record's moment as a date field takes it: local, to the minute; "" for what is no moment. */
export function momentForField(moment: unknown): string {
  const then = new Date(typeof moment === "string" ? moment : "");
  return Number.isNaN(then.getTime()) ? "" : momentNow(then).slice(0, 16);
}
