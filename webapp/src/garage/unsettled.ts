/** What a person still has to decide, by the records it concerns: fields in dispute, and entries that do not count. */
import { computed, type ReadonlySignal } from "@preact/signals";
import { type AsideEntry, garage, type Head, type Rec } from "./garage";

/** `claims`: each differing value once, the one that counts now first. */
export type Dispute = { rec: Rec; field: string; claims: Head[] };

/** Every field in dispute. */
export const disputes: ReadonlySignal<Dispute[]> = computed(() =>
  [...garage.value.byId.values()].flatMap((rec) =>
    Object.entries(rec.conflicts).map(([field, heads]) => ({ rec, field, claims: onceEach(heads) })),
  ),
);

const byRecord = computed(() => grouped(disputes.value, ({ rec }) => about(rec.id, rec.values)));
const asideByRecord = computed(() =>
  grouped(garage.value.aside, ({ entry }) => (entry ? about(entry.record, entry.set) : [])),
);

/** The disputes on a record and on what names it, as a line of a job does. */
export function disputesOn(id: string): readonly Dispute[] {
  return byRecord.value.get(id) ?? [];
}

/** The entries on a record, or on what names it, that do not count. */
export function asideOn(id: string): readonly AsideEntry[] {
  return asideByRecord.value.get(id) ?? [];
}

function grouped<T>(all: readonly T[], names: (one: T) => string[]): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const one of all) for (const name of names(one)) found.set(name, [...(found.get(name) ?? []), one]);
  return found;
}

function about(id: string, values: object): string[] {
  const named = Object.values(values).filter((value) => typeof value === "string" && garage.value.byId.has(value));
  return [...new Set([id, ...named])];
}

function onceEach(heads: readonly Head[]): Head[] {
  const seen = new Set<string>();
  return heads.filter(({ value }) => {
    const text = JSON.stringify(value);
    return !seen.has(text) && seen.add(text);
  });
}
