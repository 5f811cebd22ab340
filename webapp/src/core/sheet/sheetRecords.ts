/** The records of parts cut from sheet and of their holes, as `core/garage/records` has all others. */

import type { Quantity } from "../numbers/quantity";
import type { Ratio } from "../numbers/ratio";

/** A part cut from sheet, as it was drawn or typed. `corners`: text, read by `core/sheet/sheetCorners`. */
export type Sheet = SheetForm & {
  id: string;
  part: string;
  material: string | null;
  thickness: Quantity | null;
  measured: boolean | null;
  gauge: number | null;
  gauge_table: string | null;
  density_low: Ratio | null;
  density_high: Ratio | null;
  within: Quantity | null;
};

export type SheetHole = SheetForm & { id: string; sheet: string; count: number | null };

export type SheetForm = {
  form: "rectangle" | "circle" | "polygon" | null;
  width: Quantity | null;
  height: Quantity | null;
  diameter: Quantity | null;
  corners: string | null;
};
