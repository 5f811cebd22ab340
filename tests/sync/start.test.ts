/** The whole phone below its screens, from the start: paired with one garage, then with another. */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import { afterEach, beforeEach, expect, it, vi } from "vitest";

import { garage, live } from "../../webapp/src/garage/garage";
import { pair, session } from "../../webapp/src/garage/session";
import { save } from "../../webapp/src/garage/write";
import { startPhone } from "../../webapp/src/sync/start";
import { sync } from "../../webapp/src/sync/state";
import { HomeComputer } from "./home_computer";

const homes = { one: new HomeComputer("garage-one"), two: new HomeComputer("garage-two") };

/** Each token is known at one home only; the pairing code says at which. */
async function fetchAt(url: string, options: RequestInit): Promise<Response> {
  if (url.endsWith("/health")) return Response.json({ ok: true, demo: false });
  if (url.endsWith("/pair")) {
    const { code } = JSON.parse(options.body as string) as { code: "one" | "two" };
    homes[code].devices.add(code);
    return Response.json({ token: `token-${code}`, device: code, garage: homes[code].garage, name: "", demo: false });
  }
  const token = new Headers(options.headers).get("Authorization")!;
  return homes[token.endsWith("one") ? "one" : "two"].fetch(url, options);
}

beforeEach(() => {
  Object.assign(Dexie.dependencies, { indexedDB: new IDBFactory(), IDBKeyRange });
  vi.stubGlobal("fetch", fetchAt);
  vi.stubGlobal("navigator", { userAgent: "" });
  vi.stubGlobal("addEventListener", () => undefined);
  vi.stubGlobal("document", { visibilityState: "visible", addEventListener: () => undefined });
});

afterEach(() => {
  live.value = null; // the running sync ends with it
  vi.unstubAllGlobals();
});

async function until(holds: () => boolean): Promise<void> {
  while (!holds()) await new Promise((resolve) => setTimeout(resolve, 2));
}

function names(): unknown[] {
  return garage.value.of("job").map((rec) => rec.values.name);
}

it("a phone that is paired with a second garage carries nothing over, and finds the first as it was", async () => {
  await startPhone();
  expect(session.value.state).toBe("unpaired");
  await expect(save([{ kind: "job", set: { name: "Too early" } }])).rejects.toMatchObject({ code: "garage_not_open" });

  await pair("one");
  await save([{ kind: "job", set: { name: "Of garage one" } }]);
  await until(() => homes.one.head === 1 && sync.value.waiting === 0);
  const first = live.value!.store;

  await pair("two");
  expect(names()).toEqual([]);
  await save([{ kind: "job", set: { name: "Of garage two" } }]);
  await until(() => homes.two.head === 1 && sync.value.waiting === 0);
  expect(names()).toEqual(["Of garage two"]);
  expect(first === live.value!.store).toBe(false);

  await pair("one");
  expect(names()).toEqual(["Of garage one"]);
  await until(() => sync.value.phase === "idle" && sync.value.waiting === 0);
  expect([homes.one, homes.two].map((home) => home.lines.map((line) => JSON.parse(line.text).device))).toEqual([
    ["one"],
    ["two"],
  ]);
});
