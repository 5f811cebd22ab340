/** Whether an entry fits the table of kinds. Typed quantities are only texts here: nothing typed is ever refused. */

import { isId, isIds, isText, isWhole } from "./entry";
import { type Field, KINDS, SCHEMA } from "./kinds";
import type { AsideReason, Entry } from "./types";

const TYPED_CHARACTERS = 64;
/** What every record may carry: that it was deleted, and what hung on it as far as its writer knew (ids of records). */
export const TOMBSTONE: readonly string[] = ["deleted", "hung"];
export const MOST_HUNG = 1000;
const HASH = /^[0-9a-f]{64}$/;

type Fields = Readonly<Record<string, unknown>>;

/** Why this entry cannot be folded whatever else the journal holds, or null. */
export function problem(entry: Entry): AsideReason | null {
  if (entry.schema > SCHEMA) return "newer_schema";
  if (!Object.hasOwn(KINDS, entry.kind)) return "unknown_kind";
  return known(entry.kind, entry.set).every((name) => fits(entry.kind, name, entry.set[name])) ? null : "invalid";
}

/** Those of an entry's fields that this app knows; the others stay in the entry, for an app that does. */
export function known(kind: string, set: Fields): string[] {
  const { fact, fields } = KINDS[kind]!;
  const own = fact ? ["deleted"] : TOMBSTONE;
  return Object.keys(set).filter((name) => own.includes(name) || Object.hasOwn(fields, name));
}

/** The first field that this app may not write, or null. `null` clears a field that need not be set. */
export function misfitting(kind: string, set: Fields): string | null {
  const own = new Set(known(kind, set));
  return Object.keys(set).find((name) => !own.has(name) || !fits(kind, name, set[name])) ?? null;
}

/** The first field that a record's first entry must set and does not, or null. */
export function lacksRequired(kind: string, set: Fields): string | null {
  const fields = KINDS[kind]!.fields;
  return Object.keys(fields).find((name) => fields[name]!.required && (set[name] ?? null) === null) ?? null;
}

export function isFact(kind: string): boolean {
  return KINDS[kind]!.fact === true;
}

function fits(kind: string, name: string, value: unknown): boolean {
  if (name === "deleted") return typeof value === "boolean";
  if (name === "hung") return value === null || (isIds(value) && value.length <= MOST_HUNG);
  const field = KINDS[kind]!.fields[name]!;
  return value === null ? !field.required : FITS[field.type](value, field);
}

const fitsTyped = (value: unknown): boolean => isText(value, TYPED_CHARACTERS);

const FITS: Record<Field["type"], (value: unknown, field: Field) => boolean> = {
  text: (value, field) => isText(value, field.most!),
  mass: fitsTyped,
  length: fitsTyped,
  volume: fitsTyped,
  money: fitsTyped,
  hours: fitsTyped,
  fraction: fitsTyped,
  moment: fitsTyped,
  flag: (value) => typeof value === "boolean",
  count: (value, field) => isWhole(value, 1, field.most!),
  integer: (value, field) => isWhole(value, 0, field.most!),
  choice: (value, field) => field.of!.includes(value as string),
  choices: (value, field) =>
    Array.isArray(value) && value.length <= field.most! && value.every((item) => field.of!.includes(item)),
  ref: isId,
  refs: (value, field) => isIds(value) && value.length <= field.most!,
  hash: (value) => typeof value === "string" && HASH.test(value),
};
