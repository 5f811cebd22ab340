/** What a phone keeps of the home computer's word, and what it does with it: nobody's accepted work turns a stranger's. */

import { describe, expect, it } from "vitest";

import { describe as sentenceOf } from "../../webapp/src/errors";
import "../../webapp/src/laterErrors";
import type { EntryRow } from "../../webapp/src/store/database";
import { takeout } from "../../webapp/src/store/takeout";
import { HomeComputer } from "./home_computer";
import { Phone } from "./phone";
import { job, names, pair, saveMany } from "./two_phones";

/** One's entries are on both phones; then the home computer is an older copy, and one is off the list for good. */
async function restoredWithoutOne(announced = true) {
  const { home, one, other } = await pair();
  const kept = home.backup();
  await saveMany(one, 12);
  await one.sync();
  await other.sync();
  home.restore(kept, announced);
  home.revoked.add("one");
  return { home, one, other };
}

describe("receipts", () => {
  it.each([true, false])(
    "keep what was accepted, and its author, over a restore (announced: %s)",
    async (announced) => {
      const { home, other } = await restoredWithoutOne(announced);
      await other.sync();
      expect(home.lines.map(({ aside, sentBy }) => [aside, sentBy])).toEqual(Array(12).fill([null, "one"]));
      expect(other.live.garage.value.aside).toEqual([]);
      expect(other.live.garage.value.unproven()).toEqual([]);
      expect(names(other)).toHaveLength(12);
    },
  );

  it("go to the phone that saved a record as soon as it is taken, before it has come back", async () => {
    const { home, one } = await pair();
    await one.sync();
    await one.writer.save([job("Seats out")]);
    home.faultFor = (path) => (path.startsWith("/sync/pull") ? "dropped" : null);
    await expect(one.sync()).rejects.toMatchObject({ code: "unreachable" });
    const [row] = await one.store.read((db) => db.entries.toArray());
    expect(row).toMatchObject({ state: "sent", receipt: expect.stringMatching(/^[\w-]{22}$/) });
  });

  it("are kept when a home computer that never gave them answers, and shown again to one that did", async () => {
    const { home, other } = await restoredWithoutOne();
    const { key } = home;
    home.key = "of a garage that never gave them";
    const texts = home.lines.length;
    const rows = await other.store.read((db) => db.entries.toArray());
    for (const { text } of rows) {
      home.lines.push({ number: home.head + 1, name: text, text, aside: "stranger", mark: text, sentBy: "third" });
      home.lines.at(-1)!.name = JSON.parse(text).id;
    }
    await other.sync();
    expect([texts, other.live.garage.value.aside.length]).toEqual([0, 12]);
    home.key = key;
    home.restore({ epoch: "epoch-9", lines: [], photos: new Map() }, true);
    await other.sync();
    expect(home.lines.map(({ aside, sentBy }) => [aside, sentBy])).toEqual(Array(12).fill([null, "one"]));
  });

  it("are shown at once for what another has sent without them, so that it counts", async () => {
    const { home, other } = await restoredWithoutOne();
    const third = await Phone.open("third", home);
    const rows = await other.store.read((db) => db.entries.toArray());
    await third.store.read((db) => db.entries.bulkPut(rows.map((row, at) => bare(row, at))));
    await third.sync();
    expect(third.live.garage.value.aside).toHaveLength(12);
    await other.sync();
    await third.sync();
    for (const phone of [other, third]) {
      expect([phone.live.garage.value.aside, names(phone).length]).toEqual([[], 12]);
    }
    home.asked = [];
    await other.sync();
    expect(home.asked).toEqual(["GET /sync/pull"]);
    home.restore({ epoch: "epoch-9", lines: [], photos: new Map() }, true);
    await other.sync();
    expect(home.lines.filter(({ sentBy }) => sentBy === "one").map(({ aside }) => aside)).toEqual(Array(12).fill(null));
  });

  it("are in the file of everything", async () => {
    const { home, one, other } = await pair();
    await saveMany(one, 2);
    await one.sync();
    home.lines.push({ ...home.lines[0]!, number: 3, name: "f", text: forged("f", "home"), sentBy: "one", mark: "f" });
    await other.sync();
    const from = { store: other.store, device: "other", garage: "garage", name: "Garage" };
    const { entries } = JSON.parse(await new Blob(await takeout(from, new Date(0))).text()) as {
      entries: { receipt: string; sent_by?: string }[];
    };
    expect(entries.map(({ receipt, sent_by }) => [receipt.length, sent_by])).toEqual([
      [22, undefined],
      [22, undefined],
      [22, "one"],
    ]);
  });
});

describe("an entry that names another device than is proven to have sent it", () => {
  it("says so, with both, as long as it counts", async () => {
    const home = new HomeComputer("garage");
    const [one, other] = [await Phone.open("one", home), await Phone.open("other", home)];
    await one.store.read((db) => db.entries.put({ ...PENDING, key: "f", text: forged("f", "other") }));
    await one.sync();
    await other.sync();
    for (const phone of [one, other]) {
      const found = phone.live.garage.value.unproven();
      expect(found.map(({ entry, sent_by }) => [entry.record, entry.device, sent_by])).toEqual([
        ["r-f", "other", "one"],
      ]);
    }
  });

  it("is told of in one sentence of the table", () => {
    expect(sentenceOf("unproven", { sender: "this phone", author: "the home computer" }).sentence).toBe(
      "Sent by this phone, and not proven to be from the home computer.",
    );
  });
});

const PENDING = { number: null, aside: null, order: 1, seq: 1, state: "pending" } as const;

/** As on a phone that never had its receipt, and where it waits. */
function bare({ key, text }: EntryRow, at: number): EntryRow {
  return { ...PENDING, key, text, order: at + 1, seq: at + 1 };
}

function forged(id: string, device: string): string {
  const set = { name: "Seats out" };
  return JSON.stringify({ id, device, writer: "w", n: 1, kind: "job", record: `r-${id}`, set, base: [] });
}
