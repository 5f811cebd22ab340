/** Weighings begun and not saved: the drafts on this phone, named for people and with a way back into each. */

import { LOOKS, type Reading } from "../../core/wholeCar/weighIn";
import { drafts } from "../../garage/drafts";
import { garage } from "../../garage/garage";
import { to } from "../../route";
import { nameOf } from "../words/naming";
import { isBlank, type PartTyped } from "./blank";

export type HalfDone = { name: string; words: string; href: string };

type OfCar = Readonly<Partial<Record<Reading, string>>>;
const READINGS = Object.values(LOOKS).flat();

export async function halfDone(): Promise<HalfDone[]> {
  const names = (await drafts.names()).filter((name) => name.startsWith("weigh-"));
  const found = await Promise.all(names.map(async (name) => described(name, await drafts.load(name))));
  return found.filter((each) => each !== null);
}

function described(name: string, form: unknown): HalfDone | null {
  const isSaved = garage.value.byId.has((form as { id?: string } | null)?.id ?? "");
  if (!form || isSaved) return null;
  return name.startsWith("weigh-car") ? ofCar(name, form as OfCar) : ofPart(name, form as PartTyped);
}

function ofPart(name: string, form: PartTyped): HalfDone | null {
  const [, of = "", replaces = ""] = name.split(":");
  const opened = garage.value.byId.get(of);
  const isUntouched = isBlank({ ...form, of: opened ? { id: null, text: "" } : form.of });
  if (isUntouched) return null;
  const what = form.of.text.trim() || (opened ? nameOf(opened) : "A part");
  const query = replaces ? [{ replaces }] : [];
  return {
    name,
    words: form.shown ? `${what}, ${form.shown}` : what,
    href: of ? to("weigh-part", of, ...query) : to("weigh-part", ...query),
  };
}

function ofCar(name: string, form: OfCar): HalfDone | null {
  const [, replaces = ""] = name.split(":");
  const isUntouched = READINGS.every((name) => !form[name]?.trim());
  if (isUntouched) return null;
  return { name, words: "The whole car", href: replaces ? to("weigh-car", { replaces }) : to("weigh-car") };
}
