/** What becomes of a code that was followed, scanned or typed; kept here, for the screen it came from may be gone. */
import { effect, type ReadonlySignal, signal } from "@preact/signals";
import type { AppError } from "../../errors";
import { brokenOff, waiting } from "../../garage/joining";
import { pair, pairOn } from "../../garage/session";
import { replace } from "../../route";
import { syncNow } from "../../sync/state";
import { troubleOf } from "../frame/trouble";
import { installed } from "../install/install";
import { isHomeComputer, keepsAppsApart } from "../words/whereabouts";
import { codeIn } from "./pairingCode";

/** `joined`: the garage is open, and the app could still be put on the home screen. */
export type Joining = { busy: boolean; joined: boolean; trouble: AppError | null };

const IDLE: Joining = { busy: false, joined: false, trouble: null };
const now = signal<Joining>(IDLE);
export const joining: ReadonlySignal<Joining> = now;

// A code that has led to a wait is used up: nobody who sees the address need see it, and a reload goes on by itself.
effect(() => {
  if (waiting.value && codeIn(location.hash)) replace("#/");
});

/** Joins by a code. Never rejects: what went wrong is shown. */
export function join(code: string): Promise<void> {
  const kept = brokenOff(); // the page was reloaded while it waited, and the code is used up
  return follow(() => (kept ? pairOn(kept) : pair(code)));
}

/** Goes on with a wait for a yes that a reload of the page broke off. */
export async function goOnWaiting(): Promise<void> {
  const kept = brokenOff();
  if (kept) await follow(() => pairOn(kept));
}

/** The garage is open, and everything about joining it said. */
export function goOn(): void {
  now.value = IDLE;
}

async function follow(work: () => Promise<boolean>): Promise<void> {
  if (now.peek().busy) return;
  now.value = { ...IDLE, busy: true };
  try {
    const open = await work();
    const couldBeInstalled = !installed.peek() && !isHomeComputer() && !keepsAppsApart();
    now.value = { ...IDLE, joined: open && couldBeInstalled };
    replace("#/");
    if (open) syncNow();
  } catch (error) {
    now.value = { ...IDLE, trouble: troubleOf(error) };
  }
}
