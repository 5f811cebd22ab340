/** Half-filled forms: written soon, at once when the page goes, and gone with the save they became. */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { describe, expect, it } from "vitest";

import { LiveGarage } from "../../webapp/src/garage/garage";
import { Writer } from "../../webapp/src/garage/write";
import { Drafts } from "../../webapp/src/store/drafts";
import { Store } from "../../webapp/src/store/store";

async function open(disk = new IDBFactory()) {
  Object.assign(Dexie.dependencies, { indexedDB: disk, IDBKeyRange });
  const store = new Store("garage", { written: () => undefined, blocked: () => undefined });
  await store.open();
  return { disk, store, drafts: new Drafts(store) };
}

describe("a draft", () => {
  it("is on the disk when its promise resolves, with the last value given", async () => {
    const { disk, drafts } = await open();
    void drafts.keep("weigh", { shown: "1" });
    await drafts.keep("weigh", { shown: "12", photo: new Uint8Array([9]).buffer });
    const later = (await open(disk)).drafts;
    expect(await later.load("weigh")).toEqual({ shown: "12", photo: new Uint8Array([9]).buffer });
  });

  it("is written at once when the page is about to go", async () => {
    const { disk, drafts } = await open();
    void drafts.keep("weigh", { shown: "12" });
    await drafts.flush();
    expect(await (await open(disk)).drafts.load("weigh")).toEqual({ shown: "12" });
  });

  it("can be read back before it is written", async () => {
    const { drafts } = await open();
    void drafts.keep("weigh", { shown: "12" });
    expect(await drafts.load("weigh")).toEqual({ shown: "12" });
  });

  it("that was dropped stays dropped, also when it had not been written yet", async () => {
    const { drafts, store } = await open();
    void drafts.keep("weigh", { shown: "12" });
    await drafts.drop("weigh");
    await drafts.flush();
    expect(await store.read((db) => db.drafts.count())).toBe(0);
    expect(await drafts.load("weigh")).toBeNull();
  });

  it("goes in the same transaction as the save it became", async () => {
    const { drafts, store } = await open();
    await drafts.keep("weigh", { shown: "12" });
    const live = new LiveGarage(store);
    await live.catchUp();
    await new Writer(live, "device").save([{ kind: "job", set: { name: "Seats out" } }], [], "weigh");
    expect(await store.read((db) => db.drafts.count())).toBe(0);
  });

  it("comes back when the save it was taken back for did not succeed", async () => {
    const { drafts } = await open();
    void drafts.keep("weigh", { shown: "12" });
    const withdrawn = drafts.withdraw("weigh");
    expect(await drafts.load("weigh")).toBeNull();
    withdrawn.putBack();
    await drafts.flush();
    expect(await drafts.load("weigh")).toEqual({ shown: "12" });
  });

  it("that cannot be written says why", async () => {
    const { drafts, store } = await open();
    store.close();
    await expect(drafts.keep("weigh", { shown: "12" })).rejects.toMatchObject({ code: "garage_not_open" });
  });
});
