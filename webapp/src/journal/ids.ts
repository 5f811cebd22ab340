/** UUIDv7 (RFC 9562): ids that sort by the time they were made, and are made without asking anyone. */

import { bytesToHex } from "@noble/hashes/utils.js";

/** The UUIDv7 of a moment (milliseconds since 1970) and ten random bytes. */
export function uuid7(milliseconds: number, random: Uint8Array): string {
  const bytes = new Uint8Array(16);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, Math.floor(milliseconds / 0x100000000));
  view.setUint32(2, milliseconds % 0x100000000);
  bytes.set(random.subarray(0, 10), 6);
  bytes[6] = 0x70 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  const hex = bytesToHex(bytes);
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/**
 * A maker of ids that rise strictly, also within one millisecond and when the clock steps back, so that records made
 * together list in the order they were made. Only neatness rests on this: nothing decides by an id's time.
 */
export function idMaker(now: () => number, random: (bytes: Uint8Array) => Uint8Array): () => string {
  let last = "";
  let moment = 0;
  return () => {
    moment = Math.max(moment, now());
    let id = uuid7(moment, random(new Uint8Array(10)));
    while (id <= last) id = uuid7(++moment, random(new Uint8Array(10)));
    last = id;
    return id;
  };
}
