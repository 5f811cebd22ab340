/**
 * One garage's store, open: reads, and writes that are one transaction each. What a write resolves with has been
 * completed on the disk; other tabs are told of it.
 */

import type { Table } from "dexie";

import { AppError } from "../errors";
import { databaseName, FIRST_STATE, GarageDb, type State, VERSION } from "./database";
import { isLost, storageTrouble } from "./trouble";

export type TableName = "entries" | "photos" | "photo_bytes" | "drafts" | "meta";

/** The state before and after a write, and what the work returned. */
export type Written<T> = { before: State; after: State; result: T };

type Listeners = {
  /** Another tab has written. */
  written: () => void;
  /** The connection was given up for good, or stands in the way of a newer app. */
  blocked: (trouble: AppError) => void;
};

export class Store {
  private db: GarageDb;
  private readonly channel: BroadcastChannel | null;
  private given: AppError | null = null;

  constructor(
    readonly garage: string,
    private readonly listeners: Listeners,
  ) {
    this.db = this.connect();
    this.channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(databaseName(garage));
    if (this.channel) this.channel.onmessage = () => listeners.written();
  }

  /** Opens the database, making or upgrading it. Rejects when a newer app has written it. */
  async open(): Promise<void> {
    await this.guarded(() => this.db.open());
    // Dexie counts in tens, and would open a newer database without a word.
    if (this.db.backendDB().version >= 10 * (VERSION + 1)) this.giveUp("storage_newer");
    if (this.given) throw this.given;
  }

  close(): void {
    this.channel?.close();
    this.given ??= new AppError("garage_not_open");
    this.db.close();
  }

  read<T>(work: (db: GarageDb) => PromiseLike<T>): Promise<T> {
    return this.guarded(() => work(this.db));
  }

  /** Runs work as one strict transaction over the tables named; what it changes in `state` is written with it. */
  async write<T>(tables: TableName[], work: (db: GarageDb, state: State) => PromiseLike<T>): Promise<Written<T>> {
    const written = await this.guarded(() => this.transact(tables, work));
    this.channel?.postMessage(null);
    return written;
  }

  private transact<T>(
    tables: TableName[],
    work: (db: GarageDb, state: State) => PromiseLike<T>,
  ): PromiseLike<Written<T>> {
    const { db } = this;
    const named: Table[] = [...new Set<TableName>([...tables, "meta"])].map((name) => db.table(name));
    return db.transaction("rw", named, async () => {
      const before = (await db.meta.get("state"))?.value ?? FIRST_STATE;
      const after = structuredClone(before);
      const result = await work(db, after);
      await db.meta.put({ name: "state", value: after });
      return { before, after, result };
    });
  }

  /** Opens again once when the connection was lost; rows are put by key, so that doing them twice changes nothing. */
  private async guarded<T>(work: () => PromiseLike<T>): Promise<T> {
    if (this.given) throw this.given;
    try {
      return await work();
    } catch (error) {
      if (!isLost(error) || this.given) throw this.given ?? storageTrouble(error);
    }
    try {
      await this.reconnect();
      return await work();
    } catch (error) {
      throw this.given ?? storageTrouble(error);
    }
  }

  private async reconnect(): Promise<void> {
    this.db.close();
    this.db = this.connect();
    await this.db.open();
  }

  private connect(): GarageDb {
    const db = new GarageDb(this.garage);
    db.on("blocked", () => this.listeners.blocked(new AppError("storage_blocked")));
    // A newer app in another tab wants to upgrade: this old one must let go, and say so.
    db.on("versionchange", () => {
      this.giveUp("storage_blocked");
      return false;
    });
    return db;
  }

  private giveUp(code: "storage_blocked" | "storage_newer"): void {
    this.given = new AppError(code);
    this.db.close();
    this.listeners.blocked(this.given);
  }
}
