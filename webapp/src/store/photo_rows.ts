/**
 * Photos as rows: what is known of one, and apart from it the bytes, so that counting what waits reads no pictures.
 * Nothing here ever deletes bytes that this phone took.
 */

import { Dexie } from "dexie";

import { sha256 } from "../journal/bytes";
import type { BytesRow, GarageDb, PhotoRow, PhotoState, PhotoType, State } from "./database";
import type { Store } from "./store";

/** A photo to be written with its entry; the hash is made once, of the very bytes that are stored. */
export type PhotoToKeep = { sha256: string; bytes: ArrayBuffer; type: PhotoType };

export function hashOf(bytes: ArrayBuffer): string {
  return sha256(new Uint8Array(bytes));
}

/** Within a transaction over photos and photo_bytes. */
export async function keepPhotos(db: GarageDb, state: State, photos: PhotoToKeep[]): Promise<void> {
  if (photos.length === 0) return;
  const known = await db.photos.bulkGet(photos.map((photo) => photo.sha256));
  const rows = photos.filter((_, at) => !known[at] || known[at].state === "damaged");
  await db.photos.bulkPut(rows.map((photo) => photoRow(photo, "waiting", ++state.counter)));
  await db.photo_bytes.bulkPut(
    rows.map(({ sha256, type, bytes }): BytesRow => ({ sha256, size: "full", type, bytes })),
  );
}

function photoRow({ sha256, bytes, type }: PhotoToKeep, state: PhotoState, order: number): PhotoRow {
  return { sha256, size: bytes.byteLength, type, state, order, why: null };
}

function inState(db: GarageDb, state: PhotoState) {
  return db.photos.where("[state+order]").between([state, Dexie.minKey], [state, Dexie.maxKey]);
}

/** How many photos wait to be sent, and how many never will be. */
export function countPhotos(store: Store): Promise<{ waiting: number; stuck: number }> {
  return store.read(async (db) => {
    const [waiting, refused, damaged] = await Promise.all(
      (["waiting", "refused", "damaged"] as const).map((state) => inState(db, state).count()),
    );
    return { waiting: waiting!, stuck: refused! + damaged! };
  });
}

/** The photos to send, oldest first. */
export function waitingPhotos(store: Store): Promise<PhotoRow[]> {
  return store.read((db) => inState(db, "waiting").toArray());
}

/** The full photos on this phone that the home computer is believed to have. */
export function heldPhotos(store: Store): Promise<PhotoRow[]> {
  return store.read(async (db) => [
    ...(await inState(db, "sent").toArray()),
    ...(await inState(db, "fetched").toArray()),
  ]);
}

export async function setPhotoState(store: Store, sha256: string, to: PhotoState, why: string | null = null) {
  await store.write(["photos"], (db) => db.photos.update(sha256, { state: to, why }));
}

/** The stored bytes, or null when this phone has none of that size, or has them only as an empty husk. */
export async function readBytes(store: Store, sha256: string, size: BytesRow["size"]): Promise<BytesRow | null> {
  const row = await store.read((db) => db.photo_bytes.get([sha256, size]));
  return row && row.bytes.byteLength > 0 ? row : null;
}

/** Keeps what came from the home computer. A full picture is held from now on, and sent again should it be lost there. */
export async function keepFetched(store: Store, row: BytesRow): Promise<void> {
  await store.write(["photos", "photo_bytes"], async (db, state) => {
    await db.photo_bytes.put(row);
    if (row.size === "full" && !(await db.photos.get(row.sha256))) {
      await db.photos.put(photoRow(row, "fetched", ++state.counter));
    }
  });
}
