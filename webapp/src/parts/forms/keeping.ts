/** Which of the fields typed can be kept, and by which entries: pure, so that the form has one place that decides. */
import { lacksRequired } from "../../journal/check";
import type { KindName } from "../../journal/kinds";
import type { Value } from "../../journal/types";
import { keptValue } from "./draftRecord";
import { unkeptIn } from "./unreadable";

export type Fields = Record<string, Value>;

/** What stands in fields and is no entry yet. `base`: what its writer had seen of the record. `asked`: meant as it is. */
export type Typed = Record<string, { value: Value; base: string[]; asked?: true }>;

/** `names`: the fields typed that are settled by this, whether they differ from what counts or not. */
type Group = { set: Fields; base: string[]; names: string[] };

type Around = { before: Fields; defaults: Fields; isThere: boolean; all: boolean };

export const same = (a: Value | undefined, b: Value | undefined) =>
  JSON.stringify(a ?? null) === JSON.stringify(b ?? null);

export function valuesOf(typed: Typed): Fields {
  return Object.fromEntries(Object.entries(typed).map(([field, { value }]) => [field, value]));
}

/**
 * The entries to write, a group of fields for each base: fields that were touched at different times had seen different
 * things; a group may set nothing new. Null while a new record lacks what it cannot be without. `all`: a fact, set whole.
 */
export function ready(kind: KindName, typed: Typed, { before, defaults, isThere, all }: Around): Group[] | null {
  const names = Object.keys(typed).filter((name) => all || !unkeptIn(kind, name, typed[name]!));
  if (names.length === 0 && !all) return [];
  const values = Object.fromEntries(names.map((name) => [name, keptValue(kind, name, typed[name]!.value)]));
  if (!isThere) {
    const set = Object.fromEntries(Object.entries({ ...defaults, ...values }).filter(([, value]) => value !== null));
    return lacksRequired(kind, set) ? null : [{ set, base: [], names }];
  }
  const groups = new Map<string, Group>();
  for (const name of names) {
    const { base } = typed[name]!;
    const group = groups.get(base.join()) ?? { set: {}, base, names: [] };
    group.names.push(name);
    if (!same(values[name], before[name])) group.set[name] = values[name]!;
    groups.set(base.join(), group);
  }
  return [...groups.values()];
}
