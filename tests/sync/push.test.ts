/** Push against a home computer that fails in every way a network and a machine can. */

import { describe, expect, it } from "vitest";

import { readState } from "../../webapp/src/store/state";
import { HomeComputer } from "./home_computer";
import { Phone } from "./phone";
import { job, names, pair, saveMany } from "./two_phones";

describe("a saved record", () => {
  it("goes to the home computer once and comes to the other phone", async () => {
    const { home, one, other } = await pair();
    await one.writer.save([job("Seats out")]);
    expect(one.live.waiting.value).toBe(1);
    await one.sync();
    await other.sync();
    expect(one.live.waiting.value).toBe(0);
    expect(home.head).toBe(1);
    expect(names(other)).toEqual(["Seats out"]);
    expect(other.seen()).toBe(one.seen());
  });

  it("is in the journal once when the answer to its push got lost", async () => {
    const { home, one } = await pair();
    await one.sync();
    await one.writer.save([job("Seats out")]);
    home.faults = ["lost"];
    await expect(one.sync()).rejects.toMatchObject({ code: "unreachable" });
    expect(one.live.waiting.value).toBe(1);
    await one.sync();
    expect(home.head).toBe(1);
    expect(one.live.waiting.value).toBe(0);
  });

  it("still waits while it has been sent but has not come back", async () => {
    const { home, one } = await pair();
    await one.sync();
    await one.writer.save([job("Seats out")]);
    const seen = one.live.garage.value;
    home.faultFor = (path) => (path.startsWith("/sync/pull") ? "dropped" : null);
    await expect(one.sync()).rejects.toMatchObject({ code: "unreachable" });
    expect(one.live.garage.value).toBe(seen); // nothing for a screen to draw anew
    expect(home.head).toBe(1);
    expect(one.live.waiting.value).toBe(1);
  });

  it("is sent while another is being saved, and that one right after", async () => {
    const { home, one } = await pair();
    await saveMany(one, 20);
    const running = one.sync();
    await one.writer.save([job("Saved meanwhile")]);
    await running;
    await one.sync();
    expect(home.head).toBe(21);
    expect(one.live.waiting.value).toBe(0);
  });

  it("stays here when the device was revoked, and when the journal is another garage's", async () => {
    const { home, one } = await pair();
    await one.writer.save([job("Seats out")]);
    home.revoked.add("one");
    await expect(one.sync()).rejects.toMatchObject({ code: "revoked" });
    expect(names(await one.kill())).toEqual(["Seats out"]);

    const elsewhere = new HomeComputer("another garage");
    elsewhere.devices.add("other");
    const other = await Phone.open("other", home);
    await other.sync();
    await other.writer.save([job("Glass")]);
    other.post.wire.fetch = elsewhere.fetch;
    elsewhere.epoch = home.epoch;
    await expect(other.sync()).rejects.toMatchObject({ code: "other_garage" });
    expect(elsewhere.head).toBe(0);
    expect(other.live.waiting.value).toBe(1);
  });
});

describe("an answer that cannot be trusted", () => {
  it.each(["truncated", "empty", "page"] as const)(
    "is no answer when it is %s: nothing moves until a whole one comes",
    async (fault) => {
      const { home, one, other } = await pair();
      await saveMany(other, 3);
      await other.sync();
      home.faults = [fault];
      await expect(one.sync()).rejects.toMatchObject({ code: "answer_unreadable" });
      expect((await readState(one.store)).cursor.number).toBe(0);
      await one.sync();
      expect(names(one)).toHaveLength(3);
    },
  );

  it("is waited for no longer than the phone's patience", async () => {
    const { home, one } = await pair();
    one.post.wire.patience = 30;
    home.faults = ["hang"];
    await expect(one.sync()).rejects.toMatchObject({ code: "unreachable" });
  });

  it("is refused when a page repeats numbers, or promises more without end", async () => {
    const { one } = await pair();
    const answers = [
      {
        epoch: "e",
        mark: "",
        durable: null,
        more: false,
        entries: [
          { number: 1, text: "x", aside: null },
          { number: 1, text: "y", aside: null },
        ],
      },
      { epoch: "e", mark: "", durable: null, more: true, entries: [] },
    ];
    for (const body of answers) {
      one.post.wire.fetch = async () => new Response(JSON.stringify(body));
      await expect(one.sync()).rejects.toMatchObject({ code: "answer_unreadable" });
    }
    expect(await one.texts()).toEqual([]);
  });
});

describe("a batch", () => {
  it("has at most 500 entries and 256 KiB", async () => {
    const { home, one } = await pair();
    await saveMany(one, 1200);
    await saveMany(one, 300, "x".repeat(2000));
    await one.sync();
    expect(home.head).toBe(1500);
    expect(home.largestBatch).toBe(500);
  });

  it("is halved when it is too large", async () => {
    const { home, one } = await pair();
    await one.sync();
    await saveMany(one, 64);
    home.faultFor = (_path, body) => (((body as { entries?: string[] })?.entries?.length ?? 0) > 10 ? 413 : null);
    await one.sync();
    expect(home.head).toBe(64);
    expect(home.largestBatch).toBeLessThanOrEqual(10);
  });

  it("goes round an entry that makes the server fail, which stands back and is not lost", async () => {
    const { home, one } = await pair();
    await one.sync();
    await saveMany(one, 30);
    await one.writer.save([job("poison")]);
    await saveMany(one, 30);
    home.faultFor = (_path, body) => (JSON.stringify(body ?? "").includes("poison") ? 500 : null);
    await one.sync();
    expect(home.head).toBe(60);
    expect(one.live.waiting.value).toBe(1);

    home.faultFor = () => null;
    await one.sync();
    expect(home.head).toBe(60); // it is still standing back
    const later = await one.kill();
    await later.sync();
    expect(home.head).toBe(61);
  });

  it("is given up soon when it is the server that fails, not some entry", async () => {
    const { home, one } = await pair();
    await one.sync();
    await saveMany(one, 40);
    home.asked = [];
    home.faultFor = () => 500;
    await expect(one.sync()).rejects.toMatchObject({ code: "broken" });
    expect(home.asked.length).toBeLessThan(12);
    home.faultFor = () => null;
    await (await one.kill()).sync();
    expect(home.head).toBe(40);
  });
});
