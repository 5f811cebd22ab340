/** What the display showed for a weighing, all of its looks in one line: "82.4 − 75.1 kg", "18 kg, 12 pieces". */
import { type Method, methodRow } from "./methods";

export function shownWords(values: Readonly<Record<string, unknown>>): string {
  const { second } = methodRow(values["method"] as Method);
  const shown = String(values["shown"]);
  if (second === null || values[second] == null) return shown;
  if (second === "pieces") return `${shown}, ${String(values[second])} pieces`;
  return joined(shown, String(values[second]), second === "shown_empty" ? "−" : "+");
}

/** The unit once, where both looks have the same and nothing else is in it. */
function joined(one: string, other: string, sign: string): string {
  const [, number, unit] = /^([\d.]+)( \S+)$/.exec(one) ?? [];
  return number && other.endsWith(unit!) ? `${number} ${sign} ${other}` : `${one} ${sign} ${other}`;
}
