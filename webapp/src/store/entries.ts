/** Entries on the phone: written pending, marked as sent, matched with what a pull brings, laid open again by a rewind. */

import { Dexie } from "dexie";

import type { Proof, Pulled, PulledEntry } from "../generated/routes";
import { rawId, readEntry } from "../journal/entry";
import { type Cursor, type EntryRow, type GarageDb, NO_CURSOR, type State } from "./database";
import type { PhotoToKeep } from "./photo_rows";
import { keepPhotos } from "./photo_rows";
import type { Store, Written } from "./store";

/** `lines`: one's `id` comes only with a text without a name of its own. `mark`: the home computer's own for the journal
 * up to the last line. */
export type Page = Pick<Pulled, "epoch" | "mark"> & { lines: readonly PulledEntry[]; durable: number; heard: string };

export type Fresh = { id: string; text: string };
export type WrittenRows = Written<EntryRow[]>;

/** Writes entries and photos as pending, and drops the draft they came from, in one transaction. */
export function addPending(store: Store, fresh: Fresh[], photos: PhotoToKeep[], draft?: string): Promise<WrittenRows> {
  return store.write(["entries", "photos", "photo_bytes", "drafts"], async (db, state) => {
    const rows = fresh.map(({ id, text }) => pendingRow(id, text, ++state.counter));
    await db.entries.bulkPut(rows);
    await keepPhotos(db, state, photos);
    if (draft !== undefined) await db.drafts.delete(draft);
    return rows;
  });
}

function pendingRow(key: string, text: string, seq: number): EntryRow {
  return { key, text, number: null, aside: null, order: seq, seq, state: "pending" };
}

/** All rows, or those written since a counter; with the state of the same moment. */
export function rowsSince(store: Store, counter: number): Promise<{ state: State | null; rows: EntryRow[] }> {
  return store.read((db) =>
    db.transaction("r", [db.entries, db.meta], async () => {
      const state = (await db.meta.get("state"))?.value ?? null;
      const rows = counter === 0 ? db.entries.toArray() : db.entries.where("seq").above(counter).toArray();
      return { state, rows: await rows };
    }),
  );
}

/** The next entries to send, oldest first, without those named. */
export function nextPending(store: Store, most: number, without: ReadonlySet<string>): Promise<EntryRow[]> {
  return store.read((db) => {
    const pending = inState(db, "pending");
    const wanted = without.size > 0 ? pending.filter((row) => !without.has(row.key)) : pending;
    return wanted.limit(most).toArray();
  });
}

function inState(db: GarageDb, state: EntryRow["state"]) {
  return db.entries.where("[state+order]").between([state, Dexie.minKey], [state, Dexie.maxKey]);
}

/** What the home computer tells of an entry beside its text: its receipt, and its author where that is another. */
type Told = Partial<Proof>;

function told({ receipt, sent_by }: Told): Told {
  return { ...(receipt !== undefined && { receipt }), ...(sent_by !== undefined && { sent_by }) };
}

/**
 * The home computer has taken these, and told this of each key. They stay pending to the eye until they have come back
 * by a pull; those that had come back already were only to be proven.
 */
export function markSent(store: Store, taken: ReadonlyMap<string, Told>): Promise<WrittenRows> {
  const sent = (row: EntryRow): EntryRow => {
    const kept = { ...row, state: row.number === null ? "sent" : "held" } as const;
    return { ...kept, ...authorOf({ ...taken.get(row.key)!, text: row.text }, row) };
  };
  return store.write(["entries"], (db, state) => change(db, state, [...taken.keys()], "pending", sent));
}

async function change(
  db: GarageDb,
  state: State,
  keys: string[],
  from: EntryRow["state"],
  changed: (row: EntryRow) => EntryRow,
): Promise<EntryRow[]> {
  const found = (await db.entries.bulkGet(keys)).filter((row): row is EntryRow => row?.state === from);
  const rows = found.map((row): EntryRow => ({ ...changed(row), seq: ++state.counter }));
  await db.entries.bulkPut(rows);
  return rows;
}

/**
 * A pulled page and the cursor after it, in one transaction. Null when another tab has moved the cursor meanwhile: the
 * page then belongs nowhere.
 */
