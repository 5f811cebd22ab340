/**
 * The tables of one garage on this phone. Each garage has a database of its own, named by its id, so that a demo can
 * never mix with real records. Every write is `strict`: saved means on the disk, not in some buffer.
 */

import { Dexie, type Table } from "dexie";

import type { Announce } from "../generated/routes";
import type { Row } from "../journal/board";

/** Raise it together with a further `version(…).stores(…)` below, never by changing an existing one. */
export const VERSION = 1;

/**
 * An entry and how far it has come. `seq` rises with every write of any row: other tabs catch up by it. `sent`: the home
 * computer has taken it; `held`: it has come back from there word for word, with its number. One that came back as a
 * stranger's, though this phone has its receipt, is `pending` with its number: it goes once more, to be proven.
 */
export type EntryRow = Row & { seq: number; state: "pending" | "sent" | "held" };

/** `refused`, `damaged`: never sent again by itself, still kept. `fetched`: came from the home computer. */
export type PhotoState = "waiting" | "sent" | "fetched" | "refused" | "damaged";

/** What the home computer takes. */
export type PhotoType = Announce["type"];
export type PhotoRow = {
  sha256: string;
  size: number;
  type: PhotoType;
  state: PhotoState;
  order: number;
  why: string | null;
};

/** Bytes as an ArrayBuffer: WebKit loses Blobs. */
export type BytesRow = { sha256: string; size: "thumb" | "full"; type: PhotoType; bytes: ArrayBuffer };

/**
 * Where this phone has read up to in the home computer's journal: its epoch, the last number read, and the mark of all
 * up to there, by which a journal grown anew after a restore is told from this one. An empty epoch: never heard of it.
 */
export type Cursor = { epoch: string; number: number; mark: string };

/**
 * `counter` is the last `seq` given; `generation` changes when rows have to be folded again from the start. Entries up
 * to `durable` are in a verified backup. `heard` is when the home computer last answered, `proven` when it had last proven a backup.
 */
export type State = {
  counter: number;
  generation: number;
  cursor: Cursor;
  durable: number;
  heard: string | null;
  proven?: string | null;
};

export const NO_CURSOR: Cursor = { epoch: "", number: 0, mark: "" };
export const FIRST_STATE: State = { counter: 0, generation: 0, cursor: NO_CURSOR, durable: 0, heard: null };

export type DraftRow = { name: string; value: unknown };
type StateRow = { name: "state"; value: State };

/** Each table's key and what it is looked up by. */
export const TABLES = {
  entries: "key, seq, [state+order]",
  photos: "sha256, [state+order]",
  photo_bytes: "[sha256+size]",
  drafts: "name",
  meta: "name",
};

export class GarageDb extends Dexie {
  declare entries: Table<EntryRow, string>;
  declare photos: Table<PhotoRow, string>;
  declare photo_bytes: Table<BytesRow, [string, string]>;
  declare drafts: Table<DraftRow, string>;
  declare meta: Table<StateRow, string>;

  constructor(garage: string) {
    super(databaseName(garage), { chromeTransactionDurability: "strict" });
    this.version(VERSION).stores(TABLES);
  }
}

export function databaseName(garage: string): string {
  return `tarebook-${garage}`;
}
