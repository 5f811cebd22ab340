/** Photos on their way: resumed, verified, never dropped, never sent for ever. */

import { describe, expect, it } from "vitest";

import { newId } from "../../webapp/src/garage/write";
import { countPhotos, hashOf as hashHere } from "../../webapp/src/store/photo_rows";
import { HomeComputer, hashOf } from "./home_computer";
import { Phone } from "./phone";

async function phoneWithPhoto(size = 1000, fill = 7): Promise<{ home: HomeComputer; phone: Phone; sha256: string }> {
  const home = new HomeComputer("garage");
  const phone = await Phone.open("one", home);
  return { home, phone, sha256: await shoot(phone, size, fill) };
}

async function shoot(phone: Phone, size: number, fill: number): Promise<string> {
  const record = newId();
  const bytes = new Uint8Array(size).fill(fill).buffer;
  const photo = { of: record, bytes, type: "image/jpeg" as const, width: 40, height: 30 };
  await phone.writer.save([{ kind: "weighing", record, set: { method: "direct", shown: "12 kg" } }], [photo]);
  return hashHere(bytes);
}

function stateOf(phone: Phone, sha256: string) {
  return phone.store.read(async (db) => (await db.photos.get(sha256))?.state);
}

describe("a photo", () => {
  it("is saved with its record, and arrives whole under the hash of its bytes", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    expect(await countPhotos(phone.store)).toEqual({ waiting: 1, stuck: 0 });
    expect(phone.live.garage.value.of("photo")[0]!.values).toMatchObject({ sha256, size: 1000, width: 40 });
    await phone.sync();
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
    expect(await stateOf(phone, sha256)).toBe("sent");
  });

  it("of two records is one file: kept once, sent once, and there for both", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    await shoot(phone, 1000, 7);
    await phone.sync();
    await shoot(phone, 1000, 7); // and again when it is over there
    await phone.sync();
    expect(phone.live.garage.value.of("photo").map(({ values }) => values.sha256)).toEqual(Array(3).fill(sha256));
    expect(await phone.store.read((db) => db.photo_bytes.count())).toBe(1);
    expect(home.asked.filter((path) => path === "POST /photos")).toHaveLength(1);
    expect(home.photos.size).toBe(1);
  });

  it("goes in pieces, a small one first, and how much of it is over there is told", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto(900_000);
    const told: number[] = [];
    phone.post.onShare = (share) => told.push(Math.round(share * 100));
    await phone.sync();
    expect(home.asked.filter((path) => path.startsWith("PATCH"))).toHaveLength(3);
    expect(home.photos.get(sha256)).toHaveLength(900_000);
    expect(told).toEqual([0, 0, 29, 87, 100, 0]);
  });

  it("goes in smaller pieces when a piece took too long, until the link manages them, and in larger ones again", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto(300_000);
    const { fetch } = home;
    let most = 40_000;
    const sizes: number[] = [];
    phone.post.wire.fetch = (url, options) => {
      const size = options.method === "PATCH" ? (options.body as Uint8Array).length : 0;
      if (size > most) throw new DOMException("too slow", "TimeoutError");
      if (size > 0) sizes.push(size);
      return fetch(url, options);
    };
    for (let tries = 0; tries < 3; tries++) await expect(phone.sync()).rejects.toMatchObject({ code: "unreachable" });
    await expect(phone.sync()).rejects.toMatchObject({ code: "unreachable" });
    expect(sizes).toEqual([32_768]);
    most = Infinity;
    await phone.sync();
    expect(sizes).toEqual([32_768, 32_768, 65_536, 131_072, 300_000 - 32_768 - 32_768 - 65_536 - 131_072]);
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
  });

  it("that is too large, or empty, is refused before anything is called saved", async () => {
    const phone = await Phone.open("one", new HomeComputer("garage"));
    await expect(shoot(phone, 2_000_001, 1)).rejects.toMatchObject({ code: "photo_too_large" });
    await expect(shoot(phone, 0, 1)).rejects.toMatchObject({ code: "photo_truncated" });
    expect(await phone.texts()).toEqual([]);
    expect(phone.live.garage.value.byId.size).toBe(0);
  });

  it("goes on after an interruption from where the home computer has it", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto(500_000);
    const fetch = home.fetch;
    let pieces = 0;
    phone.post.wire.fetch = async (url, options) => {
      if (options.method === "PATCH" && ++pieces === 2) throw new TypeError("out of range");
      return fetch(url, options);
    };
    await expect(phone.sync()).rejects.toMatchObject({ code: "unreachable" });
    expect(await stateOf(phone, sha256)).toBe("waiting");
    home.asked = [];
    await (await phone.kill()).sync();
    expect(home.asked.filter((path) => path.startsWith("PATCH"))).toHaveLength(1);
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
  });

  it("is not called sent when only the answer to its last piece got lost, and is not sent twice for it", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    home.faultFor = (path) => (path.startsWith("/uploads/") ? "lost" : null);
    await expect(phone.sync()).rejects.toMatchObject({ code: "unreachable" });
    expect(await stateOf(phone, sha256)).toBe("waiting");
    home.faultFor = () => null;
    home.asked = [];
    await phone.sync();
    expect(await stateOf(phone, sha256)).toBe("sent");
    expect(home.asked.filter((path) => path.startsWith("PATCH"))).toEqual([]);
  });

  it("is told where to go on when the offset is another, and begins again when the upload is forgotten", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto(500_000);
    const fetch = home.fetch;
    let pieces = 0;
    phone.post.wire.fetch = async (url, options) => {
      if (options.method !== "PATCH" || ++pieces !== 2) return fetch(url, options);
      home.uploads.clear(); // the home computer was restarted and cleaned up
      return fetch(url, options);
    };
    await phone.sync();
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
  });

  it("of which the last piece was cut on the way is not called sent until the home computer has all of it", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    const fetch = home.fetch;
    let cuts = 0;
    phone.post.wire.fetch = (url, options) => {
      if (options.method !== "PATCH" || cuts++ > 0) return fetch(url, options);
      return fetch(url, { ...options, body: (options.body as Uint8Array).slice(0, 400) });
    };
    await expect(phone.sync()).rejects.toMatchObject({ code: "answer_unreadable" });
    expect(await stateOf(phone, sha256)).toBe("waiting");
    await phone.sync();
    expect(await stateOf(phone, sha256)).toBe("sent");
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
  });

  it("damaged on the way is sent again; nothing of it is kept", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    const fetch = home.fetch;
    phone.post.wire.fetch = (url, options) =>
      fetch(url, options.method === "PATCH" ? { ...options, body: new Uint8Array(1000) } : options);
    await expect(phone.sync()).rejects.toMatchObject({ code: "photo_hash_mismatch" });
    expect(home.photos.size).toBe(0);
    phone.post.wire.fetch = fetch;
    await phone.sync();
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
  });

  it.each([
    ["read back with no bytes", new ArrayBuffer(0)],
    ["changed on the phone's disk", new Uint8Array(1000).fill(8).buffer],
  ])("%s is said to be damaged, and not sent for ever", async (_what, bytes) => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    await phone.store.write(["photo_bytes"], (db) =>
      db.photo_bytes.put({ sha256, size: "full", type: "image/jpeg", bytes }),
    );
    await phone.sync();
    expect(await stateOf(phone, sha256)).toBe("damaged");
    expect(home.asked.filter((path) => path === "POST /photos")).toEqual([]);
    expect(await countPhotos(phone.store)).toEqual({ waiting: 0, stuck: 1 });
    expect(phone.live.garage.value.of("weighing")).toHaveLength(1);
  });

  it("taken again after damage takes the damaged one's place", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    const bytes = new ArrayBuffer(0);
    await phone.store.write(["photo_bytes"], (db) =>
      db.photo_bytes.put({ sha256, size: "full", type: "image/jpeg", bytes }),
    );
    await phone.sync();
    await shoot(phone, 1000, 7);
    await phone.sync();
    expect(home.photos.has(sha256)).toBe(true);
  });

  it("that the home computer refuses by a rule is kept and does not block the next", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    const next = await shoot(phone, 500, 9);
    const fetch = home.fetch;
    phone.post.wire.fetch = async (url, options) =>
      url.endsWith(`/uploads/${sha256}`)
        ? new Response(JSON.stringify({ error: { code: "photo_not_an_image", data: {} } }), { status: 422 })
        : fetch(url, options);
    await phone.sync();
    expect(await stateOf(phone, sha256)).toBe("refused");
    expect(home.photos.has(next)).toBe(true);
    expect(await phone.store.read((db) => db.photo_bytes.count())).toBe(2);
  });

  it("is tried again after it failed, however often", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    home.faultFor = (path) => (path === "/photos" ? 503 : null);
    for (let times = 0; times < 3; times++) await expect(phone.sync()).rejects.toMatchObject({ code: "busy" });
    home.faultFor = () => null;
    await phone.sync();
    expect(home.photos.has(sha256)).toBe(true);
  });

  it("lost over there by a restore that touched no entry is noticed when the app is opened, and sent again", async () => {
    const { home, phone, sha256 } = await phoneWithPhoto();
    await phone.sync();
    home.photos.clear();
    const opened = await phone.kill();
    await opened.sync();
    expect(hashOf(home.photos.get(sha256)!)).toBe(sha256);
  });
});
