/** A job's way: an idea, chosen, fitted to the car, undone again. */
import type { Value } from "../../journal/types";

export const STATES = [
  { value: "idea", label: "Idea" },
  { value: "chosen", label: "Chosen" },
  { value: "fitted", label: "Fitted" },
  { value: "undone", label: "Undone" },
];

export function stateWord(state: Value | undefined): string {
  return STATES.find((each) => each.value === (state ?? "idea"))?.label.toLowerCase() ?? "";
}
