/**
 * What a keypad key does to a typed quantity: text in, text out, nothing else.
 *
 * The text stays what a person would write by hand ("6 3/8 oz", "3 lb 4.5 oz"), because it is kept as typed.
 */

/** What one key means: characters as they are, a whole fraction ("3/8"), a unit, or taking the last thing away. */
export type Key =
  | { sort: "write"; text: string }
  | { sort: "fraction"; text: string }
  | { sort: "unit"; text: string }
  | { sort: "erase" };

const LAST_UNIT = /\s*[a-zA-Z_]+(?: [a-zA-Z_]+)*$/;
const LAST_FRACTION = /\s?\d+\/\d+$/;

export function press(text: string, key: Key): string {
  switch (key.sort) {
    case "write":
      return write(text, key.text);
    case "fraction":
      return withFraction(text, key.text);
    case "unit":
      return withUnit(text, key.text);
    case "erase":
      return erase(text);
  }
}

/** A digit after a unit starts the next number: "3 lb" and 4 give "3 lb 4". */
function write(text: string, piece: string): string {
  if (piece === " ") return text === "" || text.endsWith(" ") ? text : `${text} `;
  return /[a-zA-Z_]$/.test(text) ? `${text} ${piece}` : text + piece;
}

/** A fraction stands apart from the whole number; pressed after the unit it still belongs to the number before it. */
function withFraction(text: string, fraction: string): string {
  const before = /^(.*\d)( [a-zA-Z_ ]+)$/.exec(text.trimEnd());
  if (before && !/\/\d+$|\.\d+$/.test(before[1]!)) return `${before[1]} ${fraction}${before[2]}`;
  return (text === "" || /[\s/]$/.test(text) ? text : `${text} `) + fraction;
}

/** A unit takes the place of the one just typed; on an empty field it writes nothing. */
function withUnit(text: string, unit: string): string {
  const bare = text.trimEnd().replace(LAST_UNIT, "");
  return bare === "" ? "" : `${bare} ${unit}`;
}

/** What one key wrote, one tap takes away: a unit or a fraction whole, anything else a character at a time. */
function erase(text: string): string {
  const trimmed = text.trimEnd();
  if (LAST_UNIT.test(trimmed)) return trimmed.replace(LAST_UNIT, "");
  if (LAST_FRACTION.test(trimmed)) return trimmed.replace(LAST_FRACTION, "");
  return trimmed.slice(0, -1);
}

/** The unit the text itself ends with, as written; null for a bare number. */
export function unitWritten(text: string): string | null {
  return LAST_UNIT.exec(text.trimEnd())?.[0].trim() ?? null;
}
