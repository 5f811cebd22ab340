/** The place of a part as its form has it now, saved or not: what is typed, else its zone's; and what a finger writes into it. */
import { book } from "../../answers";
import { type Place, placeOf } from "../../core/balance/place";
import type { Part } from "../../core/garage/records";
import { type Quantity, read } from "../../core/numbers/quantity";
import { unitOf } from "../../garage/units";
import type { Form } from "../forms/form";
import { readingOf } from "../words/reading";
import { fingerText, fingerWithin } from "./placeWords";
import type { Spot, View } from "./view";

function typed(form: Form<"part">, field: "x" | "y" | "z" | "place_within", signed: boolean): Quantity | null {
  try {
    return form.text(field).trim() ? read("length", form.text(field), unitOf("length"), false, signed) : null;
  } catch {
    return null; // the field itself says what is wrong with it
  }
}

/** Null while the part has not reached the core (its record is not here). */
export function placeInForm(form: Form<"part">): Place | null {
  const part = book.value.parts.get(form.id);
  if (!part) return null;
  const now: Part = {
    ...part,
    zone: form.values.zone ?? null,
    x: typed(form, "x", true),
    y: typed(form, "y", true),
    z: typed(form, "z", false),
    place_within: typed(form, "place_within", false),
  };
  return placeOf(book.value.car, now, part.count ?? 1);
}

/** Writes what a view shows of a place into the form, and that it is known no better than a finger can place it. */
export function setFromFinger(form: Form<"part">, to: Spot, view: View): void {
  const unit = unitOf("length");
  const axes = view.side === "top" ? (["x", "y"] as const) : (["x", "z"] as const);
  const other = view.side === "top" ? "z" : "y";
  form.set("place_within", coarser(form.text(other) ? form.text("place_within") : "", fingerWithin(view, unit), unit));
  for (const axis of axes) form.set(axis, fingerText(to[axis], unit));
}

/** Of two lengths the larger: what the other axis was known by still holds for it. */
function coarser(before: string, now: string, unit: string): string {
  const [a, b] = [readingOf("length", before, unit), readingOf("length", now, unit)];
  return a.state === "read" && b.state === "read" && a.value > b.value ? before : now;
}
