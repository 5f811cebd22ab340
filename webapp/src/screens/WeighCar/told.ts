/** What an official weigh-in should show, told before it is kept and kept with it, so that life tests the tool's word. */
import { bookWith, car } from "../../answers";
import { showPlain } from "../../core/numbers/shown";
import { expanded } from "../../core/numbers/uncertain";
import { foretell } from "../../core/standing/foretell";
import { masses } from "../../core/weighing/weighing";
import { garage } from "../../garage/garage";
import type { Changes } from "../../journal/kinds";
import { momentTyped } from "../../parts/words/momentFields";
import { type CarForm, weighInOf } from "./form";

/** A correction keeps what was foretold of the first; by now its reading is known. */
export function toldOf(form: CarForm, jobs: readonly string[], replaces: string | null): Changes<"weigh_in"> {
  if (replaces) {
    const { foretold, foretold_within } = garage.value.one("weigh_in", replaces)?.values ?? {};
    return { ...(foretold && { foretold }), ...(foretold_within && { foretold_within }) };
  }
  const record = { ...weighInOf(form, jobs), id: form.id, car: car.value?.id ?? null, at: momentTyped(form.at) };
  const laid = bookWith({ weigh_ins: [record] }, form.trim);
  const told = foretell(laid, masses(laid), form.id);
  if (!told) return {};
  return { foretold: showPlain(told.value, "kg"), foretold_within: showPlain(expanded(told), "kg") };
}
