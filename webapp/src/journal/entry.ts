/** One entry: reading its JSON text. The server reads it the same way (`server/tarebook/journal/entries.py`). */

import { sha256, utf8 } from "./bytes";
import type { Entry, Value } from "./types";

/** The most bytes one entry's text may have; checked before anything is called saved. */
export const MOST_BYTES = 64 * 1024;
/** An entry nests three deep; more than this is no entry. */
const DEEPEST = 20;
const ID = /^[!-~]{1,80}$/;
const MADE_AT_MOST = 64;
const PLAIN = /^[ -~]*$/;
const LONE_SURROGATE = /\p{Surrogate}/u;

/** The name of a text that has none of its own: unreadable, or its id is taken by another text. */
export function rawId(text: string): string {
  return `raw-${sha256(utf8(text)).slice(0, 32)}`;
}

/** The entry a text holds, or null when it is not JSON or not an entry. Its fields are checked later, by kind. */
export function readEntry(text: string): Entry | null {
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch {
    return null;
  }
  return isObject(found) && !isTooDeep(text) ? entryIn(found) : null;
}

function isTooDeep(text: string): boolean {
  if (occurrences(text, "[") + occurrences(text, "{") <= DEEPEST) return false;
  let depth = 0;
  let deepest = 0;
  for (const mark of text.replace(/"(?:[^"\\]|\\.)*"/gs, "").match(/[[\]{}]/g) ?? []) {
    depth += mark === "[" || mark === "{" ? 1 : -1;
    deepest = Math.max(deepest, depth);
  }
  return deepest > DEEPEST;
}

function occurrences(text: string, mark: string): number {
  let count = 0;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) count++;
  return count;
}

function entryIn(found: Record<string, unknown>): Entry | null {
  const { id, device, writer, n, kind, record, set, base, photos = [], made_at = "", schema = 1 } = found;
  if (![id, device, writer, kind, record].every(isId) || !isIds(base) || !isIds(photos) || !isObject(set)) return null;
  if (!isWhole(n, 0, Number.MAX_SAFE_INTEGER) || !isWhole(schema, 1, Number.MAX_SAFE_INTEGER)) return null;
  if (!isText(made_at, MADE_AT_MOST)) return null;
  return { id, device, writer, n, kind, record, set, base, photos, made_at, schema } as Entry;
}

/** Names are 1 to 80 printable ASCII characters without a space, so that both languages order and compare them alike. */
export function isId(value: unknown): value is string {
  return typeof value === "string" && ID.test(value);
}

export function isIds(value: unknown): value is string[] {
  return Array.isArray(value) && value.every(isId);
}

/** Characters are Unicode code points; NUL and lone surrogates fit no database and no file. */
export function isText(value: unknown, most: number): value is string {
  if (typeof value !== "string") return false;
  // Almost every text is plain; only one that is not is looked at closely.
  if (!PLAIN.test(value) && (value.includes("\0") || LONE_SURROGATE.test(value))) return false;
  return value.length <= most || (value.length <= 2 * most && Array.from(value).length <= most);
}

export function isWhole(value: unknown, least: number, most: number): value is number {
  return Number.isSafeInteger(value) && (value as number) >= least && (value as number) <= most;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Values are equal when they would be written alike; lists item by item. */
export function sameValue(one: Value, other: Value): boolean {
  if (!Array.isArray(one) || !Array.isArray(other)) return one === other;
  return one.length === other.length && one.every((item, at) => item === other[at]);
}
