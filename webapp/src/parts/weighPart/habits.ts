/** The scale and unit in hand and where one is: remembered, so that nobody picks them twice. */

import { useEffect, useState } from "preact/hooks";
import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import { massUnit } from "../../garage/units";
import { scalesFor } from "../weighing/scalesFor";
import { momentTyped } from "../words/momentFields";
import { frozen, type Habits, type PartForm } from "./form";

const KEPT = "habits";
const ALONE = "me-alone";

/** What this phone's person weighed alone, as the display showed it, on which scale and when. */
export type Alone = { shown: string; scale: string | null; at: string };

/** What this phone used last, with a scale that has gone since left out; the unit is always the one on its display. */
async function habitsNow(): Promise<Habits> {
  const kept = await drafts.load<Habits>(KEPT).catch(() => null);
  if (!kept) return firstHabits();
  const scale = scalesFor("part").find((each) => each.id === kept.scale);
  return { ...kept, scale: scale?.id ?? null, unit: scale?.values.unit ?? kept.unit };
}

/** The same for a form, read again when scales come: those of a phone that has just joined are not there at once. */
export function useHabits(): Habits | null {
  const [habits, setHabits] = useState<Habits | null>(null);
  const scales = garage.value.of("scale");
  useEffect(() => void habitsNow().then(setHabits), [scales]);
  return habits;
}

/** A phone that has weighed nothing yet takes up the scale of the garage's newest weighing, else the first there is. */
function firstHabits(): Habits {
  const scales = scalesFor("part");
  const newest = garage.value.of("weighing").at(-1)?.values.scale;
  const scale = scales.find((each) => each.id === newest) ?? scales[0];
  return { unit: scale?.values.unit ?? massUnit(), scale: scale?.id ?? null, place: "garage" };
}

/** Lost without harm: the next form then asks what this one knew. */
export function rememberHabits(form: PartForm): void {
  const { unit, scale, place } = form;
  drafts.keep(KEPT, { unit, scale, place }).catch(() => undefined);
  if (form.method !== "difference") return;
  const alone: Alone = { shown: frozen(form).second, scale, at: momentTyped(form.at) };
  drafts.keep(ALONE, alone).catch(() => undefined);
}

/** Only the same scale's: its own error then falls out of the difference. */
export async function aloneOn(scale: string | null): Promise<Alone | null> {
  const kept = await drafts.load<Alone>(ALONE).catch(() => null);
  return kept?.scale === scale ? kept : null;
}
