/** The phone's store when browsers misbehave: full, closed behind its back, upgraded by another tab, read by two. */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { describe, expect, it } from "vitest";

import type { AppError } from "../../webapp/src/errors";
import { LiveGarage } from "../../webapp/src/garage/garage";
import { Writer } from "../../webapp/src/garage/write";
import { databaseName, TABLES, VERSION } from "../../webapp/src/store/database";
import { Store } from "../../webapp/src/store/store";

class Tab {
  troubles: AppError[] = [];
  readonly store: Store;
  readonly live: LiveGarage;
  readonly writer: Writer;
  /** Resolves when another tab's write has been taken in. */
  caughtUp = Promise.resolve();

  constructor(disk: IDBFactory, garage = "garage") {
    use(disk);
    this.store = new Store(garage, {
      written: () => (this.caughtUp = this.live.catchUp()),
      blocked: (trouble) => this.troubles.push(trouble),
    });
    this.live = new LiveGarage(this.store);
    this.writer = new Writer(this.live, "device");
  }

  static async open(disk = new IDBFactory(), garage?: string): Promise<Tab> {
    const tab = new Tab(disk, garage);
    await tab.store.open();
    await tab.live.catchUp();
    return tab;
  }

  names(): unknown[] {
    return this.live.garage.value.of("job").map((rec) => rec.values.name);
  }
}

function use(disk: IDBFactory): void {
  Object.assign(Dexie.dependencies, { indexedDB: disk, IDBKeyRange });
}

function job(name: string) {
  return { kind: "job", set: { name } };
}

/** How fake-indexeddb ends a transaction with an error. */
type Abortable = { _abort(name: string): void };

/** An app one version on, with a database to match. */
async function openNewer(disk: IDBFactory): Promise<Dexie> {
  use(disk);
  const newer = new Dexie(databaseName("garage"));
  const { entries, ...others } = TABLES;
  newer.version(VERSION).stores(TABLES);
  newer.version(VERSION + 1).stores({ entries: `${entries}, number`, ...others });
  return newer.open();
}

async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setTimeout(resolve, 5));
}

describe("a save", () => {
  it("is there when the page dies right after it", async () => {
    const disk = new IDBFactory();
    await (await Tab.open(disk)).writer.save([job("Seats out")]);
    expect((await Tab.open(disk)).names()).toEqual(["Seats out"]);
  });

  it("asks for strict durability", async () => {
    const { store } = await Tab.open();
    const asked = await store.read(async (db) => (db as unknown as { _options: Record<string, unknown> })._options);
    expect(asked.chromeTransactionDurability).toBe("strict");
  });

  it("that finds the phone full says so, and neither store nor screen has any of it", async () => {
    const tab = await Tab.open();
    const meta = await tab.store.read(async (db) => db.meta);
    const put = meta.put.bind(meta);
    // As browsers do it: every put has succeeded, then only the transaction's abort event tells of the full disk.
    meta.put = (...row) =>
      put(...row).then((key) => {
        (Dexie.currentTransaction as unknown as { idbtrans: Abortable }).idbtrans._abort("QuotaExceededError");
        return key;
      });
    await expect(tab.writer.save([job("Seats out")])).rejects.toMatchObject({ code: "storage_full" });
    meta.put = put;
    expect(tab.names()).toEqual([]);
    expect(await tab.store.read((db) => db.entries.count())).toBe(0);
    await tab.writer.save([job("Glass")]);
    expect(tab.names()).toEqual(["Glass"]);
  });

  it("works after the browser has closed the connection in the background", async () => {
    const tab = await Tab.open();
    await tab.store.read(async (db) => db.backendDB().close());
    await tab.writer.save([job("Seats out")]);
    expect(tab.names()).toEqual(["Seats out"]);
    expect(await tab.store.read((db) => db.entries.count())).toBe(1);
  });

  it("keeps photos as plain bytes, never as Blobs", async () => {
    const { store, writer } = await Tab.open();
    const bytes = new Uint8Array([1, 2, 3]).buffer;
    await writer.save([], [{ of: "part-1", bytes, type: "image/jpeg", width: 1, height: 1 }]);
    const [row] = await store.read((db) => db.photo_bytes.toArray());
    expect(Object.prototype.toString.call(row!.bytes)).toBe("[object ArrayBuffer]");
    expect([...new Uint8Array(row!.bytes)]).toEqual([1, 2, 3]);
  });
});

describe("two tabs", () => {
  it("see each other's saves", async () => {
    const disk = new IDBFactory();
    const [one, other] = [await Tab.open(disk), await Tab.open(disk)];
    await one.writer.save([job("Seats out")]);
    await until(() => other.names().length === 1);
    await other.writer.save([job("Glass")]);
    await until(() => one.names().length === 2);
    expect(one.names()).toEqual(other.names());
  });

  it("that save at the same moment lose nothing, and show the same", async () => {
    const disk = new IDBFactory();
    const tabs = [await Tab.open(disk), await Tab.open(disk)];
    await Promise.all(Array.from({ length: 20 }, (_, at) => tabs[at % 2]!.writer.save([job(`Job ${at}`)])));
    await Promise.all(tabs.map((tab) => tab.live.catchUp()));
    expect(tabs[0]!.names()).toHaveLength(20);
    expect(tabs[0]!.names()).toEqual(tabs[1]!.names());
  });

  it("of different garages share nothing", async () => {
    const disk = new IDBFactory();
    const [own, demo] = [await Tab.open(disk, "own"), await Tab.open(disk, "demo")];
    await own.writer.save([job("Seats out")]);
    await demo.live.catchUp();
    expect(demo.names()).toEqual([]);
  });
});

describe("an app of another version", () => {
  it("in a new tab is let in by the old one, which says so and saves no more", async () => {
    const disk = new IDBFactory();
    const old = await Tab.open(disk);
    const newer = await openNewer(disk);
    expect(old.troubles.map((trouble) => trouble.code)).toEqual(["storage_blocked"]);
    await expect(old.writer.save([job("Seats out")])).rejects.toMatchObject({ code: "storage_blocked" });
    newer.close();
  });

  it("that is older than the records leaves them alone", async () => {
    const disk = new IDBFactory();
    (await openNewer(disk)).close();
    await expect(Tab.open(disk)).rejects.toMatchObject({ code: "storage_newer" });
  });
});