export async function takePage(store: Store, asked: Cursor, page: Page): Promise<WrittenRows | null> {
  const named = page.lines.map((line) => ({ line, key: line.id ?? readEntry(line.text)?.id ?? rawId(line.text) }));
  const written = await store.write(["entries"], async (db, state) => {
    if (!sameCursor(state.cursor, asked)) return null;
    const number = page.lines.at(-1)?.number ?? asked.number;
    state.cursor = { epoch: page.epoch, number, mark: page.mark };
    state.durable = page.durable;
    state.heard = page.heard;
    return putHeld(db, state, named);
  });
  return written.result === null ? null : (written as WrittenRows);
}

async function putHeld(db: GarageDb, state: State, named: { line: PulledEntry; key: string }[]): Promise<EntryRow[]> {
  const before = await db.entries.bulkGet(named.map(({ key }) => key));
  const rows = named.map(({ line, key }, at): EntryRow => {
    const order = before[at]?.order ?? state.counter + 1;
    const { number, text, aside } = line;
    const author = authorOf(line, before[at]);
    const isOwed = aside !== null && author.receipt !== undefined;
    const seq = ++state.counter;
    return { key, text, number, aside, order, ...author, seq, state: isOwed ? "pending" : "held" };
  });
  await moveAway(db, state, before.filter((row, at) => row && row.text !== rows[at]!.text) as EntryRow[], rows);
  await db.entries.bulkPut(rows);
  return rows;
}

/** A receipt once given stays good, whatever a home computer without it says of the same entry later. */
function authorOf(line: Told & { text: string }, before: EntryRow | undefined): Told {
  return told(line.receipt === undefined && before?.receipt !== undefined && before.text === line.text ? before : line);
}

/** Whether entries came in as a stranger's of which this phone can prove that they were accepted once. */
export function owesProof(store: Store): Promise<boolean> {
  const owed = (db: GarageDb) => inState(db, "pending").filter((row) => row.number !== null);
  return store.read(async (db) => (await owed(db).count()) > 0);
}

/** Other bytes stood under a pulled name (a cloned phone, say): they are kept under the name the server will give them. */
async function moveAway(db: GarageDb, state: State, others: EntryRow[], rows: EntryRow[]): Promise<void> {
  if (others.length === 0) return;
  state.generation += 1;
  state.counter += 1;
  await db.entries.bulkDelete(rows.map((row) => rawId(row.text)));
  await db.entries.bulkPut(others.map((row) => ({ ...row, key: rawId(row.text), seq: ++state.counter })));
}

function sameCursor(one: Cursor, other: Cursor): boolean {
  return one.epoch === other.epoch && one.number === other.number && one.mark === other.mark;
}

/**
 * To be called when everything has been pulled: what was sent and did not come back has been lost over there. It is
 * pending again.
 */
export async function returnLost(store: Store): Promise<void> {
  const keys = await store.read((db) => inState(db, "sent").primaryKeys());
  if (keys.length > 0) await store.write(["entries"], (db, state) => change(db, state, keys, "sent", pendingAgain));
}

function pendingAgain(row: EntryRow): EntryRow {
  return { ...row, state: "pending" };
}

/**
 * The home computer was restored from an older copy: nothing it once took counts as held. Every entry and photo on this
 * phone is pending again, in the order it had, and the cursor stands at the beginning of the new epoch.
 */
export function rewind(store: Store): Promise<Written<void>> {
  return store.write(["entries", "photos"], async (db, state) => {
    const rows = await db.entries.toArray();
    rows.sort((one, other) => (one.number ?? Infinity) - (other.number ?? Infinity) || one.order - other.order);
    await db.entries.bulkPut(rows.map((row) => reopened(row, ++state.counter)));
    await db.photos.toCollection().modify((photo) => {
      if (photo.state === "sent" || photo.state === "fetched") photo.state = "waiting";
    });
    const { counter, generation } = state;
    Object.assign(state, { cursor: NO_CURSOR, durable: 0, generation: generation + 1, counter: counter + 1 });
  });
}

function reopened(row: EntryRow, seq: number): EntryRow {
  return { ...row, number: null, state: "pending", seq, order: seq };
}
