/**
 * The corners of an outline as one text, as the journal keeps them: "0 mm, 0 mm; 300 mm, 0 mm; 300 mm, 200 mm".
 *
 * A corner is how far across and how far up, with a comma between; corners are parted by semicolons or stand on lines of
 * their own. Each number is read exactly and has its unit, for no unit can be understood of a text that outlives it.
 */

import "../../laterErrors";
import { type Quantity, QuantityError, readPosition } from "../numbers/quantity";
import { LONGEST } from "../numbers/typed";

export type Corner = readonly [across: Quantity, up: Quantity];
export type CornerText = readonly [across: string, up: string];

/** The corners in the order they are drawn. Throws `QuantityError` that names the first one it cannot read. */
export function readCorners(text: string): Corner[] {
  return cornerTexts(text).map((each, at) => cornerOf(at + 1, each));
}

/** The text of typed corners. */
export function writeCorners(corners: readonly CornerText[]): string {
  return corners.map(([across, up]) => `${across.trim()}, ${up.trim()}`).join("; ");
}

/** The corners one by one, still as typed. */
export function cornerTexts(text: string): string[] {
  return text
    .split(/[;\n]/)
    .map((each) => each.trim())
    .filter(Boolean);
}

function cornerOf(corner: number, text: string): Corner {
  const sizes = text.split(",");
  try {
    if (sizes.length === 2) return [readPosition(sizes[0] as string), readPosition(sizes[1] as string)];
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
  }
  const typed = Array.from(text).slice(0, LONGEST).join("");
  throw new QuantityError("sheet_corner", { corner, typed, kind: "length", example: "300 mm, 200 mm" });
}
