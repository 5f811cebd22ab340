/** Which parts are on the car now: as they were, less what fitted jobs took off, with what those put on. */
import type { JobNet } from "./net";

type Part = { readonly id: string; readonly whereabouts?: unknown };

/** `jobs`: those in the car. What they do to a part weighs more than where its record says it is. */
export function onCar(part: Part, jobs: readonly JobNet[]): boolean {
  const lines = jobs.flatMap((job) => job.lines).filter((line) => line.part === part.id);
  const moves = lines.reduce((sum, { way }) => sum + (way === "on" ? 1 : -1), 0);
  return moves === 0 ? (part.whereabouts ?? "car") === "car" : moves > 0;
}
