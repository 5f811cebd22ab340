/**
 * Half-filled forms, kept so that a page killed by the camera comes back as it was. A form may call `keep` with every
 * keystroke: the last value is written within 300 ms, and at once when the page is hidden or about to go.
 */

import type { Store } from "./store";

const SOON = 300;

type Unwritten = { value: unknown; timer: ReturnType<typeof setTimeout>; settled: PromiseWithResolvers<void> };

export class Drafts {
  private readonly unwritten = new Map<string, Unwritten>();

  constructor(private readonly store: Store) {}

  async load<T>(name: string): Promise<T | null> {
    const unwritten = this.unwritten.get(name);
    if (unwritten) return unwritten.value as T;
    const row = await this.store.read((db) => db.drafts.get(name));
    return (row?.value as T | undefined) ?? null;
  }

  keep(name: string, value: unknown): Promise<void> {
    const unwritten = this.unwritten.get(name) ?? this.begin(name);
    unwritten.value = value;
    return unwritten.settled.promise;
  }

  async drop(name: string): Promise<void> {
    this.forget(name);
    await this.store.write(["drafts"], (db) => db.drafts.delete(name));
  }

  /** Takes back what has not been written yet, so that it cannot be written after its form was saved. */
  withdraw(name: string): { putBack: () => void } {
    const unwritten = this.unwritten.get(name);
    this.forget(name);
    return { putBack: () => void (unwritten && this.keep(name, unwritten.value)) };
  }

  private forget(name: string): void {
    const unwritten = this.unwritten.get(name);
    clearTimeout(unwritten?.timer);
    this.unwritten.delete(name);
    unwritten?.settled.resolve();
  }

  async names(): Promise<string[]> {
    const written = await this.store.read((db) => db.drafts.toCollection().primaryKeys());
    return [...new Set([...written, ...this.unwritten.keys()])];
  }

  /** Writes all that waits, now. */
  async flush(): Promise<void> {
    await Promise.all([...this.unwritten.keys()].map((name) => this.writeNow(name)));
  }

  private begin(name: string): Unwritten {
    const settled = resolvers();
    // Most forms do not wait for it; a draft that could not be written is no unhandled fault.
    settled.promise.catch(() => undefined);
    const unwritten = { value: undefined, timer: setTimeout(() => void this.writeNow(name), SOON), settled };
    this.unwritten.set(name, unwritten);
    return unwritten;
  }

  private async writeNow(name: string): Promise<void> {
    const unwritten = this.unwritten.get(name);
    if (!unwritten) return;
    clearTimeout(unwritten.timer);
    this.unwritten.delete(name);
    try {
      await this.store.write(["drafts"], (db) => db.drafts.put({ name, value: unwritten.value }));
      unwritten.settled.resolve();
    } catch (error) {
      unwritten.settled.reject(error);
    }
  }
}

type PromiseWithResolvers<T> = { promise: Promise<T>; resolve: (value: T) => void; reject: (reason: unknown) => void };

function resolvers(): PromiseWithResolvers<void> {
  let resolve!: () => void;
  let reject!: (reason: unknown) => void;
  const promise = new Promise<void>((yes, no) => {
    resolve = yes;
    reject = no;
  });
  return { promise, resolve, reject };
}
