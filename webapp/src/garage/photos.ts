/**
 * Photos to look at, as blob: addresses. What this phone took or once fetched is here without a network; anything else is
 * fetched, checked against its hash, and kept.
 */

import { AppError } from "../errors";
import type { BytesRow, PhotoType } from "../store/database";
import { type Opened, opened } from "../store/opened";
import { hashOf, keepFetched, readBytes } from "../store/photo_rows";
import type { Shrunk } from "../store/shrink";
import { LONG_PATIENCE, requestBytes, wireOf } from "../wire/request";

/** A photo taken now, to be saved with the record `of` it shows. */
export type NewPhoto = Shrunk & { of: string };

type Size = BytesRow["size"];

function isPhotoType(type: string): type is PhotoType {
  return /^image\/(jpeg|png|webp)$/.test(type);
}

/** Addresses given out. They stay valid as long as the page: a list that scrolls back asks for them again. */
const given = new Map<string, Promise<Found>>();

/** A blob: URL, or why there is none. */
export type Found = string | AppError | null;

/** From the phone's own store, else fetched and kept. Never rejects. */
export function photoUrl(sha256: string, size: Size): Promise<Found> {
  const name = `${opened.peek()?.garage}/${sha256}/${size}`;
  const asked = given.get(name) ?? find(sha256, size);
  given.set(name, asked);
  void asked.then((found) => typeof found === "string" || given.delete(name));
  return asked;
}

async function find(sha256: string, size: Size): Promise<Found> {
  const from = opened.peek();
  if (!from) return null;
  try {
    const row = (await stored(from, sha256, size)) ?? (await fetched(from, sha256, size));
    return URL.createObjectURL(new Blob([row.bytes], { type: row.type }));
  } catch (error) {
    return error instanceof AppError ? error : null;
  }
}

/** The full picture does for a small one; not the other way round. One gone bad here is fetched. */
async function stored({ store }: Opened, sha256: string, size: Size): Promise<BytesRow | null> {
  const small = size === "thumb" ? await readBytes(store, sha256, "thumb") : null;
  const full = small ? null : await readBytes(store, sha256, "full");
  return small ?? (full && hashOf(full.bytes) === sha256 ? full : null);
}

async function fetched({ store, token }: Opened, sha256: string, size: Size): Promise<BytesRow> {
  const { bytes, type } = await requestBytes(wireOf(token, LONG_PATIENCE), `GET /photos/${sha256}?size=${size}`);
  if (!isPhotoType(type)) throw new Error("not a type of picture");
  if (size === "full" && hashOf(bytes) !== sha256) throw new Error("other bytes than the hash names");
  const row: BytesRow = { sha256, size, type, bytes };
  await keepFetched(store, row).catch(() => undefined); // a full phone still shows the picture
  return row;
}
