/**
 * What was done to a record, act by act, and the entries that take an act back.
 *
 * An act is taken back by an ordinary entry whose base is that act and nothing else: its writer cannot have meant to undo
 * what came after it or beside it, so another's value that stands against it stays, as an open conflict.
 */

import { isFact, MOST_HUNG, TOMBSTONE } from "./check";
import { readEntry } from "./entry";
import { fold } from "./fold";
import { emptyState, type FoldState, keptOf, type Line, past, recordOf } from "./layers";
import type { Entry, Head, Value } from "./types";

/**
 * `before`: the claims on each field it set as its writer saw them; several where it settled a conflict. `stands`: the
 * fields that still are as it set them. `begins`: it made the record.
 */
export type Act = {
  entry: Entry;
  before: Record<string, readonly Head[]>;
  stands: string[];
  begins: boolean;
};

/** Fields to set, by an entry that has seen one other and nothing else. */
export type TakenBack = { kind: string; record: string; set: Record<string, Value>; base: string[] };

/** The acts on a record, the latest first: all, or the latest few. Nothing for a record that is not there. */
export function actsOn(state: FoldState, record: string, most = Number.POSITIVE_INFINITY): Act[] {
  const now = recordOf(state, record);
  const lines = now ? linesOf(state, record, now.heads) : [];
  return lines
    .slice(-most)
    .reverse()
    .map((line) => actOf(state, line));
}

/** One act, as it stands among the others now; null for an entry that is not folded. */
export function actBy(state: FoldState, name: string): Act | null {
  const kept = keptOf(state, name);
  return kept && kept.reason === null ? actOf(state, kept.line) : null;
}

function actOf(state: FoldState, line: Line): Act {
  const entry = readEntry(line.text)!;
  const then = emptyState();
  fold(then, linesOf(state, entry.record, entry.base));
  const fields = recordOf(then, entry.record)?.fields ?? {};
  const now = recordOf(state, entry.record)?.fields ?? {};
  const set = Object.keys(entry.set);
  return {
    entry,
    before: Object.fromEntries(set.map((name) => [name, fields[name] ?? []])),
    stands: set.filter((name) => now[name]?.some((claim) => claim.entry === entry.id)),
    begins: !recordOf(then, entry.record),
  };
}

/** The entries of a record that are folded and that these have seen, themselves included, in the order they were folded. */
function linesOf(state: FoldState, record: string, names: readonly string[]): Line[] {
  const kept = [...past(state, names)].map((name) => keptOf(state, name));
  const own = kept.filter((each) => each?.reason === null && readEntry(each.line.text)?.record === record);
  return own.map((each) => ({ ...each!.line, aside: null })).sort((one, other) => one.number - other.number);
}

/**
 * What takes an act back: the record as it was before. What began a record, deletes it; what settled a conflict, opens it
 * again, an entry for each former value. `hung`: what hangs on the record, where it is deleted by this.
 */
export function takenBack({ entry, before, stands, begins }: Act, hung: string[]): TakenBack[] {
  const { id, kind, record } = entry;
  const undo = (set: Record<string, Value>) => ({ kind, record, set, base: [id] });
  if (begins) return [undo(deleting(kind, hung))];
  const fields = Object.entries(before).filter(([name]) => stands.includes(name) && name !== "hung");
  if (fields.length === 0) return [];
  const most = Math.max(...fields.map(([, claims]) => distinct(claims).length), 1);
  return Array.from({ length: most }, (_, at) => {
    const set = fields.map(([name, claims]) => [name, former(name, distinct(claims), at)] as const);
    return undo(Object.fromEntries(set));
  });
}

/** What deletes a record with all that is known to hang on it; of a fact, and where it is too much to say, just it. */
export function deleting(kind: string, hung: string[]): Record<string, Value> {
  return isFact(kind) || hung.length > MOST_HUNG ? { deleted: true } : { deleted: true, hung };
}

/** The former value; a field that had fewer than others says its last again. */
function former(name: string, values: readonly Value[], at: number): Value {
  const value = values[Math.min(at, values.length - 1)] ?? null;
  return TOMBSTONE.includes(name) && value === null ? false : value;
}

function distinct(claims: readonly Head[]): Value[] {
  const texts = new Map(claims.map(({ value }) => [JSON.stringify(value), value]));
  return [...texts.values()];
}
