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
import type { Changes, Values } from "../../journal/kinds";
import { setOf, textsOf } from "../../parts/forms/draftRecord";
import type { Shot } from "../../parts/photos/Photos";
import { momentForField, momentTyped } from "../../parts/words/momentFields";
import { readingOf, troubleIn } from "../../parts/words/reading";

export type Raised = NonNullable<Values<"lift">["raised"]>;

const TYPED = ["height", "height_within", "note"] as const;

/** Named as the fields of the lift. `at`: when, as a date field gives it; "" is now. */
export type LiftForm = Record<(typeof TYPED)[number] | "at", string> & {
  id: string;
  step: number;
  raised: Raised;
  /** Two pads stand under the axle on the ground: `left` and `right` of it; else all of it is in `left`. */
  pads: boolean;
  left: string;
  right: string;
  unit: string;
  scale: string | null;
  shots: Shot[];
};

export function emptyForm(id: string, unit: string, scale: string | null, pads: boolean): LiftForm {
  const typed = { height: "", height_within: "", note: "", at: "", left: "", right: "" };
  return { ...typed, id, step: 0, raised: "rear", pads, unit, scale, shots: [] };
}

/** A lift to be replaced, opened as it was entered, at `step`. Its load stands in one field, as the record has it. */
export function formFrom(id: string, before: Values<"lift">, unit: string, step: number): LiftForm {
  const { raised = "rear", scale = null, tilted = "", at } = before;
  const typed = { ...textsOf(before, TYPED), left: tilted, at: momentForField(at) };
  return { ...emptyForm(id, unit, scale, false), ...typed, step, raised };
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
    troubleIn("The rise is good to", readingOf("length", form.height_within, unit));
  if (trouble) return trouble;
  const unlikely = riseTrouble(form);
  if (unlikely) return unlikely;
  if (tiltedOf(form)) return null;
  if (form.pads && form.left && form.right)
    return "Type both pads in the same unit, as plain numbers such as 262.8 kg.";
  return "What the axle on the ground shows is missing.";
}

/** The lift's own fields as far as they are typed: what is saved, and what is worked out while typing. */
export function liftOfForm(form: LiftForm, weighIn: string): Changes<"lift"> {
  const tilted = tiltedOf(form);
  const typed = setOf("lift", form, ["raised", ...TYPED, "scale"]);
  return { weigh_in: weighIn, ...typed, ...(tilted && { tilted }) };
}

type Around = { car: string | null; weighIn: string; replaces: string | null; at?: string };

export function changesOf(form: LiftForm, { car, weighIn, replaces, at = momentTyped(form.at) }: Around): Change[] {
  const set = { ...liftOfForm(form, weighIn), at, ...(car && { car }), ...(replaces && { replaces }) };
  return [{ kind: "lift", record: form.id, set, base: [] }];
}
