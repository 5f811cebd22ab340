/**
 * What a sheet as typed comes to, or the first reason why it comes to nothing yet; and what the form still lacks.
 *
 * A bare length takes the garage's unit; a bare thickness takes none: shops sell by the inch and by the millimetre, so a
 * thickness must say which.
 */

import { type Warned, warned } from "../../core/garage/records";
import { QuantityError } from "../../core/numbers/quantity";
import { type Piece, type SheetMass, sheet } from "../../core/sheet/sheet";
import { writeCorners } from "../../core/sheet/sheetCorners";
import { type PieceRecord, readPiece, type ShapeRecord } from "../../core/sheet/sheetPiece";
import { describe } from "../../errors";
import { TABLE } from "../../journal/kinds";
import { cornersOf, type Spot } from "../../parts/sheet/geometry";
import { typedOf } from "../../parts/words/reading";
import type { Cut, SheetForm } from "./form";

/** `piece` is there as soon as all that is typed can be read, `found` when it can be cut as well. */
export type Worked = { piece: Piece | null; found: SheetMass | null; trouble: Warned | null };

const MOST_TEXT = TABLE.sheet.fields.corners.most;

/** The record of the sheet with its holes, each text with the unit it is read in. */
export function recordOf(form: SheetForm, lengthUnit: string): PieceRecord {
  const byGauge = form.how === "gauge";
  return {
    id: form.sheet,
    material: form.material || form.own.trim(),
    ...shapeOf(form.outline, lengthUnit),
    holes: form.holes.map((hole) => ({ ...shapeOf(hole, lengthUnit), count: hole.count })),
    thickness: byGauge ? null : form.thickness.trim(),
    measured: form.how === "measured",
    gauge: byGauge ? form.gauge : null,
    gauge_table: byGauge ? form.gauge_table : null,
    density_low: form.material ? null : form.density_low.trim(),
    density_high: form.material ? null : form.density_high.trim(),
    within: typedOf("length", form.within, lengthUnit),
  };
}

/** The fields of one outline: those of its form, the others empty. */
export function shapeOf(cut: Cut, unit: string): ShapeRecord & { corners: string } {
  const typed = (text: string) => typedOf("length", text, unit);
  const isRectangle = cut.form === "rectangle";
  return {
    form: cut.form,
    width: isRectangle ? typed(cut.width) : "",
    height: isRectangle ? typed(cut.height) : "",
    diameter: cut.form === "circle" ? typed(cut.diameter) : "",
    corners: cut.form === "polygon" ? writeCorners(cut.corners.map(([x, y]) => [typed(x), typed(y)] as const)) : "",
  };
}

export function workedOut(form: SheetForm, lengthUnit: string): Worked {
  const long = [form.outline, ...form.holes].some((cut) => shapeOf(cut, lengthUnit).corners.length > MOST_TEXT);
  if (long) return { piece: null, found: null, trouble: warned("sheet_corners_long") };
  try {
    const piece = readPiece(recordOf(form, lengthUnit));
    const found = sheet(piece);
    return "code" in found ? { piece, found: null, trouble: found } : { piece, found, trouble: null };
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return { piece: null, found: null, trouble: { code: error.code, data: error.data } };
  }
}

/** True while nothing of its size has been typed or drawn: no trouble is worth a word then. */
export function isBlank({ outline, thickness, how }: SheetForm): boolean {
  const hasSize = outline.width || outline.height || outline.diameter || outline.corners.length;
  return !hasSize || (how !== "gauge" && !thickness.trim());
}

/** Why it cannot be saved, as one sentence; null when it can. */
export function missing(form: SheetForm, lengthUnit: string): string | null {
  const { trouble } = workedOut(form, lengthUnit);
  if (trouble) return troubleWords(trouble);
  return form.of.id === null && !form.of.text.trim() ? "Say which part it is." : null;
}

/** A trouble in the words of the error table, with the hole it is of. */
export function troubleWords({ code, data }: Warned): string {
  const said = describe(code, data);
  const hole = Number(data.shape ?? 0);
  return `${hole ? `Hole ${hole}: ` : ""}${said.sentence} ${said.do}`;
}

/**
 * What can be drawn of it already: the outline, and the holes that can be read. Null while the outline is no shape yet.
 */
export function drawable(form: SheetForm, lengthUnit: string): Piece | null {
  const outline = readOutline(form.sheet, form.outline, lengthUnit);
  if (!outline) return null;
  const holes = form.holes.flatMap((hole) => {
    const read = readOutline(hole.id, hole, lengthUnit);
    return read ? [{ ...read.outline, count: hole.count }] : [];
  });
  return { ...outline, holes };
}

function readOutline(id: string, cut: Cut, lengthUnit: string): Piece | null {
  try {
    const piece = readPiece({ id, ...shapeOf(cut, lengthUnit) });
    return isShape(cornersOf(piece.outline)) ? piece : null;
  } catch (error) {
    if (error instanceof QuantityError) return null;
    throw error;
  }
}

/** Corners that span something both ways. */
function isShape(corners: readonly Spot[]): boolean {
  const spans = ([0, 1] as const).map((axis) => new Set(corners.map((corner) => corner[axis])).size > 1);
  return corners.length > 2 && spans.every(Boolean);
}
