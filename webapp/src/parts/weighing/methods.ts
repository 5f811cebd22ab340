/** What each way to get a part's mass off a scale asks for: one reading or two, or a reading and a count. */
import type { Values } from "../../journal/kinds";

export type Method = NonNullable<Values<"weighing">["method"]>;
/** The second thing to type: a reading, a count, or nothing. */
export type Second = "shown_empty" | "shown_far" | "pieces" | null;
export type MethodRow = { first: string; second: Second; secondLabel: string; hint: string };

const row = (first: string, second: Second = null, secondLabel = "", hint = ""): MethodRow => ({
  first,
  second,
  secondLabel,
  hint,
});

const LEVEL =
  "Keep it level: one support on the scale, a block of the same height under the other, " +
  "both at the same places for both looks.";
const ROWS: Readonly<Record<Method, MethodRow>> = {
  direct: row("The scale shows"),
  difference: row("Me holding it", "shown_empty", "Me alone", "Same shoes, same clothes, both times."),
  container: row("Box with the part", "shown_empty", "Empty box"),
  batch: row("All together", "pieces", "How many", "The result is for one piece."),
  ends: row("One end", "shown_far", "The other end", LEVEL),
};

export function methodRow(method: Method = "direct"): MethodRow {
  return ROWS[method];
}
