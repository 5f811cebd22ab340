/** A page of the app as the simulation opens it: the app's own start, and the hands of a person at its screens. */

import { live } from "../../../webapp/src/garage/garage";
import { pair, session } from "../../../webapp/src/garage/session";
import { type NewPhoto, save } from "../../../webapp/src/garage/write";
import { TABLE } from "../../../webapp/src/generated/kinds";
import { rawId } from "../../../webapp/src/journal/entry";
import type { Rec, Value } from "../../../webapp/src/journal/types";
import { addPending, rowsSince } from "../../../webapp/src/store/entries";
import { opened } from "../../../webapp/src/store/opened";
import { readState } from "../../../webapp/src/store/state";
import { exportAll } from "../../../webapp/src/store/takeout";
import { startPhone } from "../../../webapp/src/sync/start";
import { noted, syncNow } from "../../../webapp/src/sync/state";

type Fields = Record<string, Value>;

/** Starts the app; `unknown`: fields of jobs this page is too old to know. */
export async function start(unknown: readonly string[]): Promise<void> {
  for (const field of unknown) Reflect.deleteProperty(TABLE.job.fields, field);
  await startPhone();
}

export async function join(code: string): Promise<boolean> {
  return pair(code);
}

/** What a person sets on a job: the first hand on it also names it. Gives the texts that were called saved. */
export function edit(record: string, set: Fields, base: string[] | null): Promise<string[]> {
  const known = live.value?.garage.value.byId.has(record);
  const fields = known && base === null ? set : { name: "Seats", ...set };
  const change = { kind: "job", record, set: fields };
  return saved(() => save([base === null ? change : { ...change, base }]));
}

/** A job of its own for every photo, so that the photo has something to be of. */
export function photo(record: string, bytes: ArrayBuffer): Promise<string[]> {
  const taken: NewPhoto = { of: record, bytes, type: "image/png", width: 8, height: 8 };
  return saved(() => save([], [taken]));
}

/** Decides about one entry set aside, or takes in all strangers; saves nothing when there is none. */
export function judge(pick: number, take: boolean, all: boolean): Promise<string[]> {
  const aside = live.value?.garage.value.aside.filter(({ number }) => number !== null) ?? [];
  const ids = aside.map(({ id }) => id).sort();
  const strangers = aside.filter(({ reason }) => reason === "stranger").map(({ id }) => id);
  const chosen = all ? strangers.sort() : ids.length > 0 ? [ids[pick % ids.length]!] : [];
  if (chosen.length === 0) return Promise.resolve([]);
  return saved(() => save(chosen.map((entry) => ({ kind: "verdict", set: { entry, take: all || take } }))));
}

/** A text that this app would not write, put where it keeps its own unless it has one of that name. */
export async function foreign(name: string | null, text: string): Promise<string[]> {
  const { store } = live.value!;
  const id = name ?? rawId(text);
  if (await store.read((db) => db.entries.get(id))) return [];
  return saved(async () => live.value!.took(await addPending(store, [{ id, text }], [])));
}

async function saved(work: () => Promise<unknown>): Promise<string[]> {
  const { store } = live.value!;
  const before = (await readState(store)).counter;
  await work();
  const { rows } = await rowsSince(store, before);
  return rows.filter(({ state }) => state === "pending").map(({ text }) => text);
}

export const takeout = exportAll;
export const retry = syncNow;

/** Whom this page takes itself for, and what it has still to do. */
export function mood() {
  const { state, device } = session.value;
  const trouble = noted.trouble.value?.code ?? null;
  const waiting = (live.value?.waiting.value ?? 0) + noted.photosWaiting.value;
  return { state, device: device ?? null, token: opened.value?.token ?? null, trouble, waiting };
}

/** What this page shows, alike on pages that know the same. */
export function look() {
  const garage = live.value?.garage.value;
  const records = garage ? Object.fromEntries([...garage.byId.values()].map((rec) => [rec.id, shown(rec)])) : {};
  const aside = Object.fromEntries(garage?.aside.map(({ id, reason }) => [id, reason]) ?? []);
  return { records, aside };
}

function shown({ kind, values, conflicts, heads, deleted }: Rec) {
  const sides = Object.entries(conflicts).map(([field, claims]) => [field, claims.map(({ value }) => value)]);
  return { kind, values, conflicts: Object.fromEntries(sides), heads: [...heads].sort(), deleted };
}
