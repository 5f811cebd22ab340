/** Readings that were asked about and found right as they stand: remembered, so that nobody is asked twice. */
import { garage } from "../../garage/garage";
import type { Change } from "../../garage/write";

/** The change that says a weighing or weigh-in is right. */
export function foundRight(of: string): Change {
  return { kind: "second_look", set: { of }, base: [] };
}

/** Of every reading found right, its id. */
export function rightOnes(): Set<string> {
  return new Set(garage.value.of("second_look").map((look) => look.values.of ?? ""));
}
