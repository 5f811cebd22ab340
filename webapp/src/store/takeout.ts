/**
 * Everything on the phone as one file: JSON, with every entry's exact text, every photo's bytes in base64, drafts and
 * how far sync has come. The token stays out of it: whoever gets the file shall not get the garage.
 */

import { AppError } from "../errors";
import { SCHEMA } from "../journal/kinds";
import { type Readable, readAsItIs } from "./as_it_is";
import type { BytesRow, EntryRow } from "./database";
import { type Opened, opened } from "./opened";
import { latestPairing } from "./pairings";
import { readState } from "./state";

/** Photos read into memory at a time. */
const AT_ONCE = 8;

type From = Omit<Opened, "token" | "drafts" | "demo" | "store"> & { store: Readable };

/** The file of the open garage, or of the one that should be open and cannot be. Rejects with AppError. */
export async function exportAll(): Promise<Blob> {
  const from = opened.peek() ?? (await latestPairing());
  if (!from) throw new AppError("garage_not_open");
  const parts = await readAsItIs(from.garage, (store) => takeout({ ...from, store }, new Date()));
  return new Blob(parts, { type: "application/json" });
}

/** The file in parts: the whole of it may be more than one string can hold. */
export async function takeout({ store, garage, device, name }: From, at: Date): Promise<BlobPart[]> {
  const { cursor, durable, heard } = await readState(store);
  const head = {
    format: "tarebook-takeout",
    version: 1,
    schema: SCHEMA,
    made_at: at.toISOString(),
    garage,
    name,
    device,
  };
  return [
    inner({ ...head, cursor, durable, heard }),
    ...list("entries", (await store.read((db) => db.entries.toArray())).sort(inOrder).map(entryOut)),
    ...list(
      "drafts",
      (await store.read((db) => db.drafts.toArray())).map(({ name, value }) => ({ name, value: plain(value) })),
    ),
    ...list("photos", await store.read((db) => db.photos.toArray())),
    ...(await bytesOut(store)),
    "}\n",
  ];
}

/** An object's members without the closing brace, for more to follow. */
function inner(members: object): string {
  return JSON.stringify(members).slice(0, -1);
}

function list(name: string, items: object[]): string[] {
  return [`,\n"${name}":[\n`, items.map((item) => JSON.stringify(item)).join(",\n"), "]"];
}

function inOrder(one: EntryRow, other: EntryRow): number {
  return (one.number ?? Infinity) - (other.number ?? Infinity) || one.order - other.order;
}

function entryOut({ text, number, aside, state, receipt, sent_by }: EntryRow): object {
  return { text, number, aside, state, receipt, sent_by };
}

async function bytesOut(store: Readable): Promise<BlobPart[]> {
  const keys = await store.read((db) => db.photo_bytes.toCollection().primaryKeys());
  const parts: BlobPart[] = [',\n"photo_bytes":[\n'];
  for (let at = 0; at < keys.length; at += AT_ONCE) {
    const rows = await store.read((db) => db.photo_bytes.bulkGet(keys.slice(at, at + AT_ONCE)));
    for (const row of rows) if (row) parts.push(parts.length > 1 ? ",\n" : "", new Blob([JSON.stringify(rowOut(row))]));
  }
  return [...parts, "]"];
}

function rowOut({ sha256, size, type, bytes }: BytesRow): object {
  return { sha256, size, type, base64: base64(bytes) };
}

/** A draft's value as JSON: bytes inside become {"base64": …}. */
function plain(value: unknown): unknown {
  if (value instanceof ArrayBuffer) return { base64: base64(value) };
  if (Array.isArray(value)) return value.map(plain);
  if (!(value instanceof Object) || value instanceof Date) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inside]) => [name, plain(inside)]));
}

function base64(bytes: ArrayBuffer): string {
  const view = new Uint8Array(bytes);
  let text = "";
  // In pieces: a call cannot take a photo's worth of arguments. Multiples of three join without padding.
  for (let at = 0; at < view.length; at += 24_576) text += btoa(String.fromCharCode(...view.subarray(at, at + 24_576)));
  return text;
}

/** How many photos the file has in full, and how many only small: their full size is on the home computer or lost. */
export type PhotosInside = { full: number; small: number };

export async function photosInside(): Promise<PhotosInside> {
  const from = opened.peek();
  if (!from) return { full: 0, small: 0 };
  const keys = await from.store.read((db) => db.photo_bytes.toCollection().primaryKeys());
  return countedBySize(keys);
}

/** `keys`: [sha256, size] of every picture kept. */
export function countedBySize(keys: readonly (readonly [string, string])[]): PhotosInside {
  const full = new Set(keys.filter(([, size]) => size === "full").map(([sha256]) => sha256));
  const all = new Set(keys.map(([sha256]) => sha256));
  return { full: full.size, small: all.size - full.size };
}
