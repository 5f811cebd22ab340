/** What the display showed for a weighing, all of its looks in one line: "82.4 − 75.1 kg", "18 kg, 12 pieces". */
import type { Values } from "../../journal/kinds";
import { methodRow } from "./methods";

export function shownWords(values: Values<"weighing">): string {
  const { second } = methodRow(values.method);
  const { shown = "" } = values;
  const other = second && values[second];
  if (!other) return shown;
  if (typeof other === "number") return `${shown}, ${other} pieces`;
  return joined(shown, other, second === "shown_empty" ? "−" : "+");
}

/** The unit once, where both looks have the same and nothing else is in it. */
function joined(one: string, other: string, sign: string): string {
  const [, number, unit] = /^([\d.]+)( \S+)$/.exec(one) ?? [];
  return number && other.endsWith(unit!) ? `${number} ${sign} ${other}` : `${one} ${sign} ${other}`;
}
