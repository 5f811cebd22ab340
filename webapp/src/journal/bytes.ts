/** UTF-8 and SHA-256 without the platform: inside a transaction nothing may wait, and the fold must be pure. */

/** The UTF-8 bytes of a text; a lone surrogate becomes U+FFFD, as everywhere on the web. */
export function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3);
  let at = 0;
  for (const character of text) {
    const code = character.codePointAt(0)!;
    at = putCode(bytes, at, code >= 0xd800 && code <= 0xdfff ? 0xfffd : code);
  }
  return bytes.slice(0, at);
}

function putCode(bytes: Uint8Array, at: number, code: number): number {
  if (code < 0x80) {
    bytes[at] = code;
    return at + 1;
  }
  const extra = code < 0x800 ? 1 : code < 0x10000 ? 2 : 3;
  bytes[at] = [0, 0xc0, 0xe0, 0xf0][extra]! | (code >> (6 * extra));
  for (let step = 1; step <= extra; step++) bytes[at + step] = 0x80 | ((code >> (6 * (extra - step))) & 0x3f);
  return at + extra + 1;
}

/** How many bytes a text has in UTF-8. */
export function utf8Length(text: string): number {
  let length = 0;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    if (unit < 0x80) length += 1;
    else if (unit < 0x800) length += 2;
    else if (unit >= 0xd800 && unit < 0xdc00 && isLowSurrogate(text.charCodeAt(at + 1))) {
      length += 4;
      at += 1;
    } else length += 3;
  }
  return length;
}

function isLowSurrogate(unit: number): boolean {
  return unit >= 0xdc00 && unit < 0xe000;
}

// FIPS 180-4, 4.2.2: the first 32 bits of the fractional parts of the cube roots of the first 64 primes.
const ROUND = new Uint32Array([
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98,
  0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786,
  0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8,
  0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13,
  0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819,
  0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a,
  0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7,
  0xc67178f2,
]);
const START = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];
const BLOCK = 64;

/** SHA-256 of bytes, 64 lower-case hex digits (FIPS 180-4). */
export function sha256(bytes: Uint8Array): string {
  const state = new Uint32Array(START);
  const words = new Uint32Array(64);
  const whole = bytes.length - (bytes.length % BLOCK);
  for (let at = 0; at < whole; at += BLOCK) compress(state, words, bytes, at);
  const tail = padded(bytes.subarray(whole), bytes.length);
  for (let at = 0; at < tail.length; at += BLOCK) compress(state, words, tail, at);
  return Array.from(state, (word) => word.toString(16).padStart(8, "0")).join("");
}

function padded(rest: Uint8Array, length: number): Uint8Array {
  const tail = new Uint8Array(rest.length < BLOCK - 8 ? BLOCK : 2 * BLOCK);
  tail.set(rest);
  tail[rest.length] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(length / 0x20000000));
  view.setUint32(tail.length - 4, (length << 3) >>> 0);
  return tail;
}

function compress(state: Uint32Array, w: Uint32Array, bytes: Uint8Array, at: number): void {
  schedule(w, bytes, at);
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number];
  for (let i = 0; i < 64; i++) {
    const s1 = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7));
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + ROUND[i]! + w[i]!) | 0;
    const s0 = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10));
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((value, i) => {
    state[i]! += value;
  });
}

function schedule(w: Uint32Array, bytes: Uint8Array, at: number): void {
  for (let i = 0; i < 16; i++, at += 4) {
    w[i] = (bytes[at]! << 24) | (bytes[at + 1]! << 16) | (bytes[at + 2]! << 8) | bytes[at + 3]!;
  }
  for (let i = 16; i < 64; i++) {
    const x = w[i - 15]!;
    const y = w[i - 2]!;
    const s0 = ((x >>> 7) | (x << 25)) ^ ((x >>> 18) | (x << 14)) ^ (x >>> 3);
    const s1 = ((y >>> 17) | (y << 15)) ^ ((y >>> 19) | (y << 13)) ^ (y >>> 10);
    w[i] = (w[i - 16]! + s0 + w[i - 7]! + s1) | 0;
  }
}
