/** A phone inside the test's own process: the real store on an IndexedDB of its own, the real journal, the real sync. */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";

import { LiveGarage } from "../../webapp/src/garage/garage";
import { Writer } from "../../webapp/src/garage/write";
import { Store } from "../../webapp/src/store/store";
import { newPost, type Post } from "../../webapp/src/sync/post";
import { run } from "../../webapp/src/sync/run";
import type { HomeComputer } from "./home_computer";

export class Phone {
  private constructor(
    readonly device: string,
    readonly home: HomeComputer,
    readonly disk: IDBFactory,
    readonly store: Store,
    readonly live: LiveGarage,
    readonly writer: Writer,
    readonly post: Post,
  ) {}

  /** Opens the app on a disk, new or used before. */
  static async open(
    device: string,
    home: HomeComputer,
    disk = new IDBFactory(),
    now = () => new Date(),
  ): Promise<Phone> {
    home.devices.add(device);
    Object.assign(Dexie.dependencies, { indexedDB: disk, IDBKeyRange });
    const store = new Store(home.garage, { written: () => undefined, blocked: () => undefined });
    await store.open();
    const live = new LiveGarage(store);
    await live.catchUp();
    const wire = { fetch: home.fetch, token: `token-${device}`, patience: 10_000 };
    const post = newPost({
      wire,
      store,
      live,
      now,
      onPhase: () => undefined,
      onHeard: () => undefined,
      onProven: () => undefined,
      onNames: () => undefined,
      onShare: () => undefined,
    });
    return new Phone(device, home, disk, store, live, new Writer(live, device, now), post);
  }

  /** The page dies, without a word, and is opened again on the same disk. */
  kill(): Promise<Phone> {
    this.store.close();
    return Phone.open(this.device, this.home, this.disk, this.post.now);
  }

  sync(): Promise<void> {
    return run(this.post, () => Promise.resolve());
  }

  /** The garage as text, alike on phones that know the same. */
  seen(): string {
    const { byId, aside } = this.live.garage.value;
    const records = [...byId.values()].map((rec) => ({ ...rec, pending: undefined, heads: [...rec.heads].sort() }));
    records.sort((one, other) => (one.id < other.id ? -1 : 1));
    return JSON.stringify({ records: records.map(ordered), aside: aside.map(({ id, reason }) => [id, reason]).sort() });
  }

  /** Every entry text on the disk. */
  async texts(): Promise<string[]> {
    return (await this.store.read((db) => db.entries.toArray())).map((row) => row.text);
  }
}

function ordered(value: unknown): unknown {
  if (Array.isArray(value) || !(value instanceof Object)) return value;
  const entries = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(entries.map(([name, inside]) => [name, ordered(inside)]));
}
