/** What a record and a kind are called in front of people; `fieldWords` names fields and values. */

import { garage, type Rec, type Value } from "../../journal/garage";
import { own } from "../../own";

const KIND_WORDS: Record<string, [one: string, many: string]> = {
  garage: ["garage", "garages"],
  car: ["car", "cars"],
  scale: ["scale", "scales"],
  scale_check: ["scale check", "scale checks"],
  part: ["part", "parts"],
  weighing: ["weighing", "weighings"],
  driver: ["driver", "drivers"],
  stage: ["stage", "stages"],
  job: ["job", "jobs"],
  job_part: ["part of a job", "parts of jobs"],
  loose_end: ["loose end", "loose ends"],
  weigh_in: ["weigh-in", "weigh-ins"],
  ballast_place: ["place for ballast", "places for ballast"],
  sheet: ["sheet", "sheets"],
  sheet_hole: ["hole of a sheet", "holes of sheets"],
  class_sheet: ["class sheet", "class sheets"],
  clause: ["clause", "clauses"],
  photo: ["photo", "photos"],
  verdict: ["decision on a record", "decisions on records"],
};

export function kindWord(kind: string, count = 1): string {
  return own(KIND_WORDS, kind)?.[count === 1 ? 0 : 1] ?? kind.replaceAll("_", " ");
}

/** A record's own name, or what it is about where it has none. */
export function nameOf(rec: Rec): string {
  const { values } = rec;
  const text = (values["name"] ?? values["text"] ?? values["what"]) as string | undefined;
  if (text) return text;
  if (rec.kind === "job_part")
    return `${refName(values["part"])} ${values["way"] === "on" ? "on" : "off"}, in ${refName(values["job"])}`;
  const about = values["of"] ?? values["scale"] ?? values["part"] ?? values["sheet"];
  return about ? `${kindWord(rec.kind)} of ${refName(about)}` : kindWord(rec.kind);
}

/** The name behind a reference; the kind of reading of a record that is not here. */
export function refName(id: Value | undefined): string {
  const rec = typeof id === "string" ? garage.value.byId.get(id) : undefined;
  return rec ? nameOf(rec) : "a record not here yet";
}

export function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** "row Z" from "Z", and from "row Z" and "Row Z" too: people write the word along. */
export function withWord(word: string, text: string): string {
  return new RegExp(`^${word}\\b`, "i").test(text) ? text : `${word} ${text}`;
}
