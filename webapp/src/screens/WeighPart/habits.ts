/** The scale and unit in hand and where one is: remembered, so that nobody picks them twice. */

import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import type { Habits, PartForm } from "./form";

const KEPT = "habits";

/** What this phone used last, with a scale that has gone since left out; the unit is always the one on its display. */
export async function habitsNow(): Promise<Habits> {
  const kept = await drafts.load<Habits>(KEPT).catch(() => null);
  if (!kept) return firstHabits();
  const scale = garage.value.of("scale").find((each) => each.id === kept.scale);
  return { ...kept, scale: scale?.id ?? null, unit: scale?.values.unit ?? kept.unit };
}

/** A phone that has weighed nothing yet takes up the scale of the garage's newest weighing, else the first there is. */
function firstHabits(): Habits {
  const scales = garage.value.of("scale");
  const newest = garage.value.of("weighing").at(-1)?.values.scale;
  const scale = scales.find((each) => each.id === newest) ?? scales[0];
  return { unit: scale?.values.unit ?? massUnit(), scale: scale?.id ?? null, place: "garage" };
}

/** Lost without harm: the next form then asks what this one knew. */
export function rememberHabits({ unit, scale, place }: PartForm): void {
  drafts.keep(KEPT, { unit, scale, place }).catch(() => undefined);
}
