/** What fields and their values are called in front of people, and what a form begins them with. */

import { garage, type Value } from "../../garage/garage";
import { unitWord } from "../../garage/units";
import { FIELDS as TOLD } from "../../generated/fields";
import { type Field, KINDS, type KindName, type Told, type Values } from "../../journal/kinds";
import type { FieldOf, Rec } from "../../journal/types";
import { own } from "../../own";
import { nameOf, refName } from "./naming";
import { percentOf } from "./percent";

type Option = { value: string; label: string };

const FIELDS: Readonly<Record<string, Readonly<Record<string, Told>>>> = TOLD;

const LONG = 1000; // characters

/** What is said of a field; nothing of one that this app does not know. */
export function toldOf(kind: string, field: string): Told {
  return own(own(FIELDS, kind) ?? {}, field) ?? {};
}

/** What stands above a field on a form. */
export function labelOf<K extends string>(kind: K, field: FieldOf<K>): string {
  return toldOf(kind, field).label ?? "";
}

/** A field in a sentence. */
export function fieldWord(kind: string, field: string): string {
  return field === "deleted" ? "withdrawn" : (toldOf(kind, field).word ?? field.replaceAll("_", " "));
}

/** Whether a text has several lines. */
export function isLongText({ type, most = 0 }: Field): boolean {
  return type === "text" && most > LONG;
}

/** Records as a form offers them. */
export function optionsFrom(records: readonly Rec[]): Option[] {
  return records.map((rec) => ({ value: rec.id, label: nameOf(rec) }));
}

/** A field's choices as a form offers them; of a reference, all the records it may lead to. */
export function optionsOf<K extends string>(kind: K, field: FieldOf<K>): Option[] {
  const { type, of = [] } = KINDS[kind]?.fields[field] ?? {};
  if (type === "ref") return of.flatMap((each) => optionsFrom(garage.value.of(each as KindName)));
  const words = toldOf(kind, field).words ?? Object.fromEntries(of.map((each) => [each, each]));
  return Object.entries(words).map(([value, label]) => ({ value, label }));
}

/** What a choice is called on a form; the choice itself where it has no words of its own. */
export function choiceWord<K extends string>(kind: K, field: FieldOf<K>, choice: string | undefined): string {
  return toldOf(kind, field).words?.[choice ?? ""] ?? choice ?? "";
}

/** What a new record's form begins with. */
export function startOf<K extends KindName>(kind: K): Values<K> {
  const begun = Object.entries(FIELDS[kind]!).flatMap(([field, { start }]) => (start ? [[field, start]] : []));
  return Object.fromEntries(begun) as Values<K>;
}

/** A value of a field in words. */
export function valueWords(kind: string, field: string, value: Value): string {
  const type = own(own(KINDS, kind)?.fields ?? {}, field)?.type;
  if (value === null) return "nothing";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (type === "ref") return refName(value);
  if (Array.isArray(value))
    return value.length ? value.map((each) => (type === "refs" ? refName(each) : plain(each))).join(", ") : "none";
  if (type === "choice")
    return toldOf(kind, field).words?.[plain(value)] ?? unitWord(plain(value)).replaceAll("_", " ");
  const { sides, unit } = toldOf(kind, field);
  if (sides && plain(value) !== "") return placeWords(plain(value), sides);
  if (unit === "percent") return `${percentOf(plain(value))} %`;
  return plain(value);
}

/** A place along an axis as it was typed, and to which side. */
function placeWords(text: string, [minus, plus]: readonly [string, string]): string {
  const isMinus = text.startsWith("-");
  return `${text.replace("-", "")} ${(isMinus ? minus : plus).toLowerCase()}`;
}

/** What was set aside may hold anything JSON can say. */
function plain(value: unknown): string {
  return typeof value === "string" ? value : JSON.stringify(value);
}
