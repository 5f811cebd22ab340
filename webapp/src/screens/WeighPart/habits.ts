/** The scale and unit in hand and where one is: remembered from weighing to weighing, so that nobody picks them twice. */
import { garage } from "../../journal/garage";
import { massUnit } from "../../parts/units";
import { drafts } from "../../store/drafts";
import type { Habits, PartForm } from "./form";

const KEPT = "habits";

/** What was used last, with a scale that has gone since left out; at first the only scale there is. */
export async function habitsNow(): Promise<Habits> {
  const kept = await drafts.load<Habits>(KEPT).catch(() => null);
  const scales = garage.value.of("scale");
  const first = scales[0];
  if (!kept) return { unit: (first?.values["unit"] as string | undefined) ?? massUnit(), scale: first?.id ?? null, place: "garage" };
  return scales.some((scale) => scale.id === kept.scale) ? kept : { ...kept, scale: null };
}

/** Lost without harm: the next form then asks what this one knew. */
export function rememberHabits({ unit, scale, place }: PartForm): void {
  drafts.keep(KEPT, { unit, scale, place }).catch(() => undefined);
}
