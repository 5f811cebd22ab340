/** A part comes off once and goes on once: said before it goes into a second job. */
import { garage } from "../../garage/garage";
import type { Values } from "../../journal/kinds";
import { refName } from "./naming";

/** "Spare wheel already comes off in Strip out." Null where no job that stands has it that way. */
export function bookedWords(part: string | null | undefined, way: Values<"job_part">["way"]): string | null {
  const now = garage.value;
  const jobs = now.of("job_part").flatMap(({ values }) => {
    const job = now.one("job", values.job);
    const stands = values.part === part && values.way === way && job && job.values.state !== "undone";
    return stands ? refName(job.id) : [];
  });
  const moves = way === "on" ? "goes on" : "comes off";
  return part && jobs.length ? `${refName(part)} already ${moves} in ${[...new Set(jobs)].join(", ")}.` : null;
}
