/** What a save makes of changes: entries that say what their writer had seen, or a refusal before anything is kept. */

import { describe, expect, it } from "vitest";
import { newId } from "../../webapp/src/garage/write";
import { MOST_BYTES, readEntry } from "../../webapp/src/journal/entry";
import type { Entry } from "../../webapp/src/journal/types";
import { HomeComputer } from "../sync/home_computer";
import { Phone } from "../sync/phone";

async function open(): Promise<Phone> {
  return Phone.open("device-1", new HomeComputer("garage"), undefined, () => new Date(0));
}

async function entries(phone: Phone): Promise<Entry[]> {
  const all = (await phone.texts()).map((text) => readEntry(text)!);
  return all.sort((one, other) => one.n - other.n);
}

describe("an entry", () => {
  it("says who wrote it, what it sets, and where its writer stood", async () => {
    const phone = await open();
    const {
      records: [record],
    } = await phone.writer.save([{ kind: "job", set: { name: "Seats out" } }]);
    await phone.writer.save([{ kind: "job", record: record!, set: { hours: "2" } }]);
    const [first, second] = await entries(phone);
    expect(first).toMatchObject({
      device: "device-1",
      n: 1,
      kind: "job",
      record,
      set: { name: "Seats out" },
      base: [],
    });
    expect(first!.made_at).toBe("1970-01-01T00:00:00.000Z");
    expect(second).toMatchObject({ n: 2, writer: first!.writer, base: [first!.id] });
  });

  it("builds on the one before it in the same save", async () => {
    const phone = await open();
    const record = newId();
    const change = (hours: string) => ({ kind: "job", record, set: { name: "Seats out", hours } });
    expect((await phone.writer.save([change("1"), change("2")])).records).toEqual([record, record]);
    const [first, second] = await entries(phone);
    expect(second!.base).toEqual([first!.id]);
    expect(phone.live.garage.value.byId.get(record)).toMatchObject({ values: { hours: "2" }, conflicts: {} });
  });

  it("has always seen what its own page wrote, even when the form showed older heads or did not wait", async () => {
    const phone = await open();
    const record = newId();
    await phone.writer.save([{ kind: "job", record, set: { name: "Seats out" } }]);
    const base = phone.live.garage.value.byId.get(record)!.heads;
    await Promise.all(
      ["1", "2", "3"].map((hours) => phone.writer.save([{ kind: "job", record, set: { hours }, base }])),
    );
    expect(phone.live.garage.value.byId.get(record)).toMatchObject({ values: { hours: "3" }, conflicts: {} });
  });

  it("keeps to the heads its form showed when another phone has written since", async () => {
    const phone = await open();
    const other = await Phone.open("device-2", phone.home);
    const record = newId();
    await phone.writer.save([{ kind: "job", record, set: { name: "Seats out" } }]);
    await phone.sync();
    await other.sync();
    const base = phone.live.garage.value.byId.get(record)!.heads;
    await other.writer.save([{ kind: "job", record, set: { hours: "1" } }]);
    await other.sync();
    await phone.sync();
    await phone.writer.save([{ kind: "job", record, set: { hours: "2" }, base }]);
    expect(Object.keys(phone.live.garage.value.byId.get(record)!.conflicts)).toEqual(["hours"]);
  });

  it("names the photo it speaks of", async () => {
    const phone = await open();
    const bytes = new Uint8Array([1]).buffer;
    await phone.writer.save([], [{ of: newId(), bytes, type: "image/jpeg", width: 1, height: 1 }]);
    const [entry] = await entries(phone);
    expect(entry!.photos).toEqual([entry!.set.sha256]);
  });
});

describe("a save that cannot be", () => {
  it.each([
    ["an unknown kind", { kind: "gearbox", set: {} }, "not_savable"],
    ["an unknown field", { kind: "job", set: { name: "x", colour: "red" } }, "not_savable"],
    ["a field of another type", { kind: "job", set: { name: "x", hazards: ["thunder"] } }, "not_savable"],
    ["a required field left out", { kind: "weighing", set: { method: "direct" } }, "not_savable"],
    ["a text too long", { kind: "job", set: { name: "x".repeat(121) } }, "not_savable"],
    ["a character no database takes", { kind: "job", set: { name: "a\0b" } }, "not_savable"],
    [
      "more bytes than an entry may have",
      {
        kind: "weigh_in",
        set: { layout: "total", trim: "road", jobs: Array.from({ length: 1000 }, () => "j".repeat(80)) },
      },
      "entry_too_large",
    ],
  ])("is refused: %s", async (_what, change, code) => {
    const phone = await open();
    await expect(phone.writer.save([{ kind: "job", set: { name: "good" } }, change])).rejects.toMatchObject({ code });
    expect(await phone.texts()).toEqual([]);
    expect(phone.live.waiting.value).toBe(0);
  });

  it("is refused: a weighing changed after the fact; withdrawing it is not", async () => {
    const phone = await open();
    const {
      records: [record],
    } = await phone.writer.save([{ kind: "weighing", set: { method: "direct", shown: "12 kg" } }]);
    const change = (set: { shown: string } | { deleted: boolean }) =>
      phone.writer.save([{ kind: "weighing", record: record!, set }]);
    await expect(change({ shown: "11 kg" })).rejects.toMatchObject({ code: "fact" });
    await change({ deleted: true });
    expect(phone.live.garage.value.of("weighing")).toEqual([]);
  });

  it("does not keep the next one from being saved", async () => {
    const phone = await open();
    await phone.writer.save([{ kind: "gearbox", set: {} }]).catch(() => undefined);
    await phone.writer.save([{ kind: "job", set: { name: "good" } }]);
    expect(phone.live.garage.value.of("job")).toHaveLength(1);
  });

  it("takes a note of exactly the most bytes an entry may have, counted in UTF-8", async () => {
    const phone = await open();
    const jobs = (count: number) => Array.from({ length: count }, () => "j".repeat(80));
    await phone.writer.save([{ kind: "weigh_in", set: { layout: "total", trim: "road", jobs: jobs(700) } }]);
    const [text] = await phone.texts();
    const room = MOST_BYTES - Buffer.byteLength(text!);
    const note = "é".repeat(Math.floor(room / 2) - 8).slice(0, 4000);
    await phone.writer.save([{ kind: "weigh_in", set: { layout: "total", trim: "road", jobs: jobs(700), note } }]);
    expect(Math.max(...(await phone.texts()).map((one) => Buffer.byteLength(one)))).toBeLessThanOrEqual(MOST_BYTES);
  });
});
