/** Dates and times as people say them. For reading only: nothing is ever ordered or decided by a clock. */

const DAY_MS = 86_400_000;
// As Intl.DateTimeFormat says them in British English, which takes a tenth of the first screen's time to wake up.
const MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sept Oct Nov Dec".split(" ");

/**
 * "today 14:05", "yesterday 9:30", "3 May", "3 May 2024"; a date without a time stays a date, and what is no date is
 * said as it is.
 */
export function sayMoment(moment: string | null | undefined, now: Date = new Date()): string {
  if (!moment) return "";
  const then = new Date(moment);
  if (Number.isNaN(then.getTime())) return moment;
  const hasTime = moment.includes("T");
  const daysAgo = Math.round((midnight(now) - midnight(then)) / DAY_MS);
  const clock = hasTime ? ` ${two(then.getHours())}:${two(then.getMinutes())}` : "";
  if (daysAgo === 0) return `today${clock}`;
  if (daysAgo === 1) return `yesterday${clock}`;
  const year = then.getFullYear() === now.getFullYear() ? "" : ` ${then.getFullYear()}`;
  return `${then.getDate()} ${MONTHS[then.getMonth()]}${year}`;
}

/** How long ago, for what grows old: "today", "yesterday", "3 days ago". */
export function sayAgo(moment: string, now: Date = new Date()): string {
  const days = Math.round((midnight(now) - midnight(new Date(moment))) / DAY_MS);
  return days > 1 ? `${days} days ago` : days === 1 ? "yesterday" : "today";
}

/** Two digits. */
export function two(number: number): string {
  return String(Math.trunc(number)).padStart(2, "0");
}

function midnight(moment: Date): number {
  return new Date(moment.getFullYear(), moment.getMonth(), moment.getDate()).getTime();
}

/** When an id was made, read out of the UUIDv7 itself; null for an id of another make. */
export function momentOfId(id: string): string | null {
  const hex = id.replaceAll("-", "");
  if (!/^[0-9a-f]{12}7[0-9a-f]{19}$/.test(hex)) return null;
  return new Date(parseInt(hex.slice(0, 12), 16)).toISOString();
}

/** When a fact was stated to have happened, else when its record was made. */
export function momentOf({ id, values }: { id: string; values: Readonly<Record<string, unknown>> }): string | null {
  return typeof values.at === "string" ? values.at : momentOfId(id);
}
