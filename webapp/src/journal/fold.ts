/**
 * The fold: a journal's entries, in the order of their numbers, become records. Pure; the server runs the same
 * (`server/tarebook/journal/fold.py`), and `fixtures/journals/` holds both to it.
 *
 * An entry names in `base` the heads of its record as its writer saw them; whatever those reach is its past. An entry
 * that sets a field takes the place of the claims in its past and stands beside all others. Two differing claims are an
 * open conflict: the first stands until a person settles it, by an entry whose past holds them all.
 *
 * An entry waits whose base has not arrived, waits itself, or came from a stranger and nobody has judged it yet, unless a
 * person has taken it in and its record is there; one that edits a record which is not there is invalid until there is
 * one. Both are looked at again right after that.
 */

import { isFact, known, lacksRequired, problem } from "./check";
import { rawId, readEntry } from "./entry";
import {
  type FoldState,
  type Kept,
  keptOf,
  type Line,
  ownRecord,
  past,
  type RecordState,
  recordOf,
  verdictOn,
  waitersOf,
} from "./layers";
import type { AsideReason, Entry, Head, Value } from "./types";

const NOTHING: ReadonlySet<string> = new Set();
const MAY_CHANGE: ReadonlySet<AsideReason | null> = new Set(["waiting", "stranger", "invalid"]);

/** Folds lines into the state; they must come in the order of their numbers. */
export function fold(state: FoldState, lines: Iterable<Line>): void {
  for (const line of lines) add(state, line);
}

/** Folds one line, and whatever waited for it, lowest number first. The same bytes again change nothing. */
function add(state: FoldState, line: Line): void {
  const entry = readEntry(line.text);
  const first = entry && keptOf(state, entry.id);
  const name = entry && !first ? entry.id : rawId(line.text);
  if (first?.line.text === line.text || keptOf(state, name)) return;
  state.kept.set(name, { name, line, base: entry?.base ?? [], entry, reused: first !== undefined, reason: "waiting" });
  const due = [name];
  for (let next = due.shift(); next !== undefined; next = due.shift()) settle(state, next, due);
}

/** What this layer holds of a line it has just found folded, or set aside for a reason. */
function mark(state: FoldState, kept: Kept, reason: AsideReason | null): void {
  const entry = reason === null ? null : kept.entry;
  if (state.kept.get(kept.name) === kept) {
    kept.reason = reason;
    kept.entry = entry;
  } else state.kept.set(kept.name, { ...kept, reason, entry });
  if (reason !== null) state.shelf.add(kept.name);
}

function settle(state: FoldState, name: string, due: string[]): void {
  const kept = keptOf(state, name);
  if (!kept || !MAY_CHANGE.has(kept.reason)) return;
  const reason = obstacle(state, kept);
  const { entry } = kept;
  mark(state, kept, reason);
  if (reason === null) apply(state, entry!, due);
  else if (entry) lookBehind(state, entry);
  if (reason === null && entry!.kind === "verdict") judge(state, entry!, due);
  for (const needed of needs(state, reason, entry)) wait(state, name, needed);
  if (!isUnsettled(state, name)) wake(state, name, due);
}

/** Looks again at all that waited for an entry, or for a record, of this name. */
function wake(state: FoldState, name: string, due: string[]): void {
  const waiters = waitersOf(state, name);
  for (const waiter of waiters) schedule(state, waiter, due);
  if (waiters.size > 0) state.waiters.set(name, new Set());
}

/** Puts a name among those to look at next, by its number. */
function schedule(state: FoldState, name: string, due: string[]): void {
  const number = keptOf(state, name)?.line.number;
  if (number === undefined) return;
  let from = 0;
  for (let to = due.length; from < to; ) {
    const middle = (from + to) >> 1;
    if (keptOf(state, due[middle]!)!.line.number > number) to = middle;
    else from = middle + 1;
  }
  due.splice(from, 0, name);
}

/** What an entry set aside waits for: its bases that are not settled, or the record that it edits. One taken in waits
 * for either. */
function needs(state: FoldState, reason: AsideReason | null, entry: Entry | null): string[] {
  if (reason === "waiting") {
    const bases = entry!.base.filter((base) => isUnsettled(state, base));
    return verdictOn(state, entry!.id) === true ? [entry!.record, ...bases] : bases;
  }
  return reason === "invalid" && problem(entry!) === null ? [entry!.record] : [];
}

