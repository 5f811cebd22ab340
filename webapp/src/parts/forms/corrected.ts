/** A fact and its corrections, and the address each sort of fact is looked at. */

import { type Corrected, corrected } from "../../core/garage/corrections";
import { garage, type Rec } from "../../garage/garage";

export const ADDRESS = { weighing: "weighing", weigh_in: "weigh-in", lift: "lift" } as const;
export type Fact = keyof typeof ADDRESS;

/** Of a fact that was corrected; null of one that was not. */
export function correctedOf(rec: Rec<Fact>): Corrected | null {
  const facts = garage.value.of(rec.kind);
  const older = new Map<string, string>();
  for (const { id, values } of facts) if (values.replaces) older.set(id, values.replaces);
  const all = corrected(older, new Set(facts.map(({ id }) => id)));
  return all.find((fact) => fact.all.includes(rec.id)) ?? null;
}
