/** A photo to look at: the phone's own, else the home computer's; never bytes that another hash names. */

import { afterEach, expect, it, vi } from "vitest";

import { photoUrl } from "../../webapp/src/garage/photos";
import { newId } from "../../webapp/src/garage/write";
import { type Opened, opened } from "../../webapp/src/store/opened";
import { hashOf } from "../../webapp/src/store/photo_rows";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

const bytes = new Uint8Array(1000).fill(7).buffer;
const sha256 = hashOf(bytes);

async function phoneWithPhoto(): Promise<Phone> {
  const phone = await Phone.open("one", new HomeComputer("garage"));
  const photo = { of: newId(), bytes, type: "image/jpeg" as const, width: 40, height: 30 };
  await phone.writer.save([{ kind: "weighing", record: photo.of, set: { method: "direct", shown: "12 kg" } }], [photo]);
  opened.value = { store: phone.store, token: "token", garage: "garage" } as Opened;
  return phone;
}

async function shown(found: unknown): Promise<ArrayBuffer> {
  return (await fetch(found as string)).arrayBuffer();
}

afterEach(() => {
  opened.value = null;
  vi.unstubAllGlobals();
});

it("shows the phone's own, and what the home computer has when the phone's has gone bad", async () => {
  const phone = await phoneWithPhoto();
  expect(await shown(await photoUrl(sha256, "full"))).toEqual(bytes);
  opened.value = { ...opened.peek(), garage: "looked at anew" } as Opened;
  const bad = new Uint8Array(1000).buffer;
  await phone.store.write(["photo_bytes"], (db) =>
    db.photo_bytes.put({ sha256, size: "full", type: "image/jpeg", bytes: bad }),
  );
  const asked = vi.fn(async () => new Response(bytes, { headers: { "Content-Type": "image/jpeg" } }));
  vi.stubGlobal("fetch", asked);
  const found = await photoUrl(sha256, "full");
  expect(asked).toHaveBeenCalledOnce();
  vi.unstubAllGlobals();
  expect(await shown(found)).toEqual(bytes);
});

it("tells in the home computer's words why there is none", async () => {
  await phoneWithPhoto();
  const error = { code: "photo_damaged", sentence: "This photo was damaged.", do: "It comes again.", data: {} };
  vi.stubGlobal("fetch", async () => new Response(JSON.stringify({ error }), { status: 404 }));
  expect(await photoUrl("0".repeat(64), "full")).toMatchObject({ code: "photo_damaged", do: "It comes again." });
});
