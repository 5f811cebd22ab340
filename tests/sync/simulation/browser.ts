/**
 * A browser reduced to what the app asks of one: a disk, a clock, chance, timers and a network, all of them owned by the
 * scheduler. Each page is the app's own code started afresh, with these in the place of the globals of the same names.
 */

import { Dexie } from "dexie";
import { IDBFactory, IDBKeyRange } from "fake-indexeddb";
import type * as app from "./page";

export type App = typeof app;
export type Make = (...globals: unknown[]) => App;
export type Sent = {
  flight: number;
  phone: number;
  method: string;
  path: string;
  headers: object;
  body: string | null;
};
type Flight = { page: Page; resolve: (answer: unknown) => void; reject: (reason: unknown) => void };
type Timer = { at: number; order: number; run: () => void };

/** Tasks wait here for their turn, each followed by its microtasks, instead of on Node's own queue. */
const tasks: (() => void)[] = [];
globalThis.setImmediate = ((task: () => void) => void tasks.push(task)) as unknown as typeof setImmediate;
/** The store's library puts what is not to run inside a transaction behind no time at all. */
globalThis.setTimeout = ((task: () => void) => void tasks.push(task)) as unknown as typeof setTimeout;
/** The store's library would have one for all phones; pages have their own (`Channel`). */
Reflect.deleteProperty(globalThis, "BroadcastChannel");
/** A later Node has locks, which would hold between all phones of a garage; the app does without as well. */
Reflect.deleteProperty(globalThis, "navigator");

/** Runs `most` tasks, or until nothing is left to do without the outside. */
export async function settle(most = Infinity): Promise<void> {
  await microtasks();
  for (let run = 0; run < most && tasks.length > 0; run += 1) {
    tasks.shift()!();
    await microtasks();
  }
}

/** Node gives its next tick once no microtask is left (Node's "Understanding process.nextTick"). */
function microtasks(): Promise<void> {
  return new Promise((done) => process.nextTick(done));
}

/** What all phones of one world share: the true time, chance, and the requests on their way. */
export class World {
  now = 0;
  readonly sent: Sent[] = [];
  readonly flights = new Map<number, Flight>();
  readonly channels = new Set<Channel>();
  private flown = 0;
  private order = 0;

  constructor(
    readonly chance: () => number,
    readonly make: Make,
  ) {}

  fly(flight: Flight): number {
    this.flights.set(++this.flown, flight);
    return this.flown;
  }

  next(): number {
    return ++this.order;
  }
}

export class Page {
  dead = false;
  readonly app: App;
  readonly timers = new Map<number, Timer>();
  private readonly dbs: { close: () => void }[] = [];
  private readonly connections = new Set<unknown>();

  constructor(
    readonly world: World,
    readonly phone: number,
    readonly disk: IDBFactory,
    readonly offset: number,
  ) {
    this.app = world.make(...Object.values(this.globals()));
  }

  /** The page is gone, and with it everything it had not brought to its disk. */
  kill(): void {
    this.dead = true;
    this.timers.clear();
    for (const [name, flight] of this.world.flights) if (flight.page === this) this.world.flights.delete(name);
    abortAll(this.disk, null, this.connections);
    for (const db of this.dbs) db.close();
    for (const channel of this.world.channels) if (channel.page === this) channel.close();
  }

  /** Every timer that is due, in order. */
  due(): (() => void)[] {
    const ripe = [...this.timers].filter(([, { at }]) => at <= this.world.now);
    for (const [name] of ripe) this.timers.delete(name);
    const inOrder = ripe.map(([, timer]) => timer).sort((one, other) => one.at - other.at || one.order - other.order);
    return inOrder.map(({ run }) => run);
  }

  private globals(): Record<(typeof GLOBALS)[number], unknown> {
    const { world, offset } = this;
    const nothing = (): void => undefined;
    class PageDate extends Date {
      constructor(...given: ConstructorParameters<typeof Date>) {
        super(...(given.length > 0 ? given : ([PageDate.now()] as unknown as typeof given)));
      }
      static override now = (): number => world.now + offset;
    }
    return {
      dexie: { Dexie: this.dexie() },
      fetch: (path: string, options: RequestInit) => this.fetch(path, options),
      Date: PageDate,
      performance: { now: () => world.now },
      Math: Object.create(Math, { random: { value: () => world.chance() } }),
      crypto: { getRandomValues: (bytes: Uint8Array) => bytes.map((_, at) => byte(world.chance, bytes, at)) },
      AbortSignal: { timeout: (milliseconds: number) => this.signal(milliseconds) },
      setTimeout: (run: () => void, milliseconds: number) => this.later(run, milliseconds),
      clearTimeout: (name: number) => this.timers.delete(name),
      navigator: { userAgent: "Mobi" },
      document: { visibilityState: "visible", addEventListener: nothing },
      addEventListener: nothing,
      sessionStorage: { getItem: () => null, setItem: nothing },
      BroadcastChannel: Channel.bind(null, this),
      Blob: Pieces,
    };
  }

  private dexie(): unknown {
    const page = this;
    const disk = Object.create(this.disk, {
      open: { value: (name: string, version?: number) => this.open(name, version) },
    });
    return class extends Dexie {
      constructor(name: string, options: object = {}) {
        if (page.dead) throw new Error("this page is gone");
        super(name, { ...options, indexedDB: disk, IDBKeyRange });
        page.dbs.push(this);
      }
    };
  }

