/** A fact and its corrections, and the address each sort of fact is looked at. */

import { type Corrected, corrected } from "../../core/garage/corrections";
import { readThoughDeleted } from "../../garage/deleted";
import { garage, type Rec } from "../../garage/garage";

export const ADDRESS = { weighing: "weighing", weigh_in: "weigh-in", lift: "lift" } as const;
export type Fact = keyof typeof ADDRESS;

/** Of a fact that was corrected; null of one that was not. */
export function correctedOf(rec: Rec<Fact>): Corrected | null {
  return correctedFacts(rec.kind).find((fact) => fact.all.includes(rec.id)) ?? null;
}

/** The ids of those whose place newer ones have taken. */
export function replacedIn(kind: Fact): string[] {
  return correctedFacts(kind).flatMap(({ all, rivals }) => all.filter((id) => !rivals.includes(id)));
}

function correctedFacts(kind: Fact): Corrected[] {
  const facts: readonly Rec[] = garage.value.of(kind);
  const older = new Map<string, string>();
  for (const { id, values } of [...facts, ...readThoughDeleted(kind)])
    if (values.replaces) older.set(id, `${values.replaces}`);
  return corrected(older, new Set(facts.map(({ id }) => id)));
}
