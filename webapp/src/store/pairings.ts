/** Which garages this browser has been paired with: a small database apart, for it must be read before any garage's. */

import { Dexie, type Table } from "dexie";

import type { Pairing } from "./opened";
import { storageTrouble } from "./trouble";

/** `rank` rises with every pairing; the highest is the garage the app opens. */
type PairingRow = Pairing & { rank: number };

class PairingsDb extends Dexie {
  declare pairings: Table<PairingRow, string>;

  constructor() {
    super("tarebook-session", { chromeTransactionDurability: "strict" });
    this.version(1).stores({ pairings: "garage, rank" });
  }
}

async function withDb<T>(work: (db: PairingsDb) => PromiseLike<T>): Promise<T> {
  const db = new PairingsDb();
  try {
    return await work(db);
  } catch (error) {
    throw storageTrouble(error);
  } finally {
    db.close();
  }
}

/** The latest pairing, or null. Rejects with AppError when the browser gives no storage. */
export function latestPairing(): Promise<Pairing | null> {
  return withDb(async (db) => (await db.pairings.orderBy("rank").last()) ?? null);
}

export function rememberPairing(pairing: Pairing): Promise<void> {
  return withDb((db) =>
    db.transaction("rw", [db.pairings], async () => {
      const rank = ((await db.pairings.orderBy("rank").last())?.rank ?? 0) + 1;
      await db.pairings.put({ ...pairing, rank });
    }),
  );
}

/** Demo garages other than the one named; nothing in them is kept. */
export async function otherDemos(garage: string): Promise<string[]> {
  const rows = await withDb((db) => db.pairings.toArray());
  return rows.filter((row) => row.demo && row.garage !== garage).map((row) => row.garage);
}

export async function forgetPairing(garage: string): Promise<void> {
  await withDb((db) => db.pairings.delete(garage));
}
