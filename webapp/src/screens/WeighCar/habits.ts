/** What the next weigh-in starts with: scales, layout and trim as last time. Who sat in it and the fuel are asked anew. */

import { drafts } from "../../garage/drafts";
import { garage, type Rec } from "../../garage/garage";
import { bareUnit } from "../../garage/units";
import { scalesFor } from "../../parts/weighing/scalesFor";
import type { CarForm, CarHabits, Layout } from "./form";

const KEPT = "car-habits";
const LAYOUT_OF: Record<string, Layout | undefined> = { corner_pads: "corners", axle_pads: "axles", platform: "total" };

export async function habitsNow(): Promise<CarHabits> {
  const kept = await drafts.load<CarHabits>(KEPT).catch(() => null);
  if (!kept) return firstHabits();
  const scale = scalesFor(kept.layout).find((each) => each.id === kept.scale);
  const { layout, trim, place } = kept;
  return { layout, trim, place, scale: scale?.id ?? null, unit: displayUnit(scale) ?? kept.unit };
}

/** The unit of the scale's display, where a car can be read in it. */
export function displayUnit(scale: Rec<"scale"> | null | undefined): string | undefined {
  const unit = scale?.values.unit;
  return unit === "kg" || unit === "lb" ? unit : undefined;
}

/** Before any weigh-in: the scales of the garage that a car fits on, and what they are made for. */
function firstHabits(): CarHabits {
  const scale = garage.value.of("scale").find(({ values: { kind = "" } }) => LAYOUT_OF[kind]);
  const layout = LAYOUT_OF[scale?.values.kind ?? ""] ?? "corners";
  return {
    layout,
    unit: displayUnit(scale) ?? bareUnit(),
    scale: scale?.id ?? null,
    trim: "event",
    place: "",
  };
}

/** Lost without harm: the next form then asks what this one knew. */
export function rememberHabits({ layout, unit, scale, trim, place }: CarForm): void {
  drafts.keep(KEPT, { layout, unit, scale, trim, place }).catch(() => undefined);
}
