/** Who this browser is: paired to which garage, as which device; and the opening of that garage's store. */

import { type ReadonlySignal, signal } from "@preact/signals";
import { Dexie } from "dexie";

import type { AppError } from "../errors";
import { databaseName } from "../store/database";
import { Drafts } from "../store/drafts";
import { opened, type Pairing } from "../store/opened";
import { forgetPairing, latestPairing, otherDemos, rememberPairing } from "../store/pairings";
import { Store } from "../store/store";
import { storageTrouble } from "../store/trouble";
import { type Claimed, isText, requestJson, unreadable, wireOf } from "../wire/request";
import { loadChoices } from "./choices";
import { handedOut, type Kept, waitForYes } from "./joining";

/** `blocked`: the store cannot be used on this page; `trouble` says why and what to do. */
export type Session = {
  state: "unpaired" | "ready" | "opening" | "blocked";
  garage?: string;
  device?: string;
  demo?: boolean;
  trouble?: AppError;
};

const now = signal<Session>({ state: "opening" });
export const session: ReadonlySignal<Session> = now;

/** Who keeps in step with the open store. */
export type Follower = {
  /** Another tab has written to it. */
  written: () => void;
  /** A store was opened; the session is ready once this resolves, so that no screen shows an unread garage. */
  opened: () => Promise<void>;
};

let follower: Follower = { written: () => undefined, opened: () => Promise.resolve() };
export function followStore(by: Follower): void {
  follower = by;
}

/** Opens the garage this browser was last paired with. */
export async function openSession(): Promise<void> {
  try {
    const pairing = await latestPairing();
    if (pairing) await open(pairing);
    else now.value = { state: "unpaired" };
  } catch (error) {
    block(storageTrouble(error));
  }
}

/**
 * Pairs this browser by a one-time code (null: the demo, which asks none) and opens the garage; a phone waits for a yes
 * on the home computer in between. False when the person stopped waiting. Records of another garage on this phone stay
 * in their own database. Rejects with AppError.
 */
export async function pair(code: string | null): Promise<boolean> {
  const before = opened.value ?? (await latestPairing());
  const json = { code, name: deviceName(navigator.userAgent), ...(before && { device: before.device }) };
  const wire = wireOf(null);
  return keepAndOpen(await handedOut(wire, await requestJson(wire, "POST /pair", { json })));
}

/** Goes on with a pairing whose wait for a yes was broken off by a reload of the page. */
export async function pairOn(kept: Kept): Promise<boolean> {
  return keepAndOpen(await waitForYes(wireOf(null), kept));
}

/** The token is handed out once: it is on the disk before anything else happens. */
async function keepAndOpen(answer: Claimed<"POST /pair"> | null): Promise<boolean> {
  if (!answer) return false;
  const pairing = readPairing(answer);
  await rememberPairing(pairing);
  await open(pairing);
  for (const garage of pairing.demo ? await otherDemos(pairing.garage) : []) await dropDemo(garage);
  return true;
}

function readPairing({ token, device, garage, name = "", demo }: Claimed<"POST /pair">): Pairing {
  if (!isText(token) || !isText(device) || !isText(garage)) throw unreadable({ status: 200 }, "no pairing");
  return { token, device, garage, name: String(name), demo: demo === true };
}

async function open(pairing: Pairing): Promise<void> {
  const store = opened.value?.garage === pairing.garage ? opened.value.store : await openStore(pairing.garage);
  opened.value = { ...pairing, store, drafts: opened.value?.store === store ? opened.value.drafts : new Drafts(store) };
  await Promise.all([follower.opened(), loadChoices()]);
  now.value = { state: "ready", garage: pairing.garage, device: pairing.device, demo: pairing.demo };
}

async function openStore(garage: string): Promise<Store> {
  const store = new Store(garage, { written: () => follower.written(), blocked: block });
  await store.open();
  opened.value?.store.close();
  return store;
}

function block(trouble: AppError): void {
  now.value = { ...now.value, state: "blocked", trouble };
}

/** The last demo's records go: its banner has said so. */
async function dropDemo(garage: string): Promise<void> {
  await forgetPairing(garage);
  await Dexie.delete(databaseName(garage));
}

/** What the list of devices calls this browser until someone names it. */
export function deviceName(agent: string): string {
  return /Mobi/.test(agent) ? "Phone" : "Computer";
}
