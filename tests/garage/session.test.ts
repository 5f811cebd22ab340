/** Who this browser is: pairing, coming back to it, and what a demo leaves behind. */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

import { chooseCar, chosenCar } from "../../webapp/src/garage/choices";
import { deviceName, openSession, pair, session } from "../../webapp/src/garage/session";
import { databaseName } from "../../webapp/src/store/database";
import { opened } from "../../webapp/src/store/opened";
import { exportAll } from "../../webapp/src/store/takeout";

const asked: Record<string, unknown>[] = [];

function answer(body: object, status = 200): void {
  vi.stubGlobal("fetch", async (_url: string, options: RequestInit) => {
    asked.push(JSON.parse(options.body as string) as Record<string, unknown>);
    return new Response(JSON.stringify(body), { status });
  });
}

const PAIRED = { token: "secret", device: "device-1", garage: "garage-1", name: "Garage", demo: false };

beforeEach(() => {
  asked.length = 0;
  Object.assign(Dexie.dependencies, { indexedDB: new IDBFactory(), IDBKeyRange });
  vi.stubGlobal("navigator", { userAgent: "Mozilla/5.0 (X11; Linux x86_64)" });
});

afterEach(() => {
  opened.value?.store.close();
  opened.value = null;
  vi.unstubAllGlobals();
});

describe("a browser", () => {
  it("is unpaired at first, ready once paired, and ready again when it comes back", async () => {
    await openSession();
    expect(session.value).toEqual({ state: "unpaired" });
    answer(PAIRED);
    await pair("a-code");
    expect(session.value).toEqual({ state: "ready", garage: "garage-1", device: "device-1", demo: false });
    expect(asked).toEqual([{ code: "a-code", name: "Computer" }]);

    opened.value!.store.close();
    opened.value = null;
    await openSession();
    expect(session.value.state).toBe("ready");
    expect(opened.value).toMatchObject(PAIRED);
  });

  it("stays as it was when the code is refused, or the answer is not one", async () => {
    await openSession();
    answer(
      { error: { code: "pair_code_wrong", sentence: "That code is not right.", do: "Take a fresh one.", data: {} } },
      403,
    );
    await expect(pair("wrong")).rejects.toMatchObject({ code: "pair_code_wrong", do: "Take a fresh one." });
    answer({ ...PAIRED, token: "" });
    await expect(pair("code")).rejects.toMatchObject({ code: "answer_unreadable" });
    expect(session.value).toEqual({ state: "unpaired" });
  });

  it("says who it was when it pairs again, and keeps its records open meanwhile", async () => {
    answer(PAIRED);
    await pair("first");
    const { store } = opened.value!;
    answer({ ...PAIRED, device: "device-2", token: "another" });
    await pair("second");
    expect(asked[1]).toMatchObject({ code: "second", device: "device-1" });
    expect(opened.value).toMatchObject({ device: "device-2", token: "another" });
    expect(opened.value!.store).toBe(store);
  });

  it("remembers which car was chosen in which garage", async () => {
    answer(PAIRED);
    await pair("first");
    await chooseCar("car-2");
    expect(chosenCar.value).toBe("car-2");
    answer({ ...PAIRED, garage: "garage-2" });
    await pair("second");
    expect(chosenCar.value).toBeNull();
    answer(PAIRED);
    await pair("third");
    expect(chosenCar.value).toBe("car-2");
  });

  it("leaves the records of one garage where they are when it is paired with another", async () => {
    answer(PAIRED);
    await pair("first");
    answer({ ...PAIRED, garage: "garage-2" });
    await pair("second");
    expect(session.value.garage).toBe("garage-2");
    expect((await Dexie.getDatabaseNames()).sort()).toEqual([
      databaseName("garage-1"),
      databaseName("garage-2"),
      "tarebook-session",
    ]);
  });

  it("clears the last demo away when a new one opens, and nothing else", async () => {
    answer(PAIRED);
    await pair("own");
    for (const garage of ["demo-1", "demo-2"]) {
      answer({ ...PAIRED, garage, demo: true });
      await pair(null);
    }
    expect(session.value).toMatchObject({ garage: "demo-2", demo: true });
    expect((await Dexie.getDatabaseNames()).sort()).toEqual([
      databaseName("demo-2"),
      databaseName("garage-1"),
      "tarebook-session",
    ]);
  });

  it("is blocked, with the reason, when it gives no storage", async () => {
    const broken = {
      open: () => {
        throw new DOMException("denied", "SecurityError");
      },
    };
    Object.assign(Dexie.dependencies, { indexedDB: broken });
    await openSession();
    expect(session.value).toMatchObject({ state: "blocked", trouble: { code: "storage_failed" } });
  });
});

describe("everything still comes out as one file", () => {
  const keepAndClose = async () => {
    answer(PAIRED);
    await pair("a-code");
    await opened.value!.store.write(["drafts"], (db) =>
      db.drafts.put({ name: "weigh-car:", value: { shown: "912 kg" } }),
    );
    opened.value!.store.close();
    opened.value = null;
  };

  const raisedByANewerApp = () =>
    new Promise<void>((done, failed) => {
      const opening = Dexie.dependencies.indexedDB.open(databaseName("garage-1"), 9999);
      opening.onerror = failed;
      opening.onsuccess = () => {
        opening.result.close();
        done();
      };
    });

  it("when a newer app has written the database, which this one cannot open", async () => {
    await keepAndClose();
    await raisedByANewerApp();
    await openSession();
    expect(session.value).toMatchObject({ state: "blocked", trouble: { code: "storage_newer" } });
    expect(JSON.parse(await (await exportAll()).text())).toMatchObject({
      garage: "garage-1",
      drafts: [{ value: { shown: "912 kg" } }],
    });
  });

  it("but not before there is anything to export", async () => {
    await expect(exportAll()).rejects.toMatchObject({ code: "garage_not_open" });
  });
});

describe("the name of a device", () => {
  it.each([
    ["Mozilla/5.0 (Linux; some phone) Mobile", "Phone"],
    ["Mozilla/5.0 (X11; Linux x86_64)", "Computer"],
  ])("says what it is: %s", (agent, name) => expect(deviceName(agent)).toBe(name));
});
