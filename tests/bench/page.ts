/**
 * The bench's hand inside the running app: the app's own modules, called as its screens and its sync call them, with a
 * clock. It is built into a copy of the app in a scratch folder and into nothing else. Times are in milliseconds.
 */

import { type Ballast, ballast, type Carried, type Place, type Wanted } from "../../webapp/src/core/ballast/ballast";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { ledger } from "../../webapp/src/core/ledger/ledger";
import { standing } from "../../webapp/src/core/standing/standing";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { garage, live } from "../../webapp/src/garage/garage";
import { type Change, save } from "../../webapp/src/garage/write";
import { Board, type Row } from "../../webapp/src/journal/board";
import { fold } from "../../webapp/src/journal/fold";
import { emptyState } from "../../webapp/src/journal/layers";
import { opened } from "../../webapp/src/store/opened";
import { shrink } from "../../webapp/src/store/shrink";
import { sendPhotos } from "../../webapp/src/sync/photos";
import { newPost, type Post } from "../../webapp/src/sync/post";
import { pull } from "../../webapp/src/sync/pull";
import { push } from "../../webapp/src/sync/push";
import { run } from "../../webapp/src/sync/run";
import { PATIENCE } from "../../webapp/src/wire/request";

const AT_ONCE = 500;

async function timed(work: () => unknown): Promise<number> {
  const started = performance.now();
  await work();
  return performance.now() - started;
}

async function repeated(times: number, work: () => unknown): Promise<number[]> {
  const taken: number[] = [];
  for (let at = 0; at < times; at++) taken.push(await timed(work));
  return taken;
}

/** Holds the lock of sync, as another tab would, so that only the bench's own runs go. */
function holdSync(id: string): Promise<void> {
  return new Promise((held) => {
    void navigator.locks.request(`tarebook-sync-${id}`, () => {
      held();
      return new Promise(() => undefined);
    });
  });
}

function garageId(): string {
  return opened.peek()!.garage;
}

/** Once the screens see so many records, and how many they see then. */
function hasRecords(least: number): Promise<number> {
  return new Promise((resolve) => {
    const stop = garage.subscribe(({ byId }) => {
      if (byId.size < least) return;
      resolve(byId.size);
      queueMicrotask(() => stop());
    });
  });
}

function post(): Post {
  const { store, token } = opened.peek()!;
  const wire = { fetch: (url: string, options: RequestInit) => fetch(url, options), token, patience: PATIENCE };
  const deaf = {
    onPhase: () => undefined,
    onHeard: () => undefined,
    onProven: () => undefined,
    onNames: () => undefined,
    onShare: () => undefined,
  };
  return newPost({ wire, store, live: live.peek()!, now: () => new Date(), ...deaf });
}

const pushAll = (): Promise<number> => timed(() => push(post()));
const pullAll = (): Promise<number> => timed(() => pull(post()));
const sendAll = (): Promise<number> => timed(() => sendPhotos(post(), async () => undefined));

/** Whole runs of sync with nothing to send and nothing to fetch. */
async function syncNothing(times: number): Promise<number[]> {
  const same = post();
  return repeated(times, () => run(same, async () => undefined));
}

async function saveAll(changes: Change[]): Promise<void> {
  for (let at = 0; at < changes.length; at += AT_ONCE) await save(changes.slice(at, at + AT_ONCE));
}

/** Saves one after the other, with a pause between them, as a person does. */
async function saveEach(changes: Change[], pause: number): Promise<number[]> {
  const taken: number[] = [];
  for (const change of changes) {
    taken.push(await timed(() => save([change])));
    await new Promise((resolve) => setTimeout(resolve, pause));
  }
  return taken;
}

/** Folding a journal in memory: the bare fold, and the board that screens read. */
async function foldAll(texts: string[], times: number): Promise<{ fold: number[]; board: number[] }> {
  const rows = texts.map(
    (text, at) => ({ key: String(at), text, number: at + 1, aside: null, order: at + 1 }) satisfies Row,
  );
  const lay = (board: Board): unknown => {
    board.take(rows);
    return board.garage();
  };
  return {
    fold: await repeated(times, () => fold(emptyState(), rows)),
    board: await repeated(times, () => lay(new Board())),
  };
}

/** From plain records to the standing. The first run reads every text anew; later ones know them. */
function reckon(lists: Record<string, unknown>, times: number): Promise<number[]> {
  return repeated(times, () => {
    const book = readGarage({ ...lists, trim: "event" });
    const known = masses(book);
    ledger(book, known);
    standing(book, known);
  });
}

/** From the records read to the standing: masses, net of every job, and all weigh-ins together. */
function stand(lists: Record<string, unknown>, times: number): Promise<number[]> {
  const book = readGarage({ ...lists, trim: "event" });
  return repeated(times, () => {
    standing(book, masses(book));
  });
}

type Asked = { car: Carried; places: Place[]; wanted: Wanted };

/** Each question once: the milliseconds, and whether the answer is proven the best. */
function choose(asked: Asked[]): { took: number; proven: boolean }[] {
  return asked.map(({ car, places, wanted }) => {
    const started = performance.now();
    const found = ballast(car, places, wanted) as Ballast;
    return { took: performance.now() - started, proven: found.proven };
  });
}

function shrinkPhoto(base64: string, times: number): Promise<number[]> {
  const photo = new Blob([bytesOf(base64)], { type: "image/jpeg" });
  return repeated(times, () => shrink(photo));
}

async function savePhoto({ of, base64 }: { of: string; base64: string }): Promise<void> {
  await save([], [{ of, bytes: bytesOf(base64), type: "image/jpeg", width: 1600, height: 1200 }]);
}

function bytesOf(base64: string): ArrayBuffer {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0)).buffer;
}

const bench = {
  holdSync,
  garageId,
  hasRecords,
  pushAll,
  pullAll,
  sendAll,
  syncNothing,
  saveAll,
  saveEach,
  foldAll,
  reckon,
  stand,
  choose,
  shrinkPhoto,
  savePhoto,
};
Object.assign(globalThis, { bench });