  /** Opens a database of the disk, and notes which connections are this page's. */
  private open(name: string, version?: number): IDBOpenDBRequest {
    const request = this.disk.open(name, version);
    const note = (): unknown => this.connections.add(request.result);
    request.addEventListener("upgradeneeded", note);
    request.addEventListener("success", note);
    return request as unknown as IDBOpenDBRequest;
  }

  private later(run: () => void, milliseconds = 0): number {
    const name = this.world.next();
    if (!this.dead) this.timers.set(name, { at: this.world.now + milliseconds, order: name, run });
    return name;
  }

  private signal(milliseconds: number): AbortSignal {
    const controller = new AbortController();
    this.later(() => controller.abort(new DOMException("too long", "TimeoutError")), milliseconds);
    return controller.signal;
  }

  private fetch(path: string, { method = "GET", headers, body, signal }: RequestInit): Promise<unknown> {
    return new Promise((resolve, reject) => {
      if (this.dead) return;
      const flight = this.world.fly({ page: this, resolve, reject });
      signal?.addEventListener("abort", () => this.world.flights.delete(flight) && reject(signal.reason));
      const text = body instanceof Uint8Array ? Buffer.from(body).toString("base64") : (body as string | undefined);
      this.world.sent.push({ flight, phone: this.phone, method, path, headers: headers as object, body: text ?? null });
    });
  }
}

export const GLOBALS = [
  ...["dexie", "fetch", "Date", "performance", "Math", "crypto", "AbortSignal", "setTimeout", "clearTimeout"],
  ...["navigator", "document", "addEventListener", "sessionStorage", "BroadcastChannel", "Blob"],
] as const;

function byte(chance: () => number, bytes: Uint8Array, at: number): number {
  bytes[at] = Math.floor(chance() * 256);
  return bytes[at]!;
}

/** How tabs of one phone tell each other that they have written. */
class Channel {
  onmessage: ((told: object) => void) | null = null;

  constructor(
    readonly page: Page,
    readonly name: string,
  ) {
    page.world.channels.add(this);
  }

  postMessage(data: unknown): void {
    for (const other of this.page.world.channels)
      if (other !== this && other.page.disk === this.page.disk && other.name === this.name)
        tasks.push(() => other.page.dead || other.onmessage?.({ data }));
  }

  close(): void {
    this.page.world.channels.delete(this);
  }
}

/** A Blob that gives its text without waiting. */
export class Pieces {
  constructor(readonly parts: readonly (string | Pieces)[]) {}

  get whole(): string {
    return this.parts.map((part) => (typeof part === "string" ? part : part.whole)).join("");
  }
}

/** The double of IndexedDB as it is inside; its own names. */
type Inside = { _databases: Map<string, { name: string; transactions: Running[]; connections: unknown[] }> };
type Running = { mode: string; db: unknown; _state: string; _abort: (error: string | null) => void };
type Stores = { rawObjectStores: Map<string, { records: { values: () => Iterable<{ value: { text: string } }> } }> };

/** Ends open transactions of a disk: its pages' writes, for a reason they are told; or all of a page that is gone, by
 * its connections. Tells how many. */
export function abortAll(disk: IDBFactory, reason: string | null, gone?: ReadonlySet<unknown>): number {
  const databases = [...(disk as unknown as Inside)._databases.values()];
  const running = databases.flatMap(({ transactions }) =>
    transactions.filter((each) => each._state !== "finished" && (gone ? gone.has(each.db) : each.mode === "readwrite")),
  );
  for (const transaction of running) transaction._abort(reason);
  return running.length;
}

/** Every entry's text on a disk, read behind everybody's back. */
export function textsOn(disk: IDBFactory): Set<string> {
  const texts = new Set<string>();
  for (const database of (disk as unknown as Inside)._databases.values()) {
    const entries = (database as unknown as Stores).rawObjectStores.get("entries");
    for (const { value } of entries?.records.values() ?? []) texts.add(value.text);
  }
  return texts;
}

/** What a copied database has of its own. */
const NEW: Record<string, (database: object) => unknown> = {
  transactions: () => [],
  connections: () => [],
  processTransactions: (database) => (Object.getPrototypeOf(database) as Processing).processTransactions.bind(database),
};
type Processing = { processTransactions: () => void };

/** A disk with the same on it: nothing of it is shared, and nobody has it open. */
export function copyOf(disk: IDBFactory): IDBFactory {
  const copied = new Map<object, unknown>();
  const copy = (value: unknown): unknown => {
    if (!(value instanceof Object) || typeof value === "function") return value;
    if (copied.has(value)) return copied.get(value);
    if (value instanceof ArrayBuffer) return value.slice(0);
    const made: object = Array.isArray(value)
      ? []
      : value instanceof Map
        ? new Map()
        : Object.create(Object.getPrototypeOf(value));
    copied.set(value, made);
    if (value instanceof Map)
      for (const [key, item] of value) (made as Map<unknown, unknown>).set(copy(key), copy(item));
    for (const [name, item] of Object.entries(value)) Object.assign(made, { [name]: NEW[name]?.(made) ?? copy(item) });
    return made;
  };
  const other = new IDBFactory();
  const inside = other as unknown as Inside;
  inside._databases = copy((disk as unknown as Inside)._databases) as Inside["_databases"];
  return other;
}
