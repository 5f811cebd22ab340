/**
 * The form behind a sheet: what is typed and drawn. `worked.ts` says what it comes to, `changes.ts` what it becomes.
 *
 * Ids and heads are taken when the form opens, so that a form reopened later still knows what it had seen, and nothing
 * is saved twice.
 */
import { type CornerText, cornerTexts } from "../../core/sheet/sheetCorners";
import { MATERIALS } from "../../core/sheet/sheetStock";
import type { Values } from "../../journal/kinds";
import type { Rec } from "../../journal/types";
import type { Picked } from "../../parts/controls/picking";
import { textsOf } from "../../parts/forms/draftRecord";

/** An outline or a hole as typed. `id`: the record of a hole; `count`: how often it is cut. */
export type Cut = {
  id: string;
  form: NonNullable<Values<"sheet">["form"]>;
  width: string;
  height: string;
  diameter: string;
  corners: CornerText[];
  count: number;
};

export type How = "sold" | "measured" | "gauge";

export type SheetForm = {
  sheet: string;
  newPart: string;
  of: Picked;
  /** A material of the table, or "" for one of the person's own. */
  material: string;
  own: string;
  density_low: string;
  density_high: string;
  how: How;
  thickness: string;
  gauge: number;
  gauge_table: string;
  within: string;
  outline: Cut;
  holes: Cut[];
  /** Holes of the record that were taken out again. */
  closed: string[];
  /** Each record as it was when the form opened: what another phone changes meanwhile is not overwritten unseen. */
  seen: Record<string, Seen>;
};

export type Seen = Pick<Rec, "heads" | "values">;

export function emptyCut(id: string, form: Cut["form"]): Cut {
  return { id, form, width: "", height: "", diameter: "", corners: [], count: 1 };
}

export function emptyForm(ids: { sheet: string; part: string }, of: Picked): SheetForm {
  return {
    sheet: ids.sheet,
    newPart: ids.part,
    of,
    material: "aluminium",
    own: "",
    density_low: "",
    density_high: "",
    how: "sold",
    thickness: "",
    gauge: 20,
    gauge_table: "msg",
    within: "",
    outline: emptyCut(ids.sheet, "rectangle"),
    holes: [],
    closed: [],
    seen: {},
  };
}

/** The form of a sheet that is in the records, and of its holes. */
export function formOf(empty: SheetForm, record: Rec<"sheet">, holes: readonly Rec<"sheet_hole">[]): SheetForm {
  const { id, values } = record;
  const { material = "", gauge, gauge_table = empty.gauge_table } = values;
  const isKnown = MATERIALS.has(material);
  return {
    ...empty,
    ...textsOf(values, ["density_low", "density_high", "thickness", "within"]),
    sheet: id,
    material: isKnown ? material : "",
    own: isKnown ? "" : material,
    how: gauge ? "gauge" : values.measured ? "measured" : "sold",
    gauge: gauge ?? empty.gauge,
    gauge_table,
    outline: cutOf(id, values),
    holes: holes.map((hole) => cutOf(hole.id, hole.values)),
    seen: { ...empty.seen, ...seenOf([record, ...holes]) },
  };
}

export function seenOf(records: readonly Rec[]): Record<string, Seen> {
  return Object.fromEntries(records.map(({ id, heads, values }) => [id, { heads, values }]));
}

function cutOf(id: string, values: Values<"sheet_hole">): Cut {
  const { form = "rectangle", corners = "", count = 1 } = values;
  const sizes = textsOf(values, ["width", "height", "diameter"]);
  return { id, form, ...sizes, corners: cornerTexts(corners).map(cornerOf), count };
}

/** What cannot be a corner stays in sight, in the first of its two fields. */
function cornerOf(text: string): CornerText {
  const [across = "", up = "", ...more] = text.split(",").map((size) => size.trim());
  return more.length ? [text, ""] : [across, up];
}
