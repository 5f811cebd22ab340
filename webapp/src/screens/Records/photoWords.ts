/** Which photos a file of everything carries, in words: what is missing from it must not be found out too late. */
import type { PhotosInside } from "../../store/takeout";

/** `known`: the photos the garage's records speak of. */
export function photoWords({ full, small }: PhotosInside, known: number): string {
  if (!known && !full && !small) return "There are no photos yet.";
  const absent = Math.max(0, known - full - small);
  const pieces = [
    `${full} in full`,
    small > 0 && `${small} only small`,
    absent > 0 && `${absent} not on this phone at all`,
  ].filter(Boolean);
  const rest = small || absent ? " The rest is on the home computer." : "";
  return `Photos in the file: ${pieces.join(", ")}.${rest}`;
}
