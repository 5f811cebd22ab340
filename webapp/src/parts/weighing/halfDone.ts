/** Facts begun and not saved: the drafts on this phone, named for people, with a way back into each and a way to be rid of it. */

import { LOOKS, type Reading } from "../../core/wholeCar/weighIn";
import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import { to } from "../../route";
import { momentOfId, sayMoment } from "../words/moments";
import { nameOf } from "../words/naming";
import { type DonorTyped, isBlank, isDonorBlank, type PartTyped } from "./blank";

/** `words`: "A half-typed weigh-in of 12 Sept", with what has been typed. */
export type HalfDone = { name: string; words: string; href: string };

type OfCar = Readonly<Partial<Record<Reading | "id", string>>>;
type OfSwap = Readonly<Record<"off" | "on", PartTyped>> & { id?: string };
const FACTS = /^(weigh-|swap:|donor:)/;
const READINGS = Object.values(LOOKS).flat();

export async function halfDone(): Promise<HalfDone[]> {
  const names = (await drafts.names()).filter((name) => FACTS.test(name));
  const found = await Promise.all(names.map(async (name) => described(name, await drafts.load(name))));
  return found.filter((each) => each !== null);
}

/** What a draft is called in front of people. `id`: of the record it would become, made when the form was opened. */
export function halfTyped(what: string, { id }: { id?: string }): string {
  const opened = momentOfId(id ?? "");
  return `A half-typed ${what}${opened ? ` of ${sayMoment(opened)}` : ""}`;
}

function described(name: string, form: unknown): HalfDone | null {
  const { id, part } = (form ?? {}) as { id?: string; part?: string };
  const isSaved = garage.value.byId.has(id ?? part ?? "");
  if (!form || isSaved) return null;
  if (name.startsWith("swap:")) return ofSwap(name, form as OfSwap);
  if (name.startsWith("donor:")) return ofDonor(name, form as DonorTyped);
  return name.startsWith("weigh-car") ? ofCar(name, form as OfCar) : ofPart(name, form as PartTyped);
}

/** The query that leads to a draft again. */
const asked = (query: Readonly<Record<string, string | undefined>>) =>
  Object.fromEntries(Object.entries(query).filter((each): each is [string, string] => !!each[1]));

function ofPart(name: string, form: PartTyped): HalfDone | null {
  const [, of = "", replaces, draft] = name.split(":");
  const opened = garage.value.byId.get(of);
  const isUntouched = isBlank({ ...form, of: opened ? { id: null, text: "" } : form.of });
  if (isUntouched) return null;
  const what = form.of.text.trim() || (opened ? nameOf(opened) : "a part");
  const words = `${halfTyped("weighing", form)}: ${form.shown ? `${what}, ${form.shown}` : what}`;
  const query = asked({ replaces, draft });
  return { name, words, href: of ? to("weigh-part", of, query) : to("weigh-part", query) };
}

function ofCar(name: string, form: OfCar): HalfDone | null {
  const [, replaces, draft] = name.split(":");
  const isUntouched = READINGS.every((name) => !form[name]?.trim());
  if (isUntouched) return null;
  return { name, words: halfTyped("weigh-in", form), href: to("weigh-car", asked({ replaces, draft })) };
}

function ofSwap(name: string, form: OfSwap): HalfDone | null {
  const [, job, off, on, draft] = name.split(":");
  if (isBlank({ ...form.off, of: { id: null, text: "" } }) && isBlank({ ...form.on, of: { id: null, text: "" } }))
    return null;
  const what = form.off.of.text.trim() || "a part";
  return { name, words: `${halfTyped("swap", form)}: ${what}`, href: to("swap", asked({ job, off, on, draft })) };
}

function ofDonor(name: string, form: DonorTyped): HalfDone | null {
  if (isDonorBlank(form)) return null;
  const [, insteadOf, draft] = name.split(":");
  const what = form.name.trim() || "a part";
  const words = `${halfTyped("donor part", { id: form.part })}: ${form.shown ? `${what}, ${form.shown}` : what}`;
  const query = asked({ "instead-of": insteadOf === "new" ? undefined : insteadOf, draft });
  return { name, words, href: to("donor", "new", query) };
}
