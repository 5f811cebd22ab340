/** The open garage as a signal: what every screen reads. It changes only after a transaction has completed. */

import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { Board } from "../journal/board";
import type { Garage } from "../journal/types";
import { FIRST_STATE } from "../store/database";
import { rowsSince, type WrittenRows } from "../store/entries";
import { opened } from "../store/opened";
import type { Store } from "../store/store";
import { followStore } from "./session";

export type { AsideEntry, Garage, Head, Rec, Unproven, Value } from "../journal/types";

const EMPTY = new Board().garage();

/** The garage of one store, kept in step with it, whichever tab writes. */
export class LiveGarage {
  readonly garage = signal<Garage>(EMPTY);
  /** Entries the home computer is not known to hold. */
  readonly waiting = signal(0);
  private board = new Board();
  private counter = 0;
  private generation = -1;
  private catching: Promise<void> = Promise.resolve();

  constructor(readonly store: Store) {}

  /** Takes in a write of this page's own; rows of other tabs in between are fetched. */
  async took({ before, after, result }: WrittenRows): Promise<void> {
    if (before.counter !== this.counter || after.generation !== this.generation) return this.catchUp();
    this.counter = after.counter;
    this.take(result);
  }

  /** Reads whatever has been written since; everything, when rows must be folded from the start. */
  catchUp(): Promise<void> {
    this.catching = this.catching.catch(() => undefined).then(() => this.readOn());
    return this.catching;
  }

  private async readOn(): Promise<void> {
    const { state, rows } = await rowsSince(this.store, this.counter);
    const { counter, generation } = state ?? FIRST_STATE;
    if (counter < this.counter) return; // read before a write that has been taken in meanwhile
    if (generation !== this.generation && this.generation >= 0) return this.readAll();
    this.generation = generation;
    const news = rows.filter((row) => row.seq > this.counter);
    this.counter = counter;
    this.take(news);
  }

  private async readAll(): Promise<void> {
    const { state, rows } = await rowsSince(this.store, 0);
    const { counter, generation } = state ?? FIRST_STATE;
    this.board = new Board();
    Object.assign(this, { counter, generation });
    this.take(rows, true);
  }

  /** Rows that only tell how far they have come change nothing that screens see, and cost them nothing. */
  private take(rows: WrittenRows["result"], isNewBoard = false): void {
    if (!this.board.take(rows) && !isNewBoard) return;
    this.garage.value = this.board.garage();
    this.waiting.value = this.board.waiting;
  }
}

/** The live garage that is open on this page; null before pairing. */
export const live = signal<LiveGarage | null>(null);

export const garage: ReadonlySignal<Garage> = computed(() => live.value?.garage.value ?? EMPTY);

/** Follows the session: whatever garage it opens is read and stays in step. Called once, at the start. */
export function followSession(): void {
  followStore({
    // A store that is not open is said by the whole screen.
    written: () =>
      void live
        .peek()
        ?.catchUp()
        .catch(() => undefined),
    opened: async () => {
      const { store } = opened.peek()!;
      if (live.peek()?.store === store) return;
      const opening = new LiveGarage(store);
      await opening.catchUp();
      live.value = opening;
    },
  });
}
