/** What a record and a kind are called in front of people; `fieldWords` names fields and values. */

import { garage, type Rec, type Value } from "../../garage/garage";
import { KINDS } from "../../journal/kinds";
import { own } from "../../own";

/** A kind's own word; the name of one that this app does not know. */
export function kindWord(kind: string, count = 1): string {
  const words = own(KINDS, kind)?.words;
  const one = kind.replaceAll("_", " ");
  return (words ?? [one, `${one}s`])[count === 1 ? 0 : 1]!;
}

/** A record's own name, or what it is about where it has none. */
export function nameOf(rec: Rec): string {
  const { values } = rec;
  const text = (values.name ?? values.text ?? values.what) as string | undefined;
  if (text) return text;
  if (rec.kind === "job_part")
    return `${refName(values.part)} ${values.way === "on" ? "on" : "off"}, in ${refName(values.job)}`;
  const about = values.of ?? values.scale ?? values.part ?? values.sheet;
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
