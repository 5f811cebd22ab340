/** What is half typed on this device: nobody is moved to another version of the app in the middle of that. */

import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import { halfDone } from "../../parts/weighing/halfDone";
import { kindWord, nameOf } from "../../parts/words/naming";
import { to } from "../../route";

export type Unfinished = { name: string; words: string; href: string };

/** The screen on which records of a kind are filled in, and whether its address names the record. */
const FORMS: Record<string, { screen: string; named: boolean }> = {
  part: { screen: "part", named: true },
  job: { screen: "job", named: true },
  scale: { screen: "scale", named: true },
  scale_check: { screen: "scales", named: false },
  stage: { screen: "stages", named: false },
  driver: { screen: "drivers", named: false },
  class_sheet: { screen: "class-sheet", named: false },
  clause: { screen: "class-sheet", named: false },
  car: { screen: "car-sheet", named: false },
  garage: { screen: "units", named: false },
};

export async function inTheMiddle(): Promise<Unfinished[]> {
  const names = (await drafts.names()).filter((name) => /^(form|welcome)\b/.test(name));
  const others = await Promise.all(names.map(async (name) => described(name, await drafts.load(name))));
  return [...(await halfDone()), ...others.filter((each) => each !== null)];
}

type Typed = Record<string, unknown>;

function described(name: string, kept: unknown): Unfinished | null {
  const [sort, kind = "", id = "new"] = name.split(":");
  const fields = (kept ?? {}) as Typed;
  const isSaved = id === "new" && garage.value.byId.has(String(fields.id)); // killed before its draft was dropped
  if (sort === "form") return isSaved ? null : ofForm(name, kind, id, (fields.typed ?? {}) as Typed);
  return fields.car ? { name, words: "The first start", href: to("car") } : null;
}

function ofForm(name: string, kind: string, id: string, typed: Typed): Unfinished | null {
  const rec = garage.value.byId.get(id);
  const said = Object.entries(typed).map(([field, each]) => [field, (each as { value?: unknown }).value] as const);
  const isUntouched = said.every(([field, value]) => (rec?.values[field] ?? null) === (value ?? null));
  if (isUntouched) return null;
  const form = FORMS[kind];
  const words = rec ? `${nameOf(rec)} (${kindWord(kind)})` : `A new ${kindWord(kind)}`;
  return { name, words, href: form ? to(form.screen, ...(form.named ? [id] : [])) : to("car") };
}
