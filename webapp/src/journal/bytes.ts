/** UTF-8 and SHA-256 at once, not as promises: inside a transaction nothing may wait, and the fold must be pure. */

import { sha256 as digest } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/** The UTF-8 bytes of a text; a lone surrogate becomes U+FFFD, as everywhere on the web. */
export const utf8: (text: string) => Uint8Array = utf8ToBytes;

/** How many bytes a text has in UTF-8. */
export function utf8Length(text: string): number {
  return utf8(text).length;
}

/** SHA-256 of bytes, 64 lower-case hex digits (FIPS 180-4). */
export function sha256(bytes: Uint8Array): string {
  return bytesToHex(digest(bytes));
}
