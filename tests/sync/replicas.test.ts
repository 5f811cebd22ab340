/** Pages pulled, home computers restored, phones that meet: what every replica must show. */

import { describe, expect, it } from "vitest";

import { newId } from "../../webapp/src/garage/write";
import { returnLost, rewind } from "../../webapp/src/store/entries";
import { readState } from "../../webapp/src/store/state";
import { HomeComputer } from "./home_computer";
import { Phone } from "./phone";
import { job, names, pair, saveMany } from "./two_phones";

describe("a pulled page", () => {
  it("and its cursor are written together: what breaks off leaves both as they were", async () => {
    const { one, other } = await pair();
    await saveMany(other, 5);
    await other.sync();
    const write = one.store.write.bind(one.store);
    one.store.write = (tables, work) =>
      write(tables, async (db, state) => {
        await work(db, state);
        throw new Error("the phone's battery is empty");
      });
    await expect(one.sync()).rejects.toMatchObject({ code: "storage_failed" });
    one.store.write = write;
    expect((await readState(one.store)).cursor.number).toBe(0);
    expect(await one.texts()).toEqual([]);
    await one.sync();
    expect(names(one)).toHaveLength(5);
  });

  it("shows what this app cannot fold, instead of skipping it", async () => {
    const { home, one } = await pair();
    const add = (name: string, text: string) =>
      home.lines.push({ number: home.head + 1, name, text, aside: null, mark: name, sentBy: "other" });
    add("raw-92628a747890d02d1459c6eb45fd13cf", "not json at all");
    const entry = { id: "e1", device: "other", writer: "w", n: 1, record: "r1", base: [], photos: [], made_at: "" };
    add("e1", JSON.stringify({ ...entry, kind: "gearbox", set: {} }));
    add("e2", JSON.stringify({ ...entry, id: "e2", kind: "job", set: { name: "Later" }, schema: 99 }));
    add("e3", JSON.stringify({ ...entry, id: "e3", kind: "job", set: { hours: "1" }, base: ["e0"] }));
    await one.sync();
    expect(one.live.garage.value.aside.map((entry) => entry.reason)).toEqual([
      "unreadable",
      "unknown_kind",
      "newer_schema",
      "waiting",
    ]);
    add("e0", JSON.stringify({ ...entry, id: "e0", kind: "job", set: { name: "Parent" } }));
    await one.sync();
    expect(one.live.garage.value.byId.get("r1")?.values).toEqual({ name: "Parent", hours: "1" });
  });

  it("belongs nowhere when another tab has moved the cursor meanwhile", async () => {
    const { home, one, other } = await pair();
    await saveMany(other, 3);
    await other.sync();
    const tab = await Phone.open("one", home, one.disk);
    const fetch = home.fetch;
    let turns = 0;
    one.post.wire.fetch = async (url, options) => {
      const answer = await fetch(url, options);
      if (turns++ === 0) await tab.sync();
      return answer;
    };
    await one.sync();
    await one.live.catchUp();
    expect(names(one)).toHaveLength(3);
    expect(new Set(await one.texts()).size).toBe((await one.texts()).length);
  });
});

