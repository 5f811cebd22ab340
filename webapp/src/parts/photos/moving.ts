/** Where a photo can be moved to, and where the record it is of is looked at. */

import { garage, type Rec } from "../../garage/garage";
import { KINDS, type KindName } from "../../journal/kinds";
import { own } from "../../own";
import { to } from "../../route";
import type { Offer } from "../controls/picking";
import { momentOf, sayMoment } from "../words/moments";
import { kindWord, nameOf, sentenceCase } from "../words/naming";
import { around, placesOf, replaced } from "./shown";

/** The records a picture is not of yet and may be: those that have to do with `of`, which it is of, then the latest made. */
export function offersFor(of: string, sha256: string): Offer[] {
  const now = garage.value;
  const all = KINDS.photo!.fields.of!.of!.flatMap((kind): Rec[] => [...now.of(kind as KindName)]);
  const not = new Set([of, ...placesOf(sha256).map((place) => place.of), ...all.flatMap(({ id }) => replaced(id))]);
  const open = all.filter(({ id }) => !not.has(id));
  const close = near(of);
  const order = (rec: Rec) => Number(!close.has(rec.id));
  const sorted = open.sort((one, other) => order(one) - order(other) || (one.id < other.id ? 1 : -1));
  return sorted.map((rec) => ({ id: rec.id, name: sentenceCase(nameOf(rec)), note: noteOf(rec) }));
}

/** What kind of record it is, and when it was, where it is a fact. */
export function noteOf(rec: Rec): string {
  const when = KINDS[rec.kind]?.fact ? sayMoment(momentOf(rec)) : "";
  return [sentenceCase(kindWord(rec.kind)), when].filter(Boolean).join(", ");
}

/** What a record names, what hangs on it, and the jobs and parts beside it. */
function near(of: string): Set<string> {
  const now = garage.value;
  const named = Object.values(now.byId.get(of)?.values ?? {}).filter((value) => typeof value === "string");
  const mine = new Set([...around(of), ...named]);
  const lines = now.of("job_part").filter(({ values }) => mine.has(values.part ?? "") || mine.has(values.job ?? ""));
  return new Set([...mine, ...lines.flatMap(({ values: { part = "", job = "" } }) => [part, job])]);
}

const SCREENS = {
  part: "part",
  job: "job",
  weighing: "weighing",
  weigh_in: "weigh-in",
  lift: "lift",
  scale: "scale",
};

/** Null for a record that is not here. */
export function addressOf(id: string): string | null {
  const rec = garage.value.byId.get(id);
  const screen = rec && own(SCREENS, rec.kind);
  if (screen) return to(screen, id);
  const on = rec?.values.job ?? rec?.values.scale;
  return typeof on === "string" ? addressOf(on) : null;
}
