/**
 * What a fold knows, in layers: a state may lie over another one, reads through to it and never touches it. So this
 * phone's pending entries are folded over the journal, and simply folded again when the journal has moved on.
 */

import type { AsideReason, Entry, Head } from "./types";

/**
 * One line of the journal: its number, its exact text, and the reason for which the server's intake set it aside.
 * `sent_by`: the device that is proven to have sent it, where the entry names another.
 */
export type Line = { number: number; text: string; aside: string | null; sent_by?: string };

/**
 * `heads`: entries that no other of the record has seen. `saw`: of several heads, which heads of fields each has seen;
 * one that stands alone has seen all there is. `foreseen`: entries that others of the record have seen and that are not
 * folded (yet). Lists are replaced, never changed in place, so that a copy of a record may share them.
 */
export type RecordState = {
  kind: string;
  heads: readonly string[];
  fields: Record<string, readonly Head[]>;
  saw: ReadonlyMap<string, ReadonlySet<string>>;
  foreseen: ReadonlySet<string>;
};

/** A line as the journal keeps it, under its name. `reason` is null once folded; `entry` then is dropped. */
export type Kept = {
  name: string;
  line: Line;
  base: readonly string[];
  entry: Entry | null;
  reused: boolean;
  reason: AsideReason | null;
};

export type FoldState = {
  below: FoldState | null;
  kept: Map<string, Kept>;
  records: Map<string, RecordState>;
  /** Records written since someone last looked and emptied it. */
  touched: Set<string>;
  /** Names that are or were set aside in this layer. */
  shelf: Set<string>;
  /** By the awaited name, of an entry or a record: the entries that wait for it. */
  waiters: Map<string, Set<string>>;
  /** What people decided about set-aside entries, by name. */
  verdicts: Map<string, boolean>;
};

const NOBODY: ReadonlySet<string> = new Set();

/** Nothing yet, or nothing yet over `below`. */
export function emptyState(below: FoldState | null = null): FoldState {
  return {
    below,
    kept: new Map(),
    records: new Map(),
    touched: new Set(),
    shelf: new Set(),
    waiters: new Map(),
    verdicts: new Map(),
  };
}

export function keptOf(state: FoldState, name: string): Kept | undefined {
  return state.kept.get(name) ?? (state.below ? keptOf(state.below, name) : undefined);
}

export function recordOf(state: FoldState, id: string): RecordState | undefined {
  return state.records.get(id) ?? (state.below ? recordOf(state.below, id) : undefined);
}

export function waitersOf(state: FoldState, name: string): ReadonlySet<string> {
  return state.waiters.get(name) ?? (state.below ? waitersOf(state.below, name) : NOBODY);
}

export function verdictOn(state: FoldState, name: string): boolean | undefined {
  return state.verdicts.get(name) ?? (state.below ? verdictOn(state.below, name) : undefined);
}

/** The record, in this layer: a copy when it came from below, a new one when there is none. */
export function ownRecord(state: FoldState, id: string, kind: string): RecordState {
  state.touched.add(id);
  const own = state.records.get(id);
  if (own) return own;
  const found = recordOf(state, id);
  const made = found
    ? { ...found, fields: { ...found.fields } }
    : { kind, heads: [], fields: {}, saw: new Map(), foreseen: NOBODY };
  state.records.set(id, made);
  return made;
}

/** Every line set aside that nobody has decided to leave, in the order of their numbers. */
export function setAside(state: FoldState): Kept[] {
  const names = new Set<string>();
  for (let layer: FoldState | null = state; layer; layer = layer.below) {
    for (const name of layer.shelf) names.add(name);
  }
  const lines = [...names].map((name) => keptOf(state, name)!);
  const open = lines.filter((kept) => kept.reason !== null && verdictOn(state, kept.name) !== false);
  return open.sort((one, other) => one.line.number - other.line.number);
}

/** Every name reached from `names` through bases, those themselves included. */
export function past(state: FoldState, names: readonly string[]): Set<string> {
  const seen = new Set<string>(names);
  for (const name of seen) {
    for (const earlier of keptOf(state, name)?.base ?? []) seen.add(earlier);
  }
  return seen;
}
