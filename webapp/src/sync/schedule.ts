/**
 * When sync runs: at once after a save, on coming back to the page, on a network's return; else from time to time, and
 * after a failure later and later. Whether the browser believes to be online is never asked: it is often wrong.
 */

/** Time and chance, handed in so that tests can have their own. */
export type Clock = {
  /** Milliseconds, from any beginning. */
  now: () => number;
  setTimer: (run: () => void, milliseconds: number) => unknown;
  clearTimer: (timer: unknown) => void;
  random: () => number;
};

export type Outcome = "done" | "failed" | "refused" | "busy";

const EVERY = 10_000;
const FIRST_RETRY = 1_000;
const LAST_RETRY = 60_000;
/**
 * While someone looks, tries begin at most so far apart, however long one of them hung: whoever comes back into reach is
 * in step again within a quarter of a minute.
 */
const LAST_RETRY_WATCHED = 12_000;
/** After a try that hung, at least a moment's rest. */
const REST = 500;
/** A refusal will hardly change by itself, but it may. */
const AFTER_REFUSAL = 120_000;
/** Another tab is at it. */
const WHILE_BUSY = 2_000;

export class Schedule {
  private timer: unknown = null;
  private running = false;
  private again = false;
  private failures = 0;
  private stopped = false;

  /** `attempt` never rejects. `isWatched`: whether anyone looks; unwatched pages do not ask for news. */
  constructor(
    private readonly attempt: () => Promise<Outcome>,
    private readonly isWatched: () => boolean,
    private readonly clock: Clock,
  ) {}

  /** Tries at once, or soon after the run that is under way. */
  now(): void {
    if (this.stopped) return;
    if (this.running) this.again = true;
    else void this.go();
  }

  stop(): void {
    this.stopped = true;
    this.clear();
  }

  private async go(): Promise<void> {
    this.clear();
    this.running = true;
    this.again = false;
    const began = this.clock.now();
    const outcome = await this.attempt();
    this.running = false;
    this.failures = outcome === "failed" ? this.failures + 1 : 0;
    if (this.stopped) return;
    // Whoever asked meanwhile may know that things have changed: soon, though not at once.
    if (this.again) this.failures = Math.min(this.failures, 1);
    if (this.again && outcome === "done") void this.go();
    else this.plan(this.delay(outcome, this.clock.now() - began));
  }

  private delay(outcome: Outcome, took: number): number | null {
    if (outcome === "busy") return WHILE_BUSY;
    if (outcome === "refused") return AFTER_REFUSAL;
    if (outcome === "done") return this.isWatched() ? EVERY : null;
    // Half fixed, half chance: phones that lost the same server do not come back to it all at once.
    const last = this.isWatched() ? LAST_RETRY_WATCHED : LAST_RETRY;
    const most = Math.min(last, FIRST_RETRY * 2 ** (this.failures - 1));
    return Math.max(REST, (most * (1 + this.clock.random())) / 2 - took);
  }

  private plan(delay: number | null): void {
    if (delay !== null) this.timer = this.clock.setTimer(() => this.now(), delay);
  }

  private clear(): void {
    if (this.timer !== null) this.clock.clearTimer(this.timer);
    this.timer = null;
  }
}
