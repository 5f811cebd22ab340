/**
 * Joining a garage from a phone: the code is right, and now somebody has to say yes on the home computer. Both sides
 * show the same two words meanwhile, so that a yes is said to this phone and no other.
 *
 * What has to be kept until then outlives a reload of the page, in the tab's own session storage.
 */

import { type ReadonlySignal, signal } from "@preact/signals";
import { AppError } from "../errors";
import { type Claimed, requestJson, type Wire } from "../wire/request";

/** `until`: when the wait ends, in milliseconds since 1970 by this phone's clock, which alone measures it. */
export type Waiting = { words: string[]; until: number };

const asked = signal<Waiting | null>(null);

/** What to show while this phone waits for a yes; null when it does not wait. */
export const waiting: ReadonlySignal<Waiting | null> = asked;

type Answer = Claimed<"POST /pair/wait">;
export type Kept = Waiting & { join: string };

const KEPT = "tarebook-join";
const EVERY = 2_000;
/** Not a no: the next try may get through. */
const PASSING: readonly string[] = ["unreachable", "answer_unreadable", "rate_limited", "busy", "broken"];

let stopped = false;

/** Whoever waits gives up waiting; the code is used up all the same. */
export function stopWaiting(): void {
  stopped = true;
}

/** A wait that a reload of the page broke off, or null. */
export function brokenOff(): Kept | null {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEPT) ?? "null") as Kept | null;
    return kept && kept.until > Date.now() ? kept : null;
  } catch {
    return null;
  }
}

/** A browser without session storage only loses a wait with the page. */
function keep(kept: Kept | null): void {
  try {
    sessionStorage.setItem(KEPT, JSON.stringify(kept));
  } catch {
    return;
  }
}

/**
 * What the home computer hands out: at once, or after the yes that its answer asks for. Null when the person stopped
 * waiting. Rejects with AppError: `pair_refused`, `pair_over`.
 */
export async function handedOut(wire: Wire, answer: Answer): Promise<Answer | null> {
  const { join, seconds } = answer;
  if (typeof join !== "string") return answer;
  return waitForYes(wire, { join, words: wordsOf(answer), until: Date.now() + Number(seconds) * 1000 });
}

/** Asks again and again while the page is looked at. */
export async function waitForYes(wire: Wire, kept: Kept): Promise<Answer | null> {
  stopped = false;
  asked.value = { words: kept.words, until: kept.until };
  keep(kept);
  try {
    return await askUntilAnswered(wire, kept);
  } finally {
    asked.value = null;
    keep(null);
  }
}

async function askUntilAnswered(wire: Wire, { join, until }: Kept): Promise<Answer | null> {
  for (;;) {
    await new Promise((resolve) => setTimeout(resolve, EVERY));
    if (stopped) return null;
    if (globalThis.document?.visibilityState === "hidden") continue;
    const answer = await askOnce(wire, join, Date.now() < until);
    if (typeof answer?.token === "string") return answer;
  }
}

/** Null for a trouble that may pass; in the end it is thrown. */
async function askOnce(wire: Wire, join: string, mayPass: boolean): Promise<Answer | null> {
  try {
    return await requestJson(wire, "POST /pair/wait", { json: { join } });
  } catch (error) {
    if (mayPass && error instanceof AppError && PASSING.includes(error.code)) return null;
    throw error;
  }
}

function wordsOf({ words }: Answer): string[] {
  return Array.isArray(words) ? words.map(String) : [];
}
