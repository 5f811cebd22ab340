/**
 * One tab syncs at a time. This only saves work: pushing twice is harmless, and a page belongs only to the cursor it was
 * asked for. So a browser without locks, or a tab that sits on its lock too long, is no obstacle.
 */

const PATIENCE = 10;

export class TabLock {
  private refusals = 0;

  constructor(
    private readonly name: string,
    private readonly locks: LockManager | undefined = globalThis.navigator?.locks,
  ) {}

  /** Runs work under the lock; "busy" when another tab has it. */
  async run<T>(work: () => Promise<T>): Promise<T | "busy"> {
    if (!this.locks) return work();
    const outcome = await this.locks.request(this.name, { ifAvailable: true }, (lock) =>
      lock ? work() : ("busy" as const),
    );
    if (outcome !== "busy") {
      this.refusals = 0;
      return outcome;
    }
    this.refusals += 1;
    return this.refusals < PATIENCE ? "busy" : this.anyway(work);
  }

  private anyway<T>(work: () => Promise<T>): Promise<T> {
    this.refusals = 0;
    return work();
  }
}
