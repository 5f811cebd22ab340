/**
 * Random histories of several phones and one home computer, hostile network, deaths, clones, restores and revocations
 * included. All apps begin older than a field that some entries set. Whatever happened: once it is quiet, every record ever called saved is in the journal and every phone shows
 * the fold of the same journal. The seed stands in the test's name; TAREBOOK_SEED=n runs that one alone.
 */

import { IDBFactory } from "fake-indexeddb";
import { describe, expect, it } from "vitest";
import { type Change, newId } from "../../webapp/src/garage/write";
import { Board } from "../../webapp/src/journal/board";
import { forget } from "../journal/older";
import { randomFrom } from "../random";
import { type Fault, HomeComputer, hashOf } from "./home_computer";
import { Phone } from "./phone";

const STEPS = 70;
const SEEDS = process.env.TAREBOOK_SEED
  ? [Number(process.env.TAREBOOK_SEED)]
  : Array.from({ length: 20 }, (_, at) => at + 1);
/** Milliseconds until a phone gives up on a home computer that hangs, while it does so on purpose. */
const IMPATIENT = 20;
const FAULTS: Fault[] = ["lost", "dropped", "hang", "truncated", "empty", "page", 500, 503, 413];

class History {
  readonly home = new HomeComputer("garage");
  readonly saved = new Set<string>();
  readonly shots = new Set<string>();
  phones: Phone[] = [];
  /** Some clocks are ten years off: nothing may depend on them. */
  private readonly clocks = [0, 3.2e11, -3.2e11].map((skew) => () => new Date(Date.now() + skew));
  private backup = this.home.backup();
  private know = forget({ job: ["note"] });

  constructor(private readonly random: () => number) {}

  async begin(): Promise<void> {
    this.phones = await Promise.all(
      this.clocks.map((now, at) => Phone.open(`phone-${at}`, this.home, new IDBFactory(), now)),
    );
    this.home.faultFor = () => (this.random() < 0.15 ? this.pick(FAULTS) : null);
    this.phones.forEach(hurry);
  }

  async step(): Promise<void> {
    const at = Math.floor(this.random() * this.phones.length);
    const phone = this.phones[at]!;
    const roll = this.random();
    if (roll < 0.22) await this.saveNew(phone);
    else if (roll < 0.5) await this.edit(phone);
    else if (roll < 0.85) await phone.sync().catch(() => undefined);
    else if (roll < 0.92) await this.kill(at);
    else if (roll < 0.95) this.backup = this.home.backup();
    else if (roll < 0.98) this.home.restore(this.backup, this.random() < 0.5);
    else if (this.phones.length < 5) this.phones.push(await this.clone(phone));
    else this.home.revoked.add(phone.device);
  }

  private async kill(at: number): Promise<void> {
    this.phones[at] = hurry(await this.phones[at]!.kill());
  }

  /** Faults end, revoked devices pair again under a new name, and all apps are upgraded, opened afresh and sync. */
  async quiet(): Promise<void> {
    this.know();
    this.home.faultFor = () => null;
    this.phones = await Promise.all(this.phones.map((phone) => this.reopen(phone)));
    for (let round = 0; round < 4; round++) {
      for (const phone of this.phones) await phone.sync();
    }
  }

  private async reopen(phone: Phone): Promise<Phone> {
    if (!this.home.revoked.has(phone.device)) return phone.kill();
    phone.store.close();
    return Phone.open(`${phone.device}-again`, this.home, phone.disk, phone.post.now);
  }

  private pick<T>(items: readonly T[]): T {
    return items[Math.floor(this.random() * items.length)]!;
  }

  private async saveNew(phone: Phone): Promise<void> {
    const record = newId();
    const bytes = Uint8Array.from({ length: 20 }, () => Math.floor(this.random() * 256)).buffer;
    const photos = this.random() < 0.3 ? [{ of: record, bytes, type: "image/jpeg" as const, width: 4, height: 3 }] : [];
    const fact = { kind: "weighing", record, set: { method: "direct", shown: `${Math.floor(this.random() * 90)} kg` } };
    const job = { kind: "job", record, set: { name: `Job ${this.saved.size}`, hours: "1" } };
    await phone.writer.save([this.random() < 0.5 ? fact : job], photos);
    if (photos.length > 0) this.shots.add(hashOf(new Uint8Array(bytes)));
    await this.note(phone);
  }

  private async edit(phone: Phone): Promise<void> {
    const jobs = phone.live.garage.value.of("job");
    if (jobs.length === 0) return;
    const job = this.pick(jobs);
    const hours = String(Math.floor(this.random() * 9));
    const set = this.pick<Change["set"]>([
      { hours },
      { note: `n${this.saved.size}`, hours },
      { deleted: this.random() < 0.5 },
    ]);
    const save = () => phone.writer.save([{ kind: "job", record: job.id, set: job.conflicts.hours ? { hours } : set }]);
    if (set.note === undefined) await save();
    else await this.asNewer(save);
    await this.note(phone);
  }

  /** An entry of an app that knows the field; its own page shows it, until it is opened as old as the others. */
  private async asNewer(save: () => Promise<unknown>): Promise<void> {
    this.know();
    await save();
    this.know = forget({ job: ["note"] });
  }

  /** From here on these entries exist, and must exist for ever. */
  private async note(phone: Phone): Promise<void> {
    for (const text of await phone.texts()) this.saved.add(text);
  }

  /** The same device twice: a profile copied to another machine, with all its records and its token. */
  private async clone(phone: Phone): Promise<Phone> {
    const copy = await Phone.open(phone.device, this.home, new IDBFactory(), phone.post.now);
    for (const table of ["entries", "photos", "photo_bytes", "meta"] as const) {
      const rows = await phone.store.read((db) => db.table(table).toArray() as PromiseLike<object[]>);
      await copy.store.read((db) => db.table(table).bulkPut(rows));
    }
    return hurry(await copy.kill());
  }
}

function hurry(phone: Phone): Phone {
  phone.post.wire.patience = IMPATIENT;
  return phone;
}

function foldOf(home: HomeComputer): Board {
  const board = new Board();
  board.take(home.lines.map(({ name, number, text, aside }) => ({ key: name, text, number, aside, order: number })));
  return board;
}

describe("whatever happens to phones and home computer", () => {
  it.each(SEEDS)(
    "ends with one journal, nothing lost, and every phone its fold (seed %i)",
    async (seed) => {
      const history = new History(randomFrom(seed));
      await history.begin();
      for (let step = 0; step < STEPS; step++) await history.step();
      expect(foldOf(history.home).garage().aside).toEqual([]);
      await history.quiet();

      const { home, phones, saved, shots } = history;
      const texts = new Set(home.lines.map((line) => line.text));
      expect([...saved].filter((text) => !texts.has(text))).toEqual([]);
      const { byId } = foldOf(home).garage();
      for (const phone of phones) {
        expect(phone.live.waiting.value).toBe(0);
        expect(phone.seen()).toBe(phones[0]!.seen());
        expect(new Map([...phone.live.garage.value.byId].map(([id, rec]) => [id, rec.values]))).toEqual(
          new Map([...byId].map(([id, rec]) => [id, rec.values])),
        );
        expect((await phone.kill()).seen()).toBe(phones[0]!.seen());
      }
      expect([...shots].filter((sha256) => !home.photos.has(sha256))).toEqual([]);
      for (const [sha256, bytes] of home.photos) expect(hashOf(bytes)).toBe(sha256);
    },
    60_000,
  );
});
