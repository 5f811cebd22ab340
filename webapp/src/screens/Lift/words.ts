/** Lengths in the garage's unit, and the axle that stays down. */
import { showLength } from "../../core/numbers/shown";
import { unitOf } from "../../garage/units";

export const GROUNDED = { rear: "front", front: "rear" } as const;

export function length(metres: number, within: number | null = null): string {
  return showLength(metres, unitOf("length"), within);
}
