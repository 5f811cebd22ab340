/**
 * The records a sheet becomes, all in one save: the part with what it is worked out at, the sheet, and its holes.
 *
 * Of a record that was there before only what differs is written, as a change to what the form had seen of it.
 */
import type { Claim } from "../../core/sheet/sheetClaim";
import type { Change } from "../../garage/write";
import type { Value } from "../../journal/types";
import { own } from "../../own";
import type { Cut, SheetForm } from "./form";
import { recordOf, shapeOf } from "./worked";

/** `job`, `way`: the job the part goes into at once. */
export type Around = { car: string | null; lengthUnit: string; job?: string | null; way?: "on" | "off" };

export function partOf(form: SheetForm): string {
  return form.of.id ?? form.newPart;
}

export function changesOf(form: SheetForm, claim: Claim, { car, lengthUnit, job, way }: Around): Change[] {
  const part = partOf(form);
  const { holes: _holes, id: _id, ...fields } = recordOf(form, lengthUnit);
  const holeFields = (hole: Cut) => ({ sheet: form.sheet, ...shapeOf(hole, lengthUnit), count: hole.count });
  return [
    partChange(form, { ...claim, claim_basis: "worked_out" }, car),
    changeOf(form, "sheet", form.sheet, { part, ...fields }),
    ...form.holes.map((hole) => changeOf(form, "sheet_hole", hole.id, holeFields(hole))),
    ...form.closed.map((hole) => changeOf(form, "sheet_hole", hole, { deleted: true })),
    ...(job ? [{ kind: "job_part", set: { job, part, way: way ?? "on" } }] : []),
  ].filter(({ set }) => Object.keys(set).length);
}

function partChange(form: SheetForm, claim: Record<string, Value>, car: string | null): Change {
  if (form.of.id === null) {
    const named = { name: form.of.text.trim(), ...(car ? { car } : {}) };
    return { kind: "part", record: form.newPart, base: [], set: { ...named, ...claim } };
  }
  return own(form.seen, form.of.id)
    ? changeOf(form, "part", form.of.id, claim)
    : { kind: "part", record: form.of.id, set: claim };
}

function changeOf(form: SheetForm, kind: string, record: string, fields: object): Change {
  const { heads, values } = own(form.seen, record) ?? { heads: [], values: {} };
  const wanted = Object.entries(fields).map(([name, value]) => [name, value === "" ? null : (value as Value)] as const);
  return {
    kind,
    record,
    base: heads,
    set: Object.fromEntries(wanted.filter(([name, value]) => (values[name] ?? null) !== value)),
  };
}
