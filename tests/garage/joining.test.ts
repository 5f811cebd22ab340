/** Joining from a phone: the wait for a yes on the home computer, and what becomes of it. */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

import { brokenOff, stopWaiting, waiting } from "../../webapp/src/garage/joining";
import { openSession, pair, pairOn, session } from "../../webapp/src/garage/session";
import { opened } from "../../webapp/src/store/opened";

const WAIT = { status: 202, body: { join: "a-secret", words: ["amber", "kettle"], seconds: 300 } };
const YES = {
  status: 200,
  body: { token: "secret", device: "device-1", garage: "garage-1", name: "Garage", demo: false },
};

type Said = { status: number; body: object } | "dropped";

let asked: { path: string; body: unknown }[] = [];

/** The home computer says these, one after the other, and then the last again and again. */
function says(...answers: Said[]): void {
  vi.stubGlobal("fetch", async (url: string, options: RequestInit) => {
    asked.push({ path: url.replace("/api/v1", ""), body: JSON.parse(options.body as string) });
    const said = answers.length > 1 ? answers.shift()! : answers[0]!;
    if (said === "dropped") throw new TypeError("network error");
    return new Response(JSON.stringify(said.body), { status: said.status });
  });
}

function refusal(status: number, code: string): Said {
  return { status, body: { error: { code, sentence: "No.", data: {} } } };
}

/** The tab's session storage, which outlives a reload. */
class Storage {
  private readonly items = new Map<string, string>();
  getItem = (name: string): string | null => this.items.get(name) ?? null;
  setItem = (name: string, value: string): void => void this.items.set(name, value);
}

beforeEach(() => {
  asked = [];
  Object.assign(Dexie.dependencies, { indexedDB: new IDBFactory(), IDBKeyRange });
  vi.stubGlobal("navigator", { userAgent: "Mobile" });
  vi.stubGlobal("sessionStorage", new Storage());
  vi.useFakeTimers({ toFake: ["setTimeout", "Date"] });
});

afterEach(() => {
  opened.value?.store.close();
  opened.value = null;
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function until(holds: () => boolean): Promise<void> {
  for (let ticks = 0; !holds(); ticks++) {
    if (ticks > 700) throw new Error("it never came");
    await vi.advanceTimersByTimeAsync(500);
    await new Promise((resolve) => setImmediate(resolve));
  }
}

/** Both ends of a promise, without an unhandled one. */
function outcome<T>(promise: Promise<T>): { value?: T; code?: string } {
  const end: { value?: T; code?: string } = {};
  promise.then(
    (value) => (end.value = value),
    (error: { code: string }) => (end.code = error.code),
  );
  return end;
}

describe("a phone with the right code", () => {
  it("shows two words and opens the garage once somebody at home has said yes", async () => {
    await openSession();
    says(WAIT, { status: 202, body: { words: ["amber", "kettle"], seconds: 298 } }, YES);
    const end = outcome(pair("k7qm-2xrd"));
    await until(() => waiting.value !== null);
    expect(waiting.value!.words).toEqual(["amber", "kettle"]);
    expect(session.value.state).toBe("unpaired");
    await until(() => end.value === true);
    expect(session.value).toMatchObject({ state: "ready", garage: "garage-1", device: "device-1" });
    expect(waiting.value).toBeNull();
    expect(asked.map(({ path }) => path)).toEqual(["/pair", "/pair/wait", "/pair/wait"]);
    expect(asked[1]!.body).toEqual({ join: "a-secret" });
    expect(brokenOff()).toBeNull();
  });

  it("goes on asking while the home computer does not answer, or says to wait", async () => {
    await openSession();
    says(WAIT, "dropped", refusal(429, "rate_limited"), { status: 200, body: "<html>" as unknown as object }, YES);
    const end = outcome(pair("code"));
    await until(() => end.value === true);
    expect(session.value.state).toBe("ready");
  });

  it("hears a no, and is as it was", async () => {
    await openSession();
    says(WAIT, refusal(403, "pair_refused"));
    const end = outcome(pair("code"));
    await until(() => end.code !== undefined);
    expect(end.code).toBe("pair_refused");
    expect(session.value).toEqual({ state: "unpaired" });
    expect(waiting.value).toBeNull();
  });

  it("gives up when its time is over and nobody answers", async () => {
    await openSession();
    says(WAIT, "dropped");
    const end = outcome(pair("code"));
    await until(() => end.code !== undefined);
    expect(end.code).toBe("unreachable");
  });

  it("stops waiting when the person says so", async () => {
    await openSession();
    says(WAIT, { status: 202, body: { words: [], seconds: 200 } });
    const end = outcome(pair("code"));
    await until(() => waiting.value !== null);
    stopWaiting();
    await until(() => end.value === false);
    expect(session.value).toEqual({ state: "unpaired" });
  });

  it("goes on waiting after a reload of the page, without another code", async () => {
    await openSession();
    says(WAIT, { status: 202, body: { words: [], seconds: 200 } });
    const dead = outcome(pair("code"));
    await until(() => waiting.value !== null);
    const kept = brokenOff()!;
    expect(kept).toMatchObject({ join: "a-secret", words: ["amber", "kettle"] });
    stopWaiting();
    await until(() => dead.value === false);

    says(YES);
    const end = outcome(pairOn(kept));
    await until(() => end.value === true);
    expect(session.value.state).toBe("ready");
  });
});
