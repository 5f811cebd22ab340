/**
 * A camera or library file made small: at most 1600 px and 600 KB of JPEG, turned upright, EXIF (and with it the place
 * where it was taken) gone. It is drawn anew, so nothing of the original file but its pixels remains.
 */

import { AppError } from "../errors";
import type { PhotoType } from "./database";
import { isCutShort, isHeic, pictureHead } from "./picture_head";
import "../laterErrors";

export type Shrunk = { bytes: ArrayBuffer; type: PhotoType; width: number; height: number };

const JPEG = "image/jpeg";
const SIDE_MOST = 1600;
const BYTES_MOST = 600_000;
/** What a phone can open without being killed for it. */
const PIXELS_MOST = 120_000_000;
const FILE_MOST = 100_000_000;
const QUALITIES = [0.8, 0.65, 0.5];
const SHRINK_BY = 0.75;
const SIDE_LEAST = 400;

/** Rejects with AppError for what is no picture, or too large to open. */
export async function shrink(file: Blob): Promise<Shrunk> {
  const bytes = new Uint8Array(await within(file).arrayBuffer());
  check(bytes);
  const picture = await openPicture(file);
  if (!picture) throw new AppError(isHeic(bytes) ? "photo_heic" : "photo_not_an_image");
  try {
    return await encodeWithin(picture);
  } finally {
    picture.close();
  }
}

function within(file: Blob): Blob {
  if (file.size > FILE_MOST) throw new AppError("photo_too_large", { most: FILE_MOST });
  if (file.size === 0) throw new AppError("photo_not_an_image");
  return file;
}

/** Formats we cannot read the head of (HEIC, say) are left to the browser, which may know them. */
function check(bytes: Uint8Array): void {
  const head = pictureHead(bytes);
  if (head && head.width * head.height > PIXELS_MOST) {
    throw new AppError("photo_too_many_pixels", { width: head.width, height: head.height });
  }
  if (isCutShort(bytes)) throw new AppError("photo_truncated");
}

type Picture = { source: CanvasImageSource; width: number; height: number; close: () => void };

/** Null for what this browser does not know. */
async function openPicture(file: Blob): Promise<Picture | null> {
  const picture = (await asBitmap(file)) ?? (await asElement(file));
  return picture && picture.width > 0 && picture.height > 0 ? picture : null;
}

/** Browsers turn a picture upright by its EXIF here; one that cannot do it this way gives null. */
async function asBitmap(file: Blob): Promise<Picture | null> {
  try {
    const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
    return { source: bitmap, width: bitmap.width, height: bitmap.height, close: () => bitmap.close() };
  } catch {
    return null;
  }
}

/** An image element knows formats that bitmaps do not everywhere, and is always drawn upright. */
async function asElement(file: Blob): Promise<Picture | null> {
  const url = URL.createObjectURL(file);
  const image = new Image();
  image.src = url;
  try {
    await image.decode();
    return {
      source: image,
      width: image.naturalWidth,
      height: image.naturalHeight,
      close: () => URL.revokeObjectURL(url),
    };
  } catch {
    URL.revokeObjectURL(url);
    return null;
  }
}

/** First with less quality, then with fewer pixels, until it fits. */
async function encodeWithin(picture: Picture): Promise<Shrunk> {
  const longest = Math.max(picture.width, picture.height);
  for (let side = Math.min(SIDE_MOST, longest); side >= Math.min(SIDE_LEAST, longest); side *= SHRINK_BY) {
    const canvas = draw(picture, side / longest);
    const blob = await firstFitting(canvas);
    const { width, height } = canvas;
    canvas.width = canvas.height = 0; // WebKit holds on to a canvas's memory until told
    if (blob) return { bytes: await blob.arrayBuffer(), type: JPEG, width, height };
  }
  throw new AppError("photo_not_shrunk");
}

function draw({ source, width, height }: Picture, scale: number): HTMLCanvasElement {
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const context = canvas.getContext("2d");
  if (!context) throw new AppError("photo_not_shrunk");
  context.fillStyle = "#fff"; // what is transparent would turn black
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = "high";
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  return canvas;
}

async function firstFitting(canvas: HTMLCanvasElement): Promise<Blob | null> {
  for (const quality of QUALITIES) {
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, JPEG, quality));
    if (blob && blob.type === JPEG && blob.size > 0 && blob.size <= BYTES_MOST) return blob;
  }
  return null;
}
