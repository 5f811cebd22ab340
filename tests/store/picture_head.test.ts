/** Reading how large a picture claims to be, before anything opens it. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

import { isCutShort, isHeic, pictureHead } from "../../webapp/src/store/picture_head";

function png(width: number, height: number): Uint8Array {
  const bytes = new Uint8Array(33);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  new DataView(bytes.buffer).setUint32(16, width);
  new DataView(bytes.buffer).setUint32(20, height);
  return bytes;
}

/** APP1 (where EXIF lies), a table, then the frame. */
function jpeg(width: number, height: number, frame = 0xc0): Uint8Array {
  const app1 = [0xff, 0xe1, 0, 6, 1, 2, 3, 4];
  const table = [0xff, 0xc4, 0, 4, 0, 0];
  const start = [0xff, frame, 0, 17, 8, height >> 8, height & 255, width >> 8, width & 255];
  return new Uint8Array([0xff, 0xd8, ...app1, ...table, 0xff, ...start]);
}

function webp(chunk: string, body: number[]): Uint8Array {
  const text = (word: string) => [...word].map((letter) => letter.charCodeAt(0));
  return new Uint8Array([...text("RIFF"), 0, 0, 0, 0, ...text("WEBP"), ...text(chunk), 0, 0, 0, 0, ...body]);
}

/** A whole JPEG: its head, then a scan with a stuffed 0xff, then the end; before it a thumbnail with an end of its own. */
function wholeJpeg(): Uint8Array {
  const thumbnail = [0xff, 0xe1, 0, 8, 0xff, 0xda, 0, 0, 0xff, 0xd9];
  const rest = [...jpeg(40, 30)].slice(2);
  const frame = [...rest, ...Array.from({ length: 10 }, () => 0)];
  const scan = [0xff, 0xda, 0, 2, 1, 0xff, 0, 2, 0xff, 0xd0, 3];
  return new Uint8Array([0xff, 0xd8, ...thumbnail, ...frame, ...scan, 0xff, 0xd9]);
}

describe("a picture cut short", () => {
  const end = [0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0, 0, 0, 0];
  it.each([
    ["a JPEG", wholeJpeg()],
    ["a PNG", new Uint8Array([...png(10, 10), ...end])],
    ["a WebP", webp("VP8X", [0, 0, 0, 0, 0x3f, 0x06, 0, 0xaf, 0x04, 0, ...Array.from({ length: 20 }, () => 0)])],
  ])("is told from a whole one: %s", (_name, whole) => {
    const bytes = whole.slice();
    if (pictureHead(whole)!.type === "image/webp") new DataView(bytes.buffer).setUint32(4, bytes.length - 8, true);
    expect(isCutShort(bytes)).toBe(false);
    expect(isCutShort(bytes.slice(0, -8))).toBe(true);
  });

  it("keeps its judgement to itself when the format is not known", () => {
    expect(isCutShort(new TextEncoder().encode("This is no picture, only text that is long enough."))).toBe(false);
  });
});

describe("the head of a picture", () => {
  it.each([
    ["a PNG", png(50_000, 50_000), { type: "image/png", width: 50_000, height: 50_000 }],
    ["a JPEG", jpeg(4032, 3024), { type: "image/jpeg", width: 4032, height: 3024 }],
    ["a progressive JPEG", jpeg(640, 480, 0xc2), { type: "image/jpeg", width: 640, height: 480 }],
    [
      "a WebP with extras",
      webp("VP8X", [0, 0, 0, 0, 0x3f, 0x06, 0, 0xaf, 0x04, 0]),
      { type: "image/webp", width: 1600, height: 1200 },
    ],
    [
      "a plain WebP",
      webp("VP8 ", [0, 0, 0, 0x9d, 1, 0x2a, 0x40, 0x06, 0xb0, 0x04]),
      { type: "image/webp", width: 1600, height: 1200 },
    ],
    [
      "a lossless WebP",
      webp("VP8L", [0x2f, 0x3f, 0xc6, 0x2b, 0x01]),
      { type: "image/webp", width: 1600, height: 1200 },
    ],
  ])("tells the size of %s", (_name, bytes, head) => expect(pictureHead(bytes)).toEqual(head));

  it.each([
    ["text", new TextEncoder().encode("This is no picture, only text that is long enough.")],
    ["nothing", new Uint8Array(0)],
    ["a JPEG cut short", jpeg(4032, 3024).slice(0, 20)],
    ["a PNG cut short", png(10, 10).slice(0, 18)],
    ["a JPEG of noise", new Uint8Array([0xff, 0xd8, 0x12, 0x34, 0x56, 0x78, 0x9a])],
  ])("is not found in %s", (_name, bytes) => expect(pictureHead(bytes)).toBeNull());

  it("is read from a view into a larger buffer too", () => {
    const whole = new Uint8Array([0, 0, 0, ...png(12, 34)]);
    expect(pictureHead(whole.subarray(3))).toEqual({ type: "image/png", width: 12, height: 34 });
  });
});

/** Written by libheif, whose home is outside this project. */
const outside = (name: string) => new Uint8Array(readFileSync(join(__dirname, "../../fixtures/pictures", name)));
const ascii = (text: string) => new TextEncoder().encode(text);

describe("HEIC", () => {
  it("is known by the brands of its ftyp box, not by its name", () => {
    expect(isHeic(outside("red.heic"))).toBe(true);
    expect(isHeic(outside("red.avif"))).toBe(false);
    expect(isHeic(ascii("A text that somebody named seat.heic"))).toBe(false);
    expect(isHeic(jpeg(40, 30))).toBe(false);
    expect(isHeic(outside("red.heic").slice(0, 11))).toBe(false);
  });

  // ISO/IEC 23008-12, Annex B: brands of images and image sequences coded with HEVC; "mif1" alone says no coding.
  it.each([
    ["heic", "", true],
    ["hevx", "", true],
    ["mif1", "miafheic", true],
    ["mif1", "", false],
    ["isom", "mp42", false],
    ["avif", "mif1miaf", false],
  ])("by the brand %s, compatible with %s", (major, others, is) => {
    const box = ascii(`\0\0\0${String.fromCharCode(16 + others.length)}ftyp${major}\0\0\0\0${others}heic`);
    expect(isHeic(box)).toBe(is); // what comes after the box is none of its brands
  });

  it("is told from one cut short anywhere", () => {
    const whole = outside("red.heic");
    expect(isCutShort(whole)).toBe(false);
    for (const length of [20, 40, 300, whole.length - 1]) expect(isCutShort(whole.slice(0, length))).toBe(true);
  });
});
