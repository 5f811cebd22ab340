/**
 * The form behind lifting an axle: which step is open, what is typed, what is missing, the fact it becomes.
 *
 * Two pads under one axle show two readings; both are kept in the draft, and the record holds their sum in the same
 * unit, exactly.
 */
import { book } from "../../answers";
import { sumOf } from "../../core/numbers/typedSum";
import { describe } from "../../errors";
import { unitOf } from "../../garage/units";
import type { Change } from "../../garage/write";
import { TABLE } from "../../journal/kinds";
import type { Value } from "../../journal/types";
import type { Shot } from "../../parts/photos/Photos";
import { momentForField, momentTyped } from "../../parts/words/momentFields";
import { readingOf, troubleIn, typedOf } from "../../parts/words/reading";

export type Raised = "rear" | "front";

export type LiftForm = {
  id: string;
  step: number;
  raised: Raised;
  height: string;
  within: string;
  /** Two pads stand under the axle on the ground: `left` and `right` of it; else all of it is in `left`. */
  pads: boolean;
  left: string;
  right: string;
  unit: string;
  scale: string | null;
  /** When, as a date field gives it; "" is now. */
  at: string;
  note: string;
  shots: Shot[];
};

export const NOTE_MOST = TABLE.lift.fields.note.most;

export function emptyForm(id: string, unit: string, scale: string | null, pads: boolean): LiftForm {
  return {
    id,
    step: 0,
    raised: "rear",
    height: "",
    within: "",
    pads,
    left: "",
    right: "",
    unit,
    scale,
    at: "",
    note: "",
    shots: [],
  };
}

/** A lift to be replaced, opened as it was entered, at `step`. Its load stands in one field, as the record has it. */
export function formFrom(id: string, before: Record<string, Value>, unit: string, step: number): LiftForm {
  const text = (field: string) => String(before[field] ?? "");
  return {
    ...emptyForm(id, unit, (before["scale"] as string | undefined) ?? null, false),
    step,
    raised: before["raised"] === "front" ? "front" : "rear",
    height: text("height"),
    within: text("height_within"),
    left: text("tilted"),
    at: momentForField(before["at"]),
    note: text("note"),
  };
}

/** The load on the axle left on the ground, as one typed text; "" until all of it is there. */
export function tiltedOf({ pads, left, right, unit }: LiftForm): string {
  const [one, other] = [readingOf("mass", left, unit, true), readingOf("mass", right, unit, true)];
  if (pads) return one.state === "read" && other.state === "read" ? (sumOf(one.typed, other.typed) ?? "") : "";
  return one.state === "read" ? one.typed : "";
}

/** Why what is typed can be no rise of this car's axle; null when it can, or is not a reading yet. */
export function riseTrouble({ height }: LiftForm): string | null {
  const [reading, wheelbase] = [readingOf("length", height, unitOf("length")), book.value.car?.wheelbase];
  if (reading.state !== "read") return null;
  if (reading.value <= 0) return "An axle that did not rise tells no height.";
  if (!wheelbase || reading.value < wheelbase.value) return null;
  const { sentence, do: todo } = describe("lift_above_wheelbase");
  return `${sentence} ${todo}`;
}

/** What stands between this form and saving, as one sentence; null when it can be saved. */
export function missing(form: LiftForm): string | null {
  const unit = unitOf("length");
  const height = readingOf("length", form.height, unit, true);
  if (height.state === "empty") return "How far the axle rose is missing.";
  const trouble =
    troubleIn("The rise", height) ??
    troubleIn("The reading", readingOf("mass", form.left, form.unit, true)) ??
    (form.pads ? troubleIn("The right pad", readingOf("mass", form.right, form.unit, true)) : null) ??
    troubleIn("The rise is good to", readingOf("length", form.within, unit));
  if (trouble) return trouble;
  const unlikely = riseTrouble(form);
  if (unlikely) return unlikely;
  if (tiltedOf(form)) return null;
  if (form.pads && form.left && form.right)
    return "Type both pads in the same unit, as plain numbers such as 262.8 kg.";
  return "What the axle on the ground shows is missing.";
}

/** The lift's own fields as far as they are typed: what is saved, and what is worked out while typing. */
export function liftOfForm(form: LiftForm, weighIn: string): Record<string, Value> {
  const fields: Record<string, Value> = { weigh_in: weighIn, raised: form.raised };
  const put = (name: string, value: string | null) => {
    if (value) fields[name] = value;
  };
  put("tilted", tiltedOf(form));
  put("height", typedOf("length", form.height, unitOf("length")));
  put("height_within", typedOf("length", form.within, unitOf("length")));
  put("scale", form.scale);
  put("note", form.note.trim());
  return fields;
}

type Around = { car: string | null; weighIn: string; replaces: string | null; at?: string };

export function changesOf(form: LiftForm, { car, weighIn, replaces, at = momentTyped(form.at) }: Around): Change[] {
  const fields = liftOfForm(form, weighIn);
  const set = { ...fields, at, ...(car ? { car } : {}), ...(replaces ? { replaces } : {}) };
  return [{ kind: "lift", record: form.id, set, base: [] }];
}
