/** The export of everything on a phone: one file that carries all of it, and no secret. */

import { describe, expect, it } from "vitest";

import { Drafts } from "../../webapp/src/store/drafts";
import { takeout } from "../../webapp/src/store/takeout";
import { HomeComputer, hashOf } from "../sync/home_computer";
import { Phone } from "../sync/phone";

type File = {
  format: string;
  version: number;
  entries: { text: string; number: number | null; aside: string | null; state: string }[];
  photos: { sha256: string; state: string }[];
  photo_bytes: { sha256: string; size: string; type: string; base64: string }[];
  drafts: { name: string; value: unknown }[];
};

async function fileOf(phone: Phone): Promise<{ text: string; file: File }> {
  const { store, device } = phone;
  const parts = await takeout({ store, device, garage: store.garage, name: "Garage" }, new Date(0));
  const text = await new Blob(parts).text();
  return { text, file: JSON.parse(text) as File };
}

describe("the export", () => {
  it("holds every entry's exact text, every photo's bytes, and drafts with what is in them", async () => {
    const phone = await Phone.open("one", new HomeComputer("garage"));
    await phone.writer.save([{ kind: "job", set: { name: "Seats out — “tight”" } }]);
    await phone.sync();
    const shots = [1, 2, 3].map((fill) => new Uint8Array(70_001).fill(fill).buffer);
    await phone.writer.save(
      [],
      shots.map((bytes) => ({ of: "p", bytes, type: "image/jpeg", width: 1, height: 1 })),
    );
    await new Drafts(phone.store).keep("weigh", { shown: "12", photos: [new Uint8Array([255]).buffer] });

    const { file } = await fileOf(phone);
    expect(file.entries.map((entry) => entry.text).sort()).toEqual((await phone.texts()).sort());
    expect(file.entries.map(({ number, state }) => [number, state])).toEqual([
      [1, "held"],
      ...[0, 0, 0].map(() => [null, "pending"]),
    ]);
    const bytes = file.photo_bytes.map((row) => Buffer.from(row.base64, "base64"));
    expect(bytes.map((photo) => photo.length)).toEqual([70_001, 70_001, 70_001]);
    expect(bytes.map((photo) => hashOf(photo))).toEqual(file.photo_bytes.map((row) => row.sha256));
    expect(file.photos.map((photo) => photo.state)).toEqual(["waiting", "waiting", "waiting"]);
    expect(file.drafts).toEqual([{ name: "weigh", value: { shown: "12", photos: [{ base64: "/w==" }] } }]);
  });

  it("is whole when there is nothing yet", async () => {
    const { file } = await fileOf(await Phone.open("one", new HomeComputer("garage")));
    expect(file).toMatchObject({
      format: "tarebook-takeout",
      version: 1,
      entries: [],
      photos: [],
      photo_bytes: [],
      drafts: [],
    });
  });

  it("is still offered, and whole, after the device was revoked", async () => {
    const home = new HomeComputer("garage");
    const phone = await Phone.open("one", home);
    await phone.writer.save([{ kind: "job", set: { name: "Seats out" } }]);
    home.revoked.add("one");
    await phone.sync().catch(() => undefined);
    expect((await fileOf(phone)).file.entries).toHaveLength(1);
  });

  it("does not hold the token that opens the garage", async () => {
    const phone = await Phone.open("one", new HomeComputer("garage"));
    await phone.writer.save([{ kind: "job", set: { name: "Seats out" } }]);
    await phone.sync();
    const { text } = await fileOf(phone);
    expect(text.includes(phone.store.garage)).toBe(true);
    expect(text.includes("token-one")).toBe(false);
  });
});
