/** The shapes the journal works in: values, entries, heads, records. Names of data are the wire's own. */

import type { FieldName, KindName, Values } from "./kinds";
import type { FoldState } from "./layers";

/** What a field may hold. `null` clears a field. Typed quantities stay strings, exactly as typed. */
export type Value = string | number | boolean | null | string[];

/**
 * One immutable entry as it stands in the journal. `base` names the record's heads as the writer saw them; `made_at` is
 * for people, never for order.
 */
export type Entry = {
  id: string;
  device: string;
  writer: string;
  n: number;
  kind: string;
  record: string;
  set: Record<string, Value>;
  base: string[];
  photos: string[];
  made_at: string;
  schema: number;
};

/** One standing claim on a field: which entry set which value, and who wrote it. */
export type Head = { entry: string; value: Value; writer: string; device: string };

/** The values of a record of one kind; of any kind, when none is named. */
export type ValuesOf<K extends string = string> = K extends KindName ? Values<K> : Record<string, Value>;
/** The names of their fields. */
export type FieldOf<K extends string = string> = K extends KindName ? FieldName<K> : string;

/**
 * A record as screens see it: folded journal with this phone's pending entries laid over it.
 * `conflicts` holds only fields whose heads differ; `values` then shows the standing (first) one. The tombstone is
 * `deleted`, never a value.
 */
export type Rec<K extends string = string> = {
  id: string;
  kind: K;
  values: ValuesOf<K>;
  heads: string[];
  conflicts: Record<string, Head[]>;
  pending: boolean;
  deleted: boolean;
};

export type AsideReason =
  | "unreadable"
  | "newer_schema"
  | "unknown_kind"
  | "invalid"
  | "waiting"
  | "fact"
  | "id_reuse"
  | "stranger"
  | "kind_changed";

/**
 * An entry kept but not folded, and why. `id` is its name in the journal; `entry` is null when the bytes are none.
 * `sent_by`: the device that sent it, where the entry names another.
 */
export type AsideEntry = {
  id: string;
  reason: AsideReason;
  number: number | null;
  text: string;
  entry: Entry | null;
  sent_by: string | null;
};

/** An entry that counts and names another device than the one that is proven to have sent it. */
export type Unproven = { entry: Entry; sent_by: string };

/** The whole garage at one moment. `of(kind)` leaves out deleted records and orders by record id. */
export type Garage = {
  byId: ReadonlyMap<string, Rec>;
  of<K extends KindName>(kind: K): readonly Rec<K>[];
  /** The record of this kind, deleted or not. */
  one<K extends KindName>(kind: K, id: string | null | undefined): Rec<K> | undefined;
  aside: readonly AsideEntry[];
  unproven(): readonly Unproven[];
  /** The journal as it is folded at the time of asking, for what looks at single entries (`history`). */
  folded(): FoldState;
  /** What hangs on a record and stands: what its deletion takes along. */
  hung(id: string): string[];
};
