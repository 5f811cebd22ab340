/** Photos on the phone: bytes as ArrayBuffer (WebKit loses Blobs), named by their SHA-256. */

/** A photo taken now, to be saved with the record `of` it shows. */
export type NewPhoto = { of: string; bytes: ArrayBuffer; type: string; width: number; height: number };

/** A blob: URL from the phone's own store, else fetched and kept; null when not reachable. */
export async function photoUrl(sha256: string, size: "thumb" | "full"): Promise<string | null> {
  throw new Error(`not filled yet: ${sha256} ${size}`);
}
