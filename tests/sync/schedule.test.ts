/** When sync runs, by a clock of the test's own. */

import { describe, expect, it } from "vitest";
import { TabLock } from "../../webapp/src/sync/lock";
import { type Outcome, Schedule } from "../../webapp/src/sync/schedule";
import { PATIENCE } from "../../webapp/src/wire/request";

class Hand {
  outcomes: Outcome[] = [];
  runs = 0;
  watched = true;
  time = 0;
  /** How long each try takes. */
  takes = 0;
  timers: { run: () => void; milliseconds: number }[] = [];
  readonly schedule = new Schedule(
    async () => {
      this.runs += 1;
      this.time += this.takes;
      return this.outcomes.shift() ?? "done";
    },
    () => this.watched,
    {
      now: () => this.time,
      setTimer: (run, milliseconds) => this.timers[this.timers.push({ run, milliseconds }) - 1],
      clearTimer: (timer) => (this.timers = this.timers.filter((other) => other !== timer)),
      random: () => 0.5,
    },
  );

  async ring(): Promise<number> {
    const { run, milliseconds } = this.timers.shift()!;
    this.time += milliseconds;
    run();
    await settled();
    return milliseconds;
  }
}

async function settled(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 0));
}

describe("the schedule", () => {
  it("is in step within 15 seconds of coming back into reach while someone looks, though every try hung", async () => {
    const hand = new Hand();
    hand.takes = PATIENCE;
    hand.outcomes = Array.from({ length: 9 }, () => "failed" as const);
    hand.schedule.now();
    await settled();
    // At worst the phone comes back right after a try began that will hang to its end: that, the rest, and the next.
    for (let at = 0; at < 9; at++) expect(PATIENCE + (await hand.ring())).toBeLessThan(15_000);
  });

  it("tries later and later after failures while someone looks, but at least every 12 seconds", async () => {
    const hand = new Hand();
    hand.outcomes = Array.from({ length: 7 }, () => "failed" as const);
    hand.schedule.now();
    await settled();
    const delays = [];
    for (let at = 0; at < 7; at++) delays.push(await hand.ring());
    expect(delays).toEqual([750, 1500, 3000, 6000, 9000, 9000, 9000]);
    expect(await hand.ring()).toBe(10000);
  });

  it("tries later and later after failures while nobody looks, but at least every minute", async () => {
    const hand = new Hand();
    hand.watched = false;
    hand.outcomes = Array.from({ length: 9 }, () => "failed" as const);
    hand.schedule.now();
    await settled();
    const delays = [];
    for (let at = 0; at < 9; at++) delays.push(await hand.ring());
    expect(delays).toEqual([750, 1500, 3000, 6000, 12000, 24000, 45000, 45000, 45000]);
    expect(hand.timers).toEqual([]);
  });

  it("asks for news while someone looks, and rests while nobody does", async () => {
    const hand = new Hand();
    hand.schedule.now();
    await settled();
    expect(hand.timers.map((timer) => timer.milliseconds)).toEqual([10000]);
    hand.watched = false;
    await hand.ring();
    expect(hand.timers).toEqual([]);
  });

  it("keeps trying what failed even while nobody looks", async () => {
    const hand = new Hand();
    hand.watched = false;
    hand.outcomes = ["failed"];
    hand.schedule.now();
    await settled();
    expect(hand.timers).toHaveLength(1);
  });

  it("runs once more, at once, when asked during a run", async () => {
    const hand = new Hand();
    hand.schedule.now();
    hand.schedule.now();
    hand.schedule.now();
    await settled();
    expect(hand.runs).toBe(2);
  });

  it("tries soon, but does not hammer, when asked during a run that failed", async () => {
    const hand = new Hand();
    hand.outcomes = ["failed", "failed", "failed", "failed"];
    hand.schedule.now();
    await settled();
    for (let times = 0; times < 2; times++) await hand.ring();
    hand.timers.shift()!.run();
    hand.schedule.now();
    await settled();
    expect(hand.runs).toBe(4);
    expect(hand.timers.map((timer) => timer.milliseconds)).toEqual([750]);
  });

  it("does nothing more once stopped", async () => {
    const hand = new Hand();
    hand.schedule.now();
    await settled();
    hand.schedule.stop();
    hand.schedule.now();
    await settled();
    expect(hand.runs).toBe(1);
    expect(hand.timers).toEqual([]);
  });
});

describe("the tab lock", () => {
  it("lets one tab work, and another work anyway when the first sits on it too long", async () => {
    const never = { request: async (_name: string, _options: object, work: (lock: null) => unknown) => work(null) };
    const lock = new TabLock("name", never as unknown as LockManager);
    const outcomes = [];
    for (let times = 0; times < 10; times++) outcomes.push(await lock.run(async () => "worked"));
    expect(outcomes).toEqual([...Array.from({ length: 9 }, () => "busy"), "worked"]);
  });

  it("is no obstacle where there are no locks", async () => {
    expect(await new TabLock("name", undefined).run(async () => "worked")).toBe("worked");
  });
});
