/** What the home computer says of devices and of phones that wait: believed only where it is what its type says. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { askHome } from "../../webapp/src/screens/Devices/askHome";
import { type Opened, opened } from "../../webapp/src/store/opened";

const ASKED: { url: string; options: RequestInit }[] = [];
const DEVICE = {
  id: "a/b",
  name: "Phone",
  paired_at: "2026-01-01",
  last_seen: "2026-01-02",
  revoked_at: null,
  this: true,
};

function answer(body: unknown): void {
  vi.stubGlobal("fetch", async (url: string, options: RequestInit) => {
    ASKED.push({ url, options });
    return new Response(JSON.stringify(body));
  });
}

beforeEach(() => {
  ASKED.length = 0;
  opened.value = { token: "secret" } as Opened;
});

afterEach(() => {
  opened.value = null;
  vi.unstubAllGlobals();
});

it("asks about one device by its id, written so that it stays one part of the address", async () => {
  answer({ home: true, devices: [DEVICE] });
  const { devices } = await askHome("POST /devices/{name}/rename", { name: "a/b", json: { name: "Mine" } });
  expect(devices).toEqual([DEVICE]);
  const [{ url, options }] = ASKED as [(typeof ASKED)[0]];
  expect([url, options.method, options.body]).toEqual(["/api/v1/devices/a%2Fb/rename", "POST", '{"name":"Mine"}']);
});

it.each([
  ["no list", { home: true }],
  ["a list of something else", { home: true, devices: ["Phone"] }],
  ["a device without its name", { home: true, devices: [{ ...DEVICE, name: null }] }],
  ["a list that is none", { home: true, devices: { 0: DEVICE } }],
  ["a moment that is a number", { home: true, devices: [{ ...DEVICE, revoked_at: 3 }] }],
])("does not take %s for the devices", async (_what, body) => {
  answer(body);
  await expect(askHome("GET /devices", {})).rejects.toMatchObject({ code: "answer_unreadable" });
});

it("does not take words that are no words for what a phone shows", async () => {
  answer({ joins: [{ id: "j", name: "Phone", words: ["amber", 7], seconds: 60 }] });
  await expect(askHome("GET /pair/joins", {})).rejects.toMatchObject({ code: "answer_unreadable" });
});
