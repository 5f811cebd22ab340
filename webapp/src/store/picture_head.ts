/**
 * The width and height a picture file claims, read from its first bytes: a picture of absurd size must be refused before
 * anything tries to open it. Formats: JPEG (ITU T.81, B.1.1.3 and B.2.2), PNG (RFC 2083, 3 and 4.1.1), WebP (RFC 9649).
 * HEIC (ISO/IEC 23008-12, in the boxes of ISO/IEC 14496-12) is only recognised: the browser opens it, or nobody does.
 */

export type PictureHead = { type: "image/jpeg" | "image/png" | "image/webp"; width: number; height: number };

const SCAN = 0xda;

/** Null when the bytes are none of these formats, or end before they say how large they are. */
export function pictureHead(bytes: Uint8Array): PictureHead | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return jpeg(view) ?? png(view) ?? webp(view);
  } catch (error) {
    if (error instanceof RangeError) return null; // read past the end
    throw error;
  }
}

/** Whether a picture of a known format ends before its own end: a browser would show the rest of it grey. */
export function isCutShort(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  switch (pictureHead(bytes)?.type) {
    case "image/jpeg":
      return !hasEnd(bytes, startOfScan(view));
    case "image/png":
      return !String.fromCharCode(...bytes.subarray(-64)).includes("IEND");
    case "image/webp":
      return bytes.length < 8 + view.getUint32(4, true);
    default:
      return isHeic(bytes) && endsWithin(view);
  }
}

/** Pictures and sequences of pictures coded with HEVC. */
const HEIC = /^(hei[cxms]|hev[cxms])$/;
const FTYP_MOST = 1024; // bytes looked at

/** Whether one of the brands in the file's first box says HEIC; its name says nothing. The home computer looks alike. */
export function isHeic(bytes: Uint8Array): boolean {
  if (bytes.length < 12) return false;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (text(view, 4) !== "ftyp") return false;
  const end = Math.min(view.getUint32(0), bytes.length, FTYP_MOST);
  const brands = [text(view, 8)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(text(view, at));
  return brands.some((brand) => HEIC.test(brand));
}

/** Whether the file ends within one of its outermost boxes. A box of length 0 goes to the end, one of 1 has a long length. */
function endsWithin(view: DataView): boolean {
  for (let at = 0; at < view.byteLength; ) {
    if (at + 16 > view.byteLength) return at + 8 > view.byteLength || at + view.getUint32(at) > view.byteLength;
    const length = view.getUint32(at) === 1 ? Number(view.getBigUint64(at + 8)) : view.getUint32(at);
    if (length < 8) return false;
    at += length;
    if (at > view.byteLength) return true;
  }
  return false;
}

function jpeg(view: DataView): PictureHead | null {
  if (view.getUint16(0) !== 0xffd8 || view.getUint8(2) !== 0xff) return null;
  for (const { marker, at } of segments(view)) {
    if (marker === SCAN) return null;
    if (isFrame(marker)) return { type: "image/jpeg", height: view.getUint16(at + 5), width: view.getUint16(at + 7) };
  }
  return null;
}

/**
 * A JPEG's segments one after the other, each with where its marker stands; stepped over, so no thumbnail inside is met.
 * Damage between them is passed over as the home computer's reader does, which would take the picture in.
 */
function* segments(view: DataView): Generator<{ marker: number; at: number }> {
  for (let at = 2; ; ) {
    while (view.getUint8(at) !== 0xff || view.getUint8(at + 1) === 0xff) at += 1; // damage, and fill bytes
    const marker = view.getUint8(at + 1);
    if (!standsAlone(marker)) {
      yield { marker, at };
      at += Math.max(2, view.getUint16(at + 2)); // a length counts its own two bytes
    }
    at += 2;
  }
}

/** Escaped 0xff, JPG, RST, SOI, EOI and JPG0 to JPG13: no length comes after them. */
function standsAlone(marker: number): boolean {
  return marker === 0 || marker === 0xc8 || (marker >= 0xd0 && marker <= 0xd9) || (marker >= 0xf0 && marker <= 0xfd);
}

function startOfScan(view: DataView): number {
  try {
    for (const { marker, at } of segments(view)) if (marker === SCAN) return at;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
  return view.byteLength;
}

/** In the picture's own data, 0xff is never followed by 0xd9 but at the end. */
function hasEnd(bytes: Uint8Array, from: number): boolean {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    if (bytes[at + 1] === 0xd9) return true;
  }
  return false;
}

/** SOF0 to SOF15, without DHT, JPG and DAC, which lie among them. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function png(view: DataView): PictureHead | null {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(4) !== 0x0d0a1a0a) return null;
  return { type: "image/png", width: view.getUint32(16), height: view.getUint32(20) };
}

function webp(view: DataView): PictureHead | null {
  if (text(view, 0) !== "RIFF" || text(view, 8) !== "WEBP") return null;
  const type = "image/webp" as const;
  switch (text(view, 12)) {
    case "VP8X":
      return { type, width: 1 + uint24(view, 24), height: 1 + uint24(view, 27) };
    case "VP8 ":
      return { type, width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
    case "VP8L": {
      const bits = view.getUint32(21, true);
      return { type, width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) };
    }
    default:
      return null;
  }
}

function uint24(view: DataView, at: number): number {
  return view.getUint16(at, true) | (view.getUint8(at + 2) << 16);
}

function text(view: DataView, at: number): string {
  return String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));
}