describe("a home computer restored from an older copy", () => {
  it.each([
    ["announced", true],
    ["without a word, and new writes have passed the old head", false],
  ])("gets everything again from two phones (%s)", async (_name, announced) => {
    const { home, one, other } = await pair();
    await saveMany(one, 5);
    await one.sync();
    const backup = home.backup();
    await saveMany(one, 5, "after the backup");
    await one.sync();
    await other.sync();
    await saveMany(other, 2, "from the other phone");
    await other.sync();
    home.restore(backup, announced);
    const third = await Phone.open("third", home);
    await saveMany(third, 20, "past the old head");
    await third.sync();
    for (const phone of [one, other, third, one, other]) await phone.sync();
    expect(home.head).toBe(32);
    expect(new Set([one.seen(), other.seen(), third.seen()]).size).toBe(1);
  });

  it("is no reason to show less meanwhile: an empty one does not empty the phone", async () => {
    const { home, one } = await pair();
    await saveMany(one, 8);
    await one.sync();
    const before = one.seen();
    home.restore(new HomeComputer("garage").backup(), true);
    await rewind(one.store);
    await one.live.catchUp();
    expect(one.seen()).toBe(before);
    expect(one.live.waiting.value).toBe(8);
    await one.sync();
    expect(home.head).toBe(8);
    expect(one.seen()).toBe(before);
  });

  it("is told what it took and lost again, though the cursor still holds", async () => {
    const { home, one } = await pair();
    await one.sync();
    const backup = home.backup();
    await one.writer.save([job("Seats out")]);
    home.faultFor = (path) => (path.startsWith("/sync/pull") ? "dropped" : null);
    await one.sync().catch(() => undefined);
    home.restore(backup, false);
    home.faultFor = () => null;
    await one.sync();
    await one.sync();
    expect(home.head).toBe(1);
    await returnLost(one.store);
    expect(one.live.waiting.value).toBe(0);
  });
});

describe("two phones", () => {
  it("that edit one field without signal keep both values, and settle alike", async () => {
    const { one, other } = await pair();
    const record = newId();
    await one.writer.save([job("Seats out", record)]);
    await one.sync();
    await other.sync();
    await one.writer.save([{ kind: "job", record, set: { hours: "1" } }]);
    await other.writer.save([{ kind: "job", record, set: { hours: "2" } }]);
    for (const phone of [one, other, one]) await phone.sync();
    const values = one.live.garage.value.byId.get(record)!.conflicts.hours!.map((head) => head.value);
    expect(values).toEqual(["1", "2"]);
    expect(other.seen()).toBe(one.seen());
    await other.writer.save([{ kind: "job", record, set: { hours: "2" } }]);
    for (const phone of [other, one]) await phone.sync();
    expect(one.live.garage.value.byId.get(record)).toMatchObject({ values: { hours: "2" }, conflicts: {} });
  });

  it("that add parts to one job do not conflict", async () => {
    const { one, other } = await pair();
    const record = newId();
    const {
      records: [part],
    } = await one.writer.save([{ kind: "part", set: { name: "Seat" } }, job("Seats out", record)]);
    await one.sync();
    await other.sync();
    const add = { kind: "job_part", set: { job: record, part: part!, way: "off" } };
    await one.writer.save([add]);
    await other.writer.save([add]);
    for (const phone of [one, other, one]) await phone.sync();
    expect(one.live.garage.value.of("job_part")).toHaveLength(2);
    expect([...one.live.garage.value.byId.values()].filter((rec) => Object.keys(rec.conflicts).length > 0)).toEqual([]);
  });

  it("keep what was written without signal on a record another deleted, and leave it to a person", async () => {
    const { one, other } = await pair();
    const record = newId();
    await one.writer.save([job("Seats out", record)]);
    await one.sync();
    await other.sync();
    await other.writer.save([{ kind: "job", record, set: { note: "written without signal" } }]);
    await one.writer.save([{ kind: "job", record, set: { deleted: true } }]);
    for (const phone of [one, other, one]) await phone.sync();
    expect(one.live.garage.value.of("job")[0]).toMatchObject({ values: { note: "written without signal" } });
    expect(Object.keys(one.live.garage.value.of("job")[0]!.conflicts)).toEqual(["deleted"]);
    expect(other.seen()).toBe(one.seen());
  });

  it("that are copies of one keep what each wrote", async () => {
    const { home, one } = await pair();
    await one.sync();
    const clone = await Phone.open("one", home);
    await one.writer.save([job("Written here")]);
    await clone.writer.save([job("Written there")]);
    for (const phone of [one, clone, one]) await phone.sync();
    expect(names(one).sort()).toEqual(["Written here", "Written there"]);
    expect(clone.seen()).toBe(one.seen());
  });
});
