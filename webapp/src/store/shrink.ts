/** A camera or library file made small: at most 1600 px and 600 KB of JPEG, turned upright, EXIF gone. */

export type Shrunk = { bytes: ArrayBuffer; type: string; width: number; height: number };

/** Rejects with AppError for what is no image or is too large to open. */
export async function shrink(file: Blob): Promise<Shrunk> {
  throw new Error(`not filled yet: ${file.size}`);
}
