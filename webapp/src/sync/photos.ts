/**
 * Step 3 of sync: photos go up, each under the hash of its bytes. The hash is checked here again before sending, so that
 * bytes gone bad on the phone are said to be bad instead of being sent for ever; the home computer checks it on arrival,
 * and only its word makes a photo "sent".
 */

import { AppError } from "../errors";
import type { PhotoRow, PhotoType } from "../store/database";
import { hashOf, heldPhotos, readBytes, setPhotoState, waitingPhotos } from "../store/photo_rows";
import { isWhole, managed, paced, request, requestJson, unreadable } from "../wire/request";
import type { Post } from "./post";

/** The most the home computer takes at once. */
const CHUNK = 1024 * 1024;
const PREFIX = "/api/v1";
/** The upload is not where this phone thought: announcing the photo again tells where it is. */
const ELSEWHERE: readonly string[] = ["upload_offset", "upload_unknown"];
/** Times that may happen to one photo before it waits for the next run. */
const TURNS = 3;
/** While one photo is on its way, the next is being read and checked. */
const AT_ONCE = 3;
const GOOD_FOR = 3_600_000;
const CONFIRMED_AT_ONCE = 10;
/** What will not be better next time: the photo is kept here, and shown as refused. */
const FINAL: readonly string[] = [
  "photo_too_large",
  "photo_not_an_image",
  "photo_wrong_type",
  "photo_too_many_pixels",
  "photo_truncated",
];
/** Troubles of one photo alone, after which the next one is worth a try. */
const OF_ONE_PHOTO: readonly string[] = [
  "photo_hash_mismatch",
  "upload_unknown",
  "upload_offset",
  "broken",
  "bad_input",
];

/**
 * Asks whether photos said to be over there still are: a home computer restored without a word from a copy older than a
 * photo, but not older than its entry, shows it nowhere else. Some in every run; each again after an hour.
 */
export async function confirmPhotos(post: Post): Promise<void> {
  const now = post.now().getTime();
  const due = (await heldPhotos(post.store)).filter(({ sha256 }) => now - (post.confirmed.get(sha256) ?? 0) > GOOD_FOR);
  for (const { sha256, type, size } of due.slice(0, CONFIRMED_AT_ONCE)) {
    const place = await begin(post, sha256, type, size);
    if (place) await setPhotoState(post.store, sha256, "waiting");
    else post.confirmed.set(sha256, now);
  }
}

/** Sends every photo that waits. Rejects with AppError once all have had their turn, or at once when nothing goes. */
export async function sendPhotos(post: Post, onSent: () => Promise<void>): Promise<void> {
  const waiting = await waitingPhotos(post.store);
  const troubles: AppError[] = [];
  if (waiting.length > 0) post.onPhase("photos");
  const tell = shareOf(waiting, post.onShare);
  const sendOn = async (): Promise<void> => {
    for (let photo = waiting.shift(); photo; photo = waiting.shift()) {
      const trouble = await tryPhoto(post, photo, (bytes) => tell(photo, bytes));
      if (trouble) troubles.push(trouble);
      if (trouble && !OF_ONE_PHOTO.includes(trouble.code)) waiting.length = 0;
      await onSent();
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, sendOn));
  post.onShare(0);
  if (troubles.length > 0) throw troubles.find((trouble) => !OF_ONE_PHOTO.includes(trouble.code)) ?? troubles[0];
}

/** How many bytes of a photo are over there. */
type Tell = (bytes: number) => void;

/** Adds up what is told of each photo to the share of all that waited. */
function shareOf(waiting: readonly PhotoRow[], onShare: Post["onShare"]): (photo: PhotoRow, bytes: number) => void {
  const all = waiting.reduce((sum, { size }) => sum + size, 0);
  const there = new Map<string, number>();
  if (all > 0) onShare(0);
  return ({ sha256 }, bytes) => {
    there.set(sha256, bytes);
    onShare([...there.values()].reduce((sum, some) => sum + some, 0) / all);
  };
}

/** Null when the photo is sent, or will never be. */
async function tryPhoto(post: Post, photo: PhotoRow, tell: Tell): Promise<AppError | null> {
  try {
    await sendPhoto(post, photo, tell);
    return null;
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    if (!FINAL.includes(error.code)) return error;
    await setPhotoState(post.store, photo.sha256, "refused", error.code);
    return null;
  }
}

async function sendPhoto(post: Post, photo: PhotoRow, tell: Tell): Promise<void> {
  const row = await readBytes(post.store, photo.sha256, "full");
  if (!row || hashOf(row.bytes) !== photo.sha256)
    return setPhotoState(post.store, photo.sha256, "damaged", "photo_damaged_here");
  await upload(post, photo, new Uint8Array(row.bytes), tell);
  tell(photo.size);
  post.confirmed.set(photo.sha256, post.now().getTime());
  await setPhotoState(post.store, photo.sha256, "sent");
}

async function upload(post: Post, photo: PhotoRow, bytes: Uint8Array<ArrayBuffer>, tell: Tell): Promise<void> {
  const { sha256, type } = photo;
  let place = await begin(post, sha256, type, bytes.length);
  for (let turns = 1; place; ) {
    tell(place.offset);
    try {
      place = await sendChunk(post, place, bytes);
    } catch (error) {
      if (turns++ === TURNS || !(error instanceof AppError) || !ELSEWHERE.includes(error.code)) throw error;
      place = await begin(post, sha256, type, bytes.length);
    }
  }
}

/** Where an upload stands; null: the home computer has the whole photo, its hash verified. */
type Place = { url: string; offset: number } | null;

/** Announces a photo, new or begun before; tells from which byte on it is wanted. */
async function begin(post: Post, sha256: string, type: PhotoType, size: number): Promise<Place> {
  const body = await requestJson(post.wire, "POST /photos", { json: { sha256, size, type } });
  post.onHeard();
  if (body.present === true) return null;
  const { url, offset } = body;
  if (typeof url !== "string" || !url.startsWith(PREFIX) || !isWhole(offset))
    throw unreadable({ status: 201 }, "no upload");
  return { url: url.slice(PREFIX.length), offset };
}

async function sendChunk(post: Post, place: NonNullable<Place>, bytes: Uint8Array<ArrayBuffer>): Promise<Place> {
  const { url, offset } = place;
  const most = paced(post.wire, CHUNK);
  const chunk = bytes.subarray(offset, offset + most);
  const headers = { "Content-Type": "application/octet-stream", "Upload-Offset": String(offset) };
  const answer = await request(post.wire, `PATCH ${url}`, { bytes: chunk, headers });
  post.onHeard();
  const next = offset + chunk.length;
  // A piece cut on the way is taken as far as it came, and answered alike: the next run asks from where to go on.
  if (answer.headers.get("Upload-Offset") !== String(next)) throw unreadable(answer, "not all of a piece arrived");
  if (chunk.length === most) managed(post.wire);
  return next < bytes.length ? { url, offset: next } : null;
}
