/** Several phones in one Node, spoken to by lines of JSON: each command is answered once there is nothing left to do. */

import { IDBFactory } from "fake-indexeddb";
import { randomFrom } from "../../random";
import { type App, abortAll, copyOf, GLOBALS, type Make, Page, Pieces, settle, textsOn, World } from "./browser";

/**
 * `phone`: whose disk this may change; without one, all. `cut`: after so many tasks the page is killed, or the open
 * transaction finds the disk full.
 */
export type Command = { do: keyof typeof COMMANDS; cut?: { after: number; how: Cut } } & Given;
type Cut = "kill" | "late" | "quota";
type Given = {
  phone: number;
  seed: number;
  milliseconds: number;
  unknown: string[];
  from: number;
  isTab: boolean;
  with: unknown[];
  work: keyof App;
  flight: number;
  status: number;
  headers: Record<string, string>;
  body: string | null;
};
type Phone = { disk: IDBFactory; offset: number; page: Page | null; texts: Set<string> };

let make: Make;
let world: World;
let phones: Phone[] = [];

/** `page`: the code of `page.ts` and all it rests on, which gives what that module exports as `page`. */
export function begin(page: string): void {
  make = new Function(...GLOBALS, `${page}\nreturn page;`) as Make;
}

const COMMANDS = {
  world({ seed }: Given) {
    for (const { page } of phones) page?.kill();
    world = new World(randomFrom(seed), make);
    phones = [];
  },
  /** A new phone, a copy of another's disk in a browser of its own, or another tab on the same disk. */
  phone({ from, isTab, milliseconds }: Given) {
    const { disk, offset } = from < 0 ? { disk: new IDBFactory(), offset: milliseconds } : phones[from]!;
    phones.push({
      disk: from < 0 || isTab ? disk : copyOf(disk),
      offset: isTab ? offset : milliseconds,
      page: null,
      texts: textsOn(disk),
    });
    return phones.length - 1;
  },
  open({ phone, unknown }: Given) {
    const { disk, offset } = phones[phone]!;
    const page = new Page(world, phone, disk, offset);
    phones[phone]!.page = page;
    return page.app.start(unknown);
  },
  kill({ phone }: Given) {
    phones[phone]!.page?.kill();
    phones[phone]!.page = null;
  },
  app({ phone, work, with: given }: Given) {
    const { app } = phones[phone]!.page!;
    return (app[work] as (...all: unknown[]) => unknown)(...given.map(bytesOf));
  },
  answer({ flight, status, headers, body }: Given) {
    const { resolve, reject } = world.flights.get(flight) ?? {};
    world.flights.delete(flight);
    if (status === 0) reject?.(new TypeError("network error"));
    else resolve?.(response(status, headers, body));
    return resolve !== undefined;
  },
  pass({ milliseconds }: Given) {
    world.now += milliseconds;
    const due = phones.flatMap(({ page }) => page?.due() ?? []);
    for (const run of due) run();
  },
};

function bytesOf(given: unknown): unknown {
  const { base64 } = (given ?? {}) as { base64?: string };
  return base64 === undefined ? given : new Uint8Array(Buffer.from(base64, "base64")).buffer;
}

/** `body` null: it broke off on its way. */
function response(status: number, headers: Record<string, string>, body: string | null): object {
  const text = () => (body === null ? Promise.reject(new TypeError("broken off")) : Promise.resolve(body));
  return { ok: status >= 200 && status < 300, status, headers: new Headers(headers), text };
}

/** Carries a command out and gives what came of it, with the requests that phones have begun meanwhile. */
export async function answer(command: Command): Promise<unknown> {
  let outcome: { value?: unknown; error?: string } = {};
  let isDone = false;
  const end = (came: typeof outcome): void => {
    outcome = came;
    isDone = true;
  };
  const work = async () => COMMANDS[command.do](command);
  void work().then(
    (value) => end({ value }),
    (error: unknown) => end({ error: errorOf(error) }),
  );
  if (command.cut) outcome = (await cutShort(command, () => isDone)) ?? outcome;
  await settle();
  const touched = [...phones.entries()].filter(([at]) => command.phone === undefined || command.phone === at);
  const gone = touched.flatMap(([at, phone]) => (keepsAll(phone) ? [] : [at]));
  const value = outcome.value instanceof Pieces ? outcome.value.whole : outcome.value;
  return { done: isDone, ...outcome, value, sent: world.sent.splice(0), gone };
}

function errorOf(error: unknown): string {
  return (error as { code?: string }).code ?? String((error as Error).stack ?? error);
}

async function cutShort({ cut, phone }: Command, isDone: () => boolean): Promise<object | null> {
  const { disk, page } = phones[phone]!;
  await settle(cut!.after);
  if (isDone()) return null;
  if (cut!.how === "quota") return abortAll(disk, "QuotaExceededError") > 0 ? { cut: true } : null;
  if (cut!.how === "late") await settle();
  page!.kill();
  phones[phone]!.page = null;
  await settle();
  return { cut: true };
}

/** Whether a disk still has every text it ever had. */
function keepsAll(phone: Phone): boolean {
  const now = textsOn(phone.disk);
  const isKept = [...phone.texts].every((text) => now.has(text));
  phone.texts = now;
  return isKept;
}
