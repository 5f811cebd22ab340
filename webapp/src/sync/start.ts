/** The app's start below the screens: open the store, read the garage, keep it in step with the home computer. */

import { effect } from "@preact/signals";
import { followActs } from "../garage/acts";
import { followSession, type LiveGarage, live } from "../garage/garage";
import { followSaves } from "../garage/saves";
import { openSession, pair, session } from "../garage/session";
import { opened } from "../store/opened";
import { askForProtection, lookAtProtection } from "../store/protection";
import { requestJson, wireOf } from "../wire/request";
import type { Clock } from "./schedule";
import { trigger } from "./state";
import { Station } from "./station";

const clock: Clock = {
  now: () => performance.now(),
  setTimer: (run, milliseconds) => setTimeout(run, milliseconds),
  clearTimer: (timer) => clearTimeout(timer as number),
  random: Math.random,
};

/** Called once by main.tsx. Resolves when the records on this phone can be shown, or when there are none to show yet. */
export async function startPhone(): Promise<void> {
  followSession();
  await openSession();
  keepStation();
  watchPage();
  void lookAtProtection();
  if (session.peek().state === "unpaired") await joinDemo();
}

/** A demo pairs by itself; any other home computer waits for its link, and one that is away is asked again later. */
async function joinDemo(): Promise<void> {
  try {
    const { demo } = await requestJson(wireOf(null), "GET /health", {});
    if (demo === true) await pair(null);
  } catch {
    // The screen offers pairing; there is nothing here yet that could be lost.
  }
}

function keepStation(): void {
  let station: Station | null = null;
  effect(() => {
    station?.stop();
    const garage = live.value;
    const paired = opened.value;
    // While another garage is being opened the two differ for a moment: one's token must never meet the other's store.
    station = garage && paired?.store === garage.store ? newStation(garage, paired.token) : null;
    trigger.value = () => station?.now();
    void station?.begin().catch(() => undefined); // a store that fails shows at the next save
  });
  // Whoever writes, this tab or another: what waits is counted again.
  effect(() => void (live.value?.garage.value && station?.note().catch(() => undefined)));
  followActs();
  followSaves(() => {
    station?.now();
    void askForProtection();
  });
}

function newStation(garage: LiveGarage, token: string): Station {
  const isWatched = (): boolean => document.visibilityState === "visible";
  return new Station(garage, wireOf(token), clock, isWatched, () => void rejoinDemo());
}

/** A demo that was started afresh does not know this browser any more, and takes anyone. */
async function rejoinDemo(): Promise<void> {
  if (opened.peek()?.demo) await joinDemo();
}

function watchPage(): void {
  addEventListener("online", () => trigger.peek()());
  addEventListener("pagehide", () => void opened.peek()?.drafts.flush());
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void opened.peek()?.drafts.flush();
    else comeBack();
  });
}

/** Meanwhile the browser may have been paired in another tab, or the home computer come into reach. */
function comeBack(): void {
  if (session.peek().state === "unpaired") void openSession();
  else trigger.peek()();
}
