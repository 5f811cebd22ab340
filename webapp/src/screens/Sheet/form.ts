/**
 * The form behind a sheet: what is typed and drawn. `worked.ts` says what it comes to, `changes.ts` what it becomes.
 *
 * Ids and heads are taken when the form opens, so that a form reopened later still knows what it had seen, and nothing
 * is saved twice.
 */
import { type CornerText, cornerTexts } from "../../core/sheet/sheetCorners";
import type { Shape } from "../../core/sheet/sheetOutline";
import { MATERIALS } from "../../core/sheet/sheetStock";
import type { Rec, Value } from "../../journal/types";
import type { Picked } from "../../parts/controls/picking";

/** An outline or a hole as typed. `id`: the record of a hole; `count`: how often it is cut. */
export type Cut = {
  id: string;
  form: Shape["form"];
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
  densityLow: string;
  densityHigh: string;
  how: How;
  thickness: string;
  gauge: number;
  gaugeTable: string;
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
    densityLow: "",
    densityHigh: "",
    how: "sold",
    thickness: "",
    gauge: 20,
    gaugeTable: "msg",
    within: "",
    outline: emptyCut(ids.sheet, "rectangle"),
    holes: [],
    closed: [],
    seen: {},
  };
}

/** The form of a sheet that is in the records, and of its holes. */
export function formOf(empty: SheetForm, record: Rec, holes: readonly Rec[]): SheetForm {
  const { id, values } = record;
  const text = (name: string) => textOf(values, name);
  const material = text("material");
  const isKnown = MATERIALS.has(material);
  return {
    ...empty,
    sheet: id,
    material: isKnown ? material : "",
    own: isKnown ? "" : material,
    densityLow: text("density_low"),
    densityHigh: text("density_high"),
    how: values["gauge"] ? "gauge" : values["measured"] ? "measured" : "sold",
    thickness: text("thickness"),
    gauge: Number(values["gauge"] ?? empty.gauge),
    gaugeTable: text("gauge_table") || empty.gaugeTable,
    within: text("within"),
    outline: cutOf(id, values),
    holes: holes.map((hole) => cutOf(hole.id, hole.values)),
    seen: { ...empty.seen, ...seenOf([record, ...holes]) },
  };
}

export function seenOf(records: readonly Rec[]): Record<string, Seen> {
  return Object.fromEntries(records.map(({ id, heads, values }) => [id, { heads, values }]));
}

function cutOf(id: string, values: Rec["values"]): Cut {
  return {
    id,
    form: (values["form"] as Cut["form"] | null | undefined) ?? "rectangle",
    width: textOf(values, "width"),
    height: textOf(values, "height"),
    diameter: textOf(values, "diameter"),
    corners: cornerTexts(textOf(values, "corners")).map(cornerOf),
    count: Number(values["count"] ?? 1),
  };
}

/** What cannot be a corner stays in sight, in the first of its two fields. */
function cornerOf(text: string): CornerText {
  const [across = "", up = "", ...more] = text.split(",").map((size) => size.trim());
  return more.length ? [text, ""] : [across, up];
}

function textOf(values: Readonly<Record<string, Value | undefined>>, name: string): string {
  return String(values[name] ?? "");
}
