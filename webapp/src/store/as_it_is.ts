/**
 * A garage's database whatever version it has and whoever else holds it: opened without a say in its tables, only to be
 * read. This is how everything still gets out when a newer app has written it, or when this tab had to let go of it.
 */

import { Dexie } from "dexie";

import { databaseName, type GarageDb } from "./database";
import { storageTrouble } from "./trouble";

/** What can be read, like an open store. */
export type Readable = { read: <T>(work: (db: GarageDb) => PromiseLike<T>) => Promise<T> };

/** Calls `work` with the garage's database as it is. Rejects with AppError. */
export async function readAsItIs<T>(garage: string, work: (store: Readable) => Promise<T>): Promise<T> {
  const db = new Dexie(databaseName(garage));
  try {
    await db.open();
    const tables = Object.fromEntries(db.tables.map((table) => [table.name, table]));
    return await work({ read: async (ask) => ask(tables as unknown as GarageDb) });
  } catch (error) {
    throw storageTrouble(error);
  } finally {
    db.close();
  }
}