function wait(state: FoldState, name: string, needed: string): void {
  const own = state.waiters.get(needed) ?? new Set(waitersOf(state, needed));
  state.waiters.set(needed, own.add(name));
}

/** Whether it may still be folded, for all that is known: not here, waiting, or a stranger's and not judged. */
function isUnsettled(state: FoldState, name: string): boolean {
  const kept = keptOf(state, name);
  if (!kept) return true;
  return (kept.reason === "waiting" || kept.reason === "stranger") && verdictOn(state, name) !== false;
}

/** A person's verdict on an entry set aside. One who takes it in outweighs any who leave it. */
function judge(state: FoldState, verdict: Entry, due: string[]): void {
  if (!Object.hasOwn(verdict.set, "entry")) return;
  const name = verdict.set.entry as string;
  const take = verdict.set.take === true;
  state.verdicts.set(name, take || verdictOn(state, name) === true);
  schedule(state, name, due);
}

/** Why an entry cannot be folded now, or null: first what is wrong with it alone, then what its place makes wrong. */
function obstacle(state: FoldState, { name, line, entry, reused }: Kept): AsideReason | null {
  if (!entry) return "unreadable";
  if (reused) return "id_reuse";
  const fault = problem(entry);
  if (fault) return fault;
  const taken = verdictOn(state, name) === true;
  if (line.aside !== null && !taken) return line.aside as AsideReason;
  const wrong = misfit(entry, recordOf(state, entry.record));
  const mayWait = !taken || wrong === "invalid";
  return mayWait && entry.base.some((base) => isUnsettled(state, base)) ? "waiting" : wrong;
}

function misfit(entry: Entry, record: RecordState | undefined): AsideReason | null {
  if (!record) return lacksRequired(entry.kind, entry.set) ? "invalid" : null;
  if (record.kind !== entry.kind) return "kind_changed";
  const edits = Object.keys(entry.set).some((field) => field !== "deleted");
  return isFact(entry.kind) && edits ? "fact" : null;
}

function apply(state: FoldState, entry: Entry, due: string[]): void {
  if (!recordOf(state, entry.record)) wake(state, entry.record, due);
  const record = ownRecord(state, entry.record, entry.kind);
  const seen = seenOf(state, record, entry);
  if (seen && record.heads.length === 1) record.saw = new Map([[record.heads[0]!, claimsOf(record)]]);
  const isLate = record.foreseen.has(entry.id);
  const put = (field: string, value: Value, knowing = seen) => {
    const claim = { entry: entry.id, value, writer: entry.writer, device: entry.device };
    record.fields[field] = knowing ? placed(state, record.fields[field] ?? [], claim, knowing, isLate) : [claim];
  };
  for (const field of known(entry.kind, entry.set)) put(field, entry.set[field]!);
  if (seen && !Object.hasOwn(entry.set, "deleted") && isWorkUnseen(record, seen))
    put("deleted", false, without(seen, deletionsOf(record))); // of a deletion that it knew of, it says nothing
  if (seen && entry.set.deleted === true) keepWhatWasUnseen(state, record, entry, seen);
  record.heads = seen ? headsWith(state, record.heads, entry.id, seen, isLate) : [entry.id];
  if (isLate) record.foreseen = new Set([...record.foreseen].filter((name) => name !== entry.id));
  noteWhatHeadsSaw(state, record, entry.id, seen, isLate);
}

/** Whether the record was deleted by somebody whom an edit that has seen so much had not seen. */
function isWorkUnseen(record: RecordState, seen: ReadonlySet<string>): boolean {
  return deletionsOf(record).some((name) => !seen.has(name));
}

/** Names of the entries that say of the record, as it stands, that it is deleted. */
function deletionsOf({ fields }: RecordState): string[] {
  return (fields.deleted ?? []).filter((claim) => claim.value === true).map((claim) => claim.entry);
}

function without(seen: ReadonlySet<string>, names: readonly string[]): Set<string> {
  return new Set([...seen].filter((name) => !names.includes(name)));
}

