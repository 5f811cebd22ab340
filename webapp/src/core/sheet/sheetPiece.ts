/**
 * A piece of sheet from its records: as the garage keeps them, or as a form or a file gives them.
 *
 * A given record: `{id, material, form, ...}` with `width` and `height`, `diameter`, or `corners` (text as in
 * `core/sheet/sheetCorners`, or [[x, y], ...]); `holes`, a list of such shapes, each with a `count`; `thickness` and
 * whether it was `measured`, or `gauge` with its `gauge_table`; `density_low` and `density_high` (kg/m³) instead of the
 * material's; `within`, how far a cut may be off.
 */

import "../../laterErrors";
import type { Sheet, SheetForm, SheetHole } from "../garage/records";
import { type Quantity, QuantityError, readLength, readNumber } from "../numbers/quantity";
import { type Ratio, toNumber } from "../numbers/ratio";
import type { Density } from "../wholeCar/fuel";
import type { Piece } from "./sheet";
import { type CornerText, readCorners, writeCorners } from "./sheetCorners";
import type { Shape } from "./sheetOutline";

export type ShapeRecord = {
  form?: Shape["form"] | null;
  width?: string | null;
  height?: string | null;
  diameter?: string | null;
  corners?: string | readonly CornerText[] | null;
  count?: number | null;
};

export type PieceRecord = ShapeRecord & {
  id: string;
  material?: string | null;
  holes?: readonly ShapeRecord[] | null;
  thickness?: string | null;
  measured?: boolean | null;
  gauge?: number | null;
  gauge_table?: string | null;
  density_low?: string | null;
  density_high?: string | null;
  within?: string | null;
};

type Size = "width" | "height" | "diameter";
const SIZES: Readonly<Record<Shape["form"], readonly Size[]>> = {
  rectangle: ["width", "height"],
  circle: ["diameter"],
  polygon: [],
};
const UNSIZED = { width: null, height: null, diameter: null };

/** The piece that records make. Throws `QuantityError` for a size that is missing or a corner nobody can read. */
export function pieceOf(sheet: Sheet, holes: readonly SheetHole[] = []): Piece {
  return {
    id: sheet.id,
    material: sheet.material || "",
    outline: shapeOf(sheet, 0, 1),
    holes: holes.map((hole, at) => shapeOf(hole, at + 1, hole.count || 1)),
    density: densityOf(sheet.density_low, sheet.density_high),
    thickness: sheet.thickness,
    measured: Boolean(sheet.measured),
    gauge: sheet.gauge ? [sheet.gauge_table || "msg", sheet.gauge] : null,
    within: sheet.within,
  };
}

/** The piece of a given record. Throws `QuantityError` for the first text that cannot be read. */
export function readPiece(record: PieceRecord): Piece {
  const { id } = record;
  const form = formOf(record);
  const holes = (record.holes ?? []).map((hole, at): SheetHole => {
    return { id: `${id}:${at + 1}`, sheet: id, ...formOf(hole), count: hole.count ?? null };
  });
  const sheet: Sheet = {
    id,
    part: "",
    material: record.material ?? null,
    ...form,
    thickness: length(record.thickness),
    measured: record.measured ?? null,
    gauge: record.gauge ?? null,
    gauge_table: record.gauge_table ?? null,
    density_low: number(record.density_low),
    density_high: number(record.density_high),
    within: length(record.within),
  };
  return pieceOf(sheet, holes);
}

/** `at`: 0 for the outline, else the number of the hole. */
function shapeOf(record: SheetForm, at: number, count: number): Shape {
  const form = record.form || "rectangle";
  const corners = form === "polygon" ? readCorners(record.corners || "") : [];
  return { form, sizes: SIZES[form].map((name) => sizeOf(name, record[name], at)), corners, count };
}

function sizeOf(name: Size, size: Quantity | null, at: number): Quantity {
  if (size) return size;
  throw new QuantityError("sheet_size_missing", {
    size: name,
    shape: at,
    typed: "",
    kind: "length",
    example: "300 mm",
  });
}

function formOf(record: ShapeRecord): SheetForm {
  const form = record.form || "rectangle";
  const corners = record.corners || "";
  return {
    form,
    ...UNSIZED,
    ...Object.fromEntries(SIZES[form].map((name) => [name, length(record[name])])),
    corners: typeof corners === "string" ? corners : writeCorners(corners),
  };
}

function length(text: string | null | undefined): Quantity | null {
  return text ? readLength(text, null, true) : null;
}

function number(text: string | null | undefined): Ratio | null {
  return text ? readNumber(text) : null;
}

function densityOf(low: Ratio | null, high: Ratio | null): Density | null {
  if (low === null && high === null) return null;
  return { low: toNumber((low ?? high) as Ratio), high: toNumber((high ?? low) as Ratio) };
}
