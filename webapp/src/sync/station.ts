/** The running sync of one open garage: attempts, what they note down, and their end when the garage is closed. */

import { AppError } from "../errors";
import { keepDeviceNames } from "../garage/deviceNames";
import type { LiveGarage } from "../garage/garage";
import { countPhotos } from "../store/photo_rows";
import { readState, rememberHeard } from "../store/state";
import type { Wire } from "../wire/request";
import { TabLock } from "./lock";
import { newPost, type Post, PROTOCOL } from "./post";
import { type Clock, type Outcome, Schedule } from "./schedule";
import { noted } from "./state";

/** Refusals by a rule: nothing is lost, but trying again soon is of no use. */
const REFUSALS: readonly string[] = ["revoked", "unpaired", "other_garage", "app_older", "home_older", "wrong_host"];

const REMEMBER_EVERY = 300_000;

/** Fetched at the first attempt: the first screen does without. */
const steps = () =>
  import("./run").catch((error) => {
    throw new AppError("unreachable", { reason: String(error) });
  });

export class Station {
  private readonly post: Post;
  private readonly lock: TabLock;
  private readonly schedule: Schedule;
  private remembered = 0;
  private stopped = false;

  /** `onUnpaired`: the home computer does not know this device's token. */
  constructor(
    live: LiveGarage,
    wire: Wire,
    clock: Clock,
    isWatched: () => boolean,
    private readonly onUnpaired: () => void,
  ) {
    this.post = newPost({
      wire,
      store: live.store,
      live,
      now: () => new Date(),
      onPhase: (phase) => (noted.phase.value = phase),
      onShare: (share) => (noted.photoShare.value = share),
      onProven: (proven) => (noted.proven.value = proven),
      onNames: (names) => void keepDeviceNames(names).catch(() => undefined), // the next pull tells them again
      onHeard: () => (noted.lastHeard.value = new Date().toISOString()),
    });
    this.lock = new TabLock(`tarebook-sync-${live.store.garage}`);
    this.schedule = new Schedule(() => this.attempt(), isWatched, clock);
  }

  async begin(): Promise<void> {
    const { heard, proven } = await readState(this.post.store);
    noted.lastHeard.value = heard;
    noted.proven.value = proven ?? null;
    await this.note();
    this.schedule.now();
  }

  now(): void {
    this.schedule.now();
  }

  /** What is under way goes on to its end, but has no more to say. */
  stop(): void {
    this.stopped = true;
    this.schedule.stop();
  }

  /** Reads what only the store knows: other tabs change it too. */
  async note(): Promise<void> {
    const { durable, cursor } = await readState(this.post.store);
    const photos = await countPhotos(this.post.store);
    noted.photosWaiting.value = photos.waiting;
    noted.photosStuck.value = photos.stuck;
    noted.stuck.value = this.post.distrusted.size;
    noted.inBackup.value = cursor.number > 0 && durable >= cursor.number;
  }

  private async attempt(): Promise<Outcome> {
    try {
      const outcome = await this.lock.run(async () => (await steps()).run(this.post, () => this.note()));
      if (outcome === "busy") return "busy";
      noted.trouble.value = null;
      await this.rememberHeard();
      return "done";
    } catch (error) {
      return this.failed(
        error instanceof AppError ? whichIsOlder(error) : new AppError("broken", { reason: String(error) }),
      );
    } finally {
      if (!this.stopped) {
        noted.phase.value = "idle";
        await this.note().catch(() => undefined);
      }
    }
  }

  /** Not with every answer: each write goes to the disk. */
  private async rememberHeard(): Promise<void> {
    const heard = noted.lastHeard.peek();
    if (heard === null || Date.parse(heard) - this.remembered < REMEMBER_EVERY) return;
    this.remembered = Date.parse(heard);
    await rememberHeard(this.post.store, heard, noted.proven.peek());
  }

  private failed(trouble: AppError): Outcome {
    if (this.stopped) return "failed";
    noted.trouble.value = trouble;
    if (trouble.code === "unpaired") this.onUnpaired();
    return REFUSALS.includes(trouble.code) ? "refused" : "failed";
  }
}

/** Which of the two a person has to update when they do not understand each other. */
function whichIsOlder(trouble: AppError): AppError {
  if (trouble.code !== "protocol") return trouble;
  return new AppError(Number(trouble.data.proto) > PROTOCOL ? "app_older" : "home_older");
}