/** A deletion never beats work it has not seen: whose branch it ends says that the record stands. */
function keepWhatWasUnseen(state: FoldState, record: RecordState, deletion: Entry, seen: ReadonlySet<string>): void {
  const claims = record.fields.deleted!;
  const holders = new Set(claims.map((claim) => claim.entry));
  if (!holders.has(deletion.id)) return;
  const unseen = record.heads.filter((head) => !seen.has(head) && !holders.has(head));
  const kept = unseen.map((head) => readEntry(keptOf(state, head)!.line.text)!);
  record.fields.deleted = [
    ...claims,
    ...kept.map(({ id, writer, device }) => ({ entry: id, value: false, writer, device })),
  ];
}

/**
 * What of the record's heads, and of its fields', the entry has seen; null is all of it.
 *
 * Who builds on heads has seen what they saw: only a past that ends elsewhere has to be walked, or one of an entry that
 * comes late. So a branch nobody else has seen costs each of its entries the same, however long it is.
 */
function seenOf(state: FoldState, record: RecordState, { id, base }: Entry): ReadonlySet<string> | null {
  if (sameNames(base, record.heads)) return null;
  if (!record.foreseen.has(id) && base.every((name) => record.heads.includes(name))) {
    return new Set([...base, ...base.flatMap((name) => [...(record.saw.get(name) ?? [])])]);
  }
  const seen = past(state, base);
  foresee(state, record, seen);
  return seen;
}

function foresee(state: FoldState, record: RecordState, seen: ReadonlySet<string>): void {
  const unfolded = [...seen].filter((name) => keptOf(state, name)?.reason !== null);
  if (unfolded.length > 0) record.foreseen = new Set([...record.foreseen, ...unfolded]);
}

/** An entry that the record's have seen is here, set aside: now they have seen what it had seen. */
function lookBehind(state: FoldState, entry: Entry): void {
  if (!recordOf(state, entry.record)?.foreseen.has(entry.id)) return;
  const record = ownRecord(state, entry.record, entry.kind);
  foresee(state, record, past(state, entry.base));
  walkFromHeads(state, record);
}

function noteWhatHeadsSaw(
  state: FoldState,
  record: RecordState,
  name: string,
  seen: ReadonlySet<string> | null,
  isLate: boolean,
): void {
  if (record.heads.length === 1) record.saw = new Map();
  else if (isLate) walkFromHeads(state, record);
  else {
    const mine = seen && seen.size > 0 ? new Set([...claimsOf(record)].filter((claim) => seen.has(claim))) : NOTHING;
    record.saw = new Map([...[...record.saw].filter(([head]) => !seen?.has(head)), [name, mine]]);
  }
}

function walkFromHeads(state: FoldState, record: RecordState): void {
  if (record.heads.length < 2) return;
  const all = [...claimsOf(record), ...record.heads];
  const saw = (head: string) => {
    const seen = past(state, keptOf(state, head)!.base);
    return new Set(all.filter((name) => seen.has(name)));
  };
  record.saw = new Map(record.heads.map((head) => [head, saw(head)]));
}

/** The entries that hold a field. */
function claimsOf({ fields }: RecordState): Set<string> {
  return new Set(Object.values(fields).flatMap((heads) => heads.map((head) => head.entry)));
}

/** The field's claims with a new one in the place of the first it has seen, or after all of them. */
function placed(
  state: FoldState,
  claims: readonly Head[],
  claim: Head,
  seen: ReadonlySet<string>,
  isLate: boolean,
): readonly Head[] {
  const holders = isLate ? claims.map((head) => head.entry) : [];
  if (isPast(state, claim.entry, holders)) return claims; // what its writer's later entries say already stands
  if (seen.size === 0) return [...claims, claim];
  const others = claims.filter((head) => !seen.has(head.entry));
  const first = claims.findIndex((head) => seen.has(head.entry));
  const place = first < 0 ? others.length : first;
  return [...others.slice(0, place), claim, ...others.slice(place)];
}

function headsWith(
  state: FoldState,
  heads: readonly string[],
  id: string,
  seen: ReadonlySet<string>,
  isLate: boolean,
): string[] {
  const remaining = heads.filter((head) => !seen.has(head));
  return isLate && isPast(state, id, heads) ? remaining : [...remaining, id];
}

/** Whether any of the later entries had seen the earlier one. */
function isPast(state: FoldState, earlier: string, later: readonly string[]): boolean {
  return later.length > 0 && past(state, later).has(earlier);
}

function sameNames(some: readonly string[], others: readonly string[]): boolean {
  if (some.length === 1 && others.length === 1) return some[0] === others[0];
  return some.every((name) => others.includes(name)) && others.every((name) => some.includes(name));
}
