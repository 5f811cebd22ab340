/**
 * Typed text before any unit is known: one spelling for every mark, refusals at sight, and bare numbers.
 *
 * A phone's keyboard writes curly quotes, long dashes and ready-made fractions; a spreadsheet writes hard spaces.
 * `tidy` turns them all into plain ASCII. What can be refused from the text alone (a comma, an exponent, a sum) is
 * refused here, so that the sentence speaks of that and not of a unit.
 */

import { AppError } from "../../errors";
import { add, type Ratio, ratio } from "./ratio";

/** Characters; the journal keeps no longer typed quantity. */
export const LONGEST = 64;

const FRACTIONS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒";
const SAME = new Map<string, string>([
  ...[..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"].map((letter) => [letter, letter.toLowerCase()] as const),
  ...[...FRACTIONS].map((mark) => [mark, ` ${mark.normalize("NFKC").replace("\u2044", "/")} `] as const),
  ...[..."\u2212\u2013\u2014\u2010\u2011"].map((dash) => [dash, "-"] as const),
  ...[..."\u2032\u2019\u2018\u00b4"].map((quote) => [quote, "'"] as const),
  ...[..."\u2033\u201d\u201c"].map((quote) => [quote, '"'] as const),
  ["\u2044", "/"],
]);
const SPACES = /[ \t\r\n\f\v\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff]+/g;
const COMMA = /[0-9][0-9.,]*,[0-9][0-9.,]*|,[0-9][0-9.,]*/;
const EXPONENT = /[0-9.]e[+-]?[0-9]/;
const SUM = /[+*×]|(^|[^a-z])x([^a-z]|$)/;
const DECIMAL = /^([0-9]*)(?:\.([0-9]*))?$/;
const MIXED = /^(?:([0-9]+) )?([0-9]+) ?\/ ?([0-9]+)$/;
const GAP = /^[0-9.]+(?: [0-9.]+)+$/;

/** A typed quantity that cannot be read. `data` always has `typed`, `kind` and `example`. */
export class QuantityError extends AppError {}

/** `place`: the place of its last digit. `reads`: the number spelled out. */
export type Digits = { readonly exact: Ratio; readonly place: Ratio; readonly reads: string };

/** One spelling for every letter, dash, quote and fraction. */
export function sameMarks(text: string): string {
  return Array.from(text, (letter) => SAME.get(letter) ?? letter).join("");
}

/** The text with one spelling for every mark, one space for every gap, in lower case. */
export function tidy(text: string): string {
  if (Array.from(text).length > LONGEST) throw new QuantityError("quantity_long", { most: LONGEST });
  const plain = trim(sameMarks(text).replace(SPACES, " "));
  return plain.replace(/([0-9]) ?- ?([0-9]+ ?\/)/g, "$1 $2");
}

/** Without spaces at either end. */
export function trim(text: string): string {
  return text.replace(/^ +| +$/g, "");
}

/** Refuse what no unit could make readable. */
export function refuseAtSight(plain: string): void {
  if (plain === "") throw new QuantityError("quantity_empty");
  const comma = COMMA.exec(plain);
  if (comma) throw new QuantityError("quantity_comma", { instead: withoutComma(plain, comma[0], comma.index) });
  if (EXPONENT.test(plain)) throw new QuantityError("quantity_exponent");
  if (SUM.test(plain)) throw new QuantityError("quantity_sum");
  if (plain.includes("-")) throw new QuantityError("quantity_unreadable");
}

/** What may have been meant: `1,25` is 1.25, `1,250.5` is 1250.5, and `1,250` could be either. */
function withoutComma(plain: string, number: string, start: number): string {
  const [before, after] = [plain.slice(0, start), plain.slice(start + number.length)];
  if (number.includes(".")) {
    const point = Math.max(number.lastIndexOf("."), number.lastIndexOf(","));
    return `${before}${number.slice(0, point).replace(/[.,]/g, "")}.${number.slice(point + 1)}${after}`;
  }
  const joined = before + number.replaceAll(",", "") + after;
  if (number.indexOf(",") !== number.lastIndexOf(",")) return joined;
  const pointed = before + number.replace(",", ".") + after;
  return /^[1-9][0-9]{0,2},[0-9]{3}$/.test(number) ? `${joined} or ${pointed}` : pointed;
}

/** The words after a number, without dots, commas and brackets. */
export function unitWord(text: string): string {
  return trim(text.replace(/[.,()]/g, " ").replace(SPACES, " "));
}

/** A decimal, a fraction or a whole number with a fraction. */
export function readDigits(text: string): Digits {
  const decimal = DECIMAL.exec(text);
  if (decimal && (decimal[1] || decimal[2])) {
    const [whole, places] = [BigInt(decimal[1] || "0"), decimal[2] ?? ""];
    const place = ratio(1n, 10n ** BigInt(places.length));
    const exact = ratio(whole * place.d + BigInt(places || "0"), place.d);
    return { exact, place, reads: places ? `${whole}.${places}` : `${whole}` };
  }
  if (GAP.test(text)) throw new QuantityError("quantity_gap", { instead: text.replaceAll(" ", "") });
  if (text.includes("/")) return fraction(text);
  throw new QuantityError("quantity_unreadable");
}

function fraction(text: string): Digits {
  const mixed = MIXED.exec(text);
  if (!mixed) throw new QuantityError("quantity_fraction");
  const [whole, above, below] = [BigInt(mixed[1] ?? "0"), BigInt(mixed[2] ?? "0"), BigInt(mixed[3] ?? "0")];
  if (below === 0n || (mixed[1] && above >= below)) throw new QuantityError("quantity_fraction");
  const reads = mixed[1] ? `${whole} ${above}/${below}` : `${above}/${below}`;
  return { exact: add(ratio(whole), ratio(above, below)), place: ratio(1n, below), reads };
}
