/**
 * The garage in memory: the folded journal, this phone's pending entries laid over it, and the records as screens see
 * them. It is told which rows the store has written, and never writes any itself.
 */

import { TOMBSTONE } from "./check";
import { readEntry, sameValue } from "./entry";
import { fold } from "./fold";
import { above, Hanging, isDeleted } from "./hanging";
import type { KindName } from "./kinds";
import { emptyState, type Kept, keptOf, type Line, type RecordState, recordOf, setAside } from "./layers";
import type { AsideEntry, Garage, Head, Rec, Unproven, Value } from "./types";

/**
 * An entry as the phone keeps it. `number` is its place in the home computer's journal, null until pulled from there.
 * `receipt`: the home computer's word that it took the entry in, from `sent_by` or else the device inside the entry.
 */
export type Row = Omit<Line, "number"> & { key: string; number: number | null; order: number; receipt?: string };

type Held = Row & { number: number };

/** Pending entries come after every number a journal will reach. */
const AFTER_ALL = 2 ** 50;

export class Board {
  private readonly base = emptyState();
  private over = emptyState(this.base);
  private upTo = 0;
  private readonly pending = new Map<string, Row>();
  private readonly records = new Map<string, Rec>();
  private lists = new Map<string, readonly Rec[]>();
  private readonly hanging = new Hanging((id) => recordOf(this.over, id));
  /** Keys of entries that name another device than sent them. */
  private readonly byOthers = new Set<string>();

  /** How many entries the home computer is not known to hold. */
  get waiting(): number {
    return this.pending.size;
  }

  /** Takes in rows as written, in any order, and tells whether any of them brought something new. */
  take(rows: readonly Row[]): boolean {
    const arrived = rows.filter((row): row is Held => row.number !== null && row.number > this.upTo);
    const fresh = rows.filter((row) => row.number === null && !this.pending.has(row.key));
    if (arrived.length === 0 && fresh.length === 0) return false;
    for (const row of [...fresh, ...arrived]) if (row.sent_by !== undefined) this.byOthers.add(row.key);
    for (const row of fresh) this.pending.set(row.key, row);
    for (const row of arrived) this.pending.delete(row.key);
    if (arrived.length > 0) this.advance(arrived.sort((one, other) => one.number - other.number));
    else fold(this.over, inOrder(fresh).map(lineOver));
    this.refresh();
    return true;
  }

  /** The garage of this moment. Records and lists that did not change are the same objects as before. */
  garage(): Garage {
    const byId = new Map(this.records);
    const lists = this.lists;
    const of = <K extends KindName>(kind: K): readonly Rec<K>[] => {
      const list = lists.get(kind) ?? standing(byId, kind);
      lists.set(kind, list);
      return list as readonly Rec<K>[];
    };
    const one = <K extends KindName>(kind: K, id: string | null | undefined): Rec<K> | undefined => {
      const rec = byId.get(id ?? "");
      return rec?.kind === kind ? (rec as Rec as Rec<K>) : undefined;
    };
    const unproven = () => this.unproven();
    const folded = () => this.over;
    const hung = (id: string) => this.hanging.on(id);
    return { byId, of, one, aside: setAside(this.over).map(asideEntry), unproven, folded, hung };
  }

  private unproven(): Unproven[] {
    const found = [...this.byOthers].map((key) => keptOf(this.over, key)).filter((kept) => kept?.reason === null);
    return found.map((kept) => ({ entry: readEntry(kept!.line.text)!, sent_by: kept!.line.sent_by! }));
  }

  private advance(arrived: readonly Held[]): void {
    this.upTo = arrived[arrived.length - 1]!.number;
    fold(this.base, arrived);
    for (const id of this.over.records.keys()) this.base.touched.add(id);
    this.over = emptyState(this.base);
    fold(this.over, inOrder([...this.pending.values()]).map(lineOver));
  }

  private refresh(): void {
    const touched = new Set([...this.base.touched, ...this.over.touched]);
    this.base.touched.clear();
    this.over.touched.clear();
    if (touched.size > 0) this.lists = new Map(this.lists);
    for (const id of touched) {
      const state = recordOf(this.over, id);
      if (!state) continue;
      this.hanging.add(id, state);
      // A Set gives what is added to it while it is walked: so do what that hangs on, and so on.
      for (const up of above(state)) if (this.wasDeleted(up)) touched.add(up);
    }
    for (const id of touched) this.refreshRecord(id);
  }

  private wasDeleted(id: string): boolean {
    const state = recordOf(this.over, id);
    return state !== undefined && isDeleted(state);
  }

  private refreshRecord(id: string): void {
    const state = recordOf(this.over, id);
    const kind = state?.kind ?? this.records.get(id)?.kind;
    if (state) this.records.set(id, this.recOf(id, state));
    else this.records.delete(id);
    if (kind !== undefined) this.lists.delete(kind);
  }

  private recOf(id: string, state: RecordState): Rec {
    const rec = recFrom(id, state, this.over.records.has(id));
    const unseen = this.hanging.unseen(id, state).map((name) => madeBy(recordOf(this.over, name)!));
    if (unseen.length === 0) return rec;
    return { ...rec, deleted: false, conflicts: { ...rec.conflicts, deleted: [...state.fields.deleted!, ...unseen] } };
  }
}

/** That a record stands, as said by whoever made what hangs on it. */
function madeBy({ fields, heads }: RecordState): Head {
  const { entry, writer, device } = Object.values(fields)[0]?.[0] ?? { entry: heads[0]!, writer: "", device: "" };
  return { entry, value: false, writer, device };
}

function lineOver(row: Row): Line {
  return { ...row, number: AFTER_ALL + row.order };
}

function inOrder(rows: Row[]): Row[] {
  return rows.sort((one, other) => one.order - other.order);
}

function standing(byId: ReadonlyMap<string, Rec>, kind: string): readonly Rec[] {
  const list = [...byId.values()].filter((rec) => rec.kind === kind && !rec.deleted);
  return list.sort((one, other) => (one.id < other.id ? -1 : 1));
}

/** A record as screens see it, from its folded state. */
export function recFrom(id: string, state: RecordState, pending: boolean): Rec {
  const values: Record<string, Value> = {};
  const conflicts: Record<string, Head[]> = {};
  for (const field in state.fields) {
    const claims = state.fields[field]!;
    const { value } = claims[0]!;
    if (!TOMBSTONE.includes(field) && value !== null) values[field] = value;
    if (field !== "hung" && claims.some((claim) => !sameValue(claim.value, value))) conflicts[field] = [...claims];
  }
  const heads = [...state.heads];
  return { id, kind: state.kind, values, heads, conflicts, pending, deleted: isDeleted(state) };
}

function asideEntry(kept: Kept): AsideEntry {
  const number = kept.line.number < AFTER_ALL ? kept.line.number : null;
  const { text, sent_by = null } = kept.line;
  return { id: kept.name, reason: kept.reason!, number, text, entry: kept.entry, sent_by };
}
