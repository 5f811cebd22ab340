/** Which photos are seen at which record, and which records a picture is of. */

import { garage, type Rec } from "../../garage/garage";

type Photo = Rec<"photo">;

/** Every photo of the record itself and of what is seen with it, oldest first; a picture that several show, once. */
export function photosAt(id: string): Photo[] {
  const seen = new Set(around(id));
  const found = new Map<string, Photo>();
  for (const photo of garage.value.of("photo")) {
    const { of = "", sha256 = "" } = photo.values;
    if (seen.has(of) && !found.has(sha256)) found.set(sha256, photo);
  }
  return [...found.values()];
}

/** A record and those that a person looks for there: what it took the place of, what hangs on it, the parts of a job. */
export function around(id: string): string[] {
  const now = garage.value;
  const below = [id, ...replaced(id)].flatMap((each) => [each, ...now.hung(each)]);
  const isJob = now.byId.get(id)?.kind === "job";
  const parts = isJob ? below.flatMap((line) => now.one("job_part", line)?.values.part ?? []) : [];
  return [...new Set([...below, ...parts.flatMap(around)])];
}

/** What a fact took the place of, the latest first. */
export function replaced(id: string): string[] {
  const older: string[] = [];
  for (let next = before(id); next !== null && !older.includes(next); next = before(next)) older.push(next);
  return older;
}

function before(id: string): string | null {
  const older = garage.value.byId.get(id)?.values.replaces;
  return typeof older === "string" ? older : null;
}

/** The records a picture is of, each with its photos there: two phones may have added it to the same one. */
export function placesOf(sha256: string): { of: string; photos: Photo[] }[] {
  const places = new Map<string, Photo[]>();
  for (const photo of garage.value.of("photo")) {
    const { of = "" } = photo.values;
    if (photo.values.sha256 === sha256) places.set(of, [...(places.get(of) ?? []), photo]);
  }
  return [...places].map(([of, photos]) => ({ of, photos }));
}
