/** Why something is missing, and what the reader found wrong with the car's or a part's own record. */
import type { Balance } from "../../core/balance/balance";
import type { Warned } from "../../core/garage/records";

/** What was wrong with the car's or a part's own record: a wheelbase of nothing, a place that cannot be read. */
export function aboutCar(warnings: readonly Warned[]): Warned[] {
  return warnings.filter(({ data }) => data.list === "cars" || data.list === "parts");
}

/** Every reason once: why a state is not there, and why an axis or the corners of one are not. */
export function reasonsOf({ states, reasons }: Balance): Warned[] {
  const own = Object.values(states).flatMap((state) =>
    Object.entries(state.reasons).filter(([what]) => what !== "corners"),
  );
  const all = [...Object.values(reasons), ...own.map(([, reason]) => reason)];
  return [...new Map(all.map((reason) => [reason.code, reason])).values()];
}

/** The parts a warning is about. */
export function partsOf({ data }: Warned): string[] {
  if (data.list === "parts" && typeof data.id === "string") return [data.id];
  const named = Array.isArray(data.parts) ? data.parts : [data.part];
  return named.filter((part): part is string => typeof part === "string");
}
