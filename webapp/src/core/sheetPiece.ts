/**
 * A piece of sheet as a form or a file gives it, read: typed lengths become quantities, drawn corners too.
 *
 * A record: `{id, material, form, ...}` with `width` and `height`, `diameter`, or `corners` ([[x, y], ...]); `holes`, a
 * list of such shapes, each with a `count`; `thickness` and whether it was `measured`, or `gauge` with its
 * `gauge_table`; `density_low` and `density_high` (kg/m³) instead of the material's; `within`, how far a cut may be off.
 */

import type { Density } from "./fuel";
import { type Quantity, readLength, readNumber, readPosition } from "./quantity";
import { toNumber } from "./ratio";
import type { Piece, Shape } from "./sheet";

export type ShapeRecord = {
  form?: Shape["form"] | null;
  width?: string | null;
  height?: string | null;
  diameter?: string | null;
  corners?: readonly (readonly [string, string])[] | null;
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

/** The piece of a record. Throws `QuantityError` for the first text that cannot be read. */
export function readPiece(record: PieceRecord): Piece {
  return {
    id: record.id,
    material: record.material || "",
    outline: shapeOf(record),
    holes: (record.holes ?? []).map(shapeOf),
    density: densityOf(record),
    thickness: record.thickness ? length(record.thickness) : null,
    measured: Boolean(record.measured),
    gauge: record.gauge ? [record.gauge_table || "msg", record.gauge] : null,
    within: record.within ? length(record.within) : null,
  };
}

function shapeOf(record: ShapeRecord): Shape {
  const form = record.form || "rectangle";
  const corners = form === "polygon" ? (record.corners ?? []) : [];
  return {
    form,
    sizes: sizesOf(form, record).map(length),
    corners: corners.map(([x, y]) => [readPosition(x), readPosition(y)] as const),
    count: record.count || 1,
  };
}

function sizesOf(form: Shape["form"], { width, height, diameter }: ShapeRecord): (string | null | undefined)[] {
  if (form === "polygon") return [];
  return form === "circle" ? [diameter] : [width, height];
}

function length(text: string | null | undefined): Quantity {
  return readLength(text || "", null, true);
}

function densityOf({ density_low: low, density_high: high }: PieceRecord): Density | null {
  if (!low && !high) return null;
  return { low: toNumber(readNumber(low || high || "")), high: toNumber(readNumber(high || low || "")) };
}
