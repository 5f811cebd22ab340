/**
 * Step 1 of sync: pending entries go to the home computer, oldest first, in batches. A batch that is too large, or that
 * makes the server fail, is halved until the entry at fault stands alone; that one stands back, the others go on. Nothing
 * is ever dropped: only being taken ends an entry's wait.
 */

import { AppError } from "../errors";
import type { Proof, Push, PushResult } from "../generated/routes";
import { utf8Length } from "../journal/bytes";
import { SCHEMA } from "../journal/kinds";
import type { EntryRow } from "../store/database";
import { markSent, nextPending } from "../store/entries";
import { readState } from "../store/state";
import { isTextOrLeftOut, isWhole, managed, paced, requestJson, unreadable } from "../wire/request";
import { MOST_ENTRIES, type Post, PROTOCOL } from "./post";

const MOST_BYTES = 256 * 1024;
const STAND_BACK = 60_000;
const STAND_BACK_MOST = 3_600_000;
/** So many single entries failing one after the other means it is the server, not they. */
const ALONE_MOST = 3;

/** Refusals that a smaller batch, or one without some entry, may get round. */
const HALVING: readonly string[] = [
  "too_large",
  "too_many_entries",
  "entry_too_large",
  "bad_request",
  "malformed_json",
  "bad_input",
  "broken",
];

/** Sends all that is pending. Rejects with AppError; what was taken until then stays taken. */
export async function push(post: Post): Promise<void> {
  let failedAlone = 0;
  for (let batch = await nextBatch(post); batch.length > 0; batch = await nextBatch(post)) {
    post.onPhase("pushing");
    try {
      await sendBatch(post, batch);
      failedAlone = 0;
      post.batch = Math.min(MOST_ENTRIES, post.batch * 2);
    } catch (error) {
      if (!(error instanceof AppError) || !HALVING.includes(error.code)) throw error;
      if (batch.length > 1) post.batch = Math.ceil(batch.length / 2);
      else standBack(post, batch[0]!);
      if (batch.length === 1 && ++failedAlone >= ALONE_MOST) throw error;
    }
  }
}

async function nextBatch(post: Post): Promise<EntryRow[]> {
  const now = post.now().getTime();
  const back = [...post.distrusted].filter(([, { until }]) => until > now).map(([key]) => key);
  const rows = await nextPending(post.store, post.batch, new Set(back));
  let room = paced(post.wire, MOST_BYTES);
  const fitting = rows.findIndex((row) => {
    room -= utf8Length(row.text);
    return room < 0;
  });
  return fitting < 0 ? rows : rows.slice(0, Math.max(1, fitting));
}

async function sendBatch(post: Post, batch: EntryRow[]): Promise<void> {
  const { cursor } = await readState(post.store);
  const entries = batch.map((row) => row.text);
  const head = { proto: PROTOCOL, schema: SCHEMA, garage: post.store.garage, epoch: cursor.epoch };
  const json = { ...head, entries, ...receiptsOf(batch) };
  const { results } = await requestJson(post.wire, "POST /sync/push", { json });
  post.onHeard();
  if (sizeOf(batch) > paced(post.wire, MOST_BYTES) / 2) managed(post.wire);
  if (!Array.isArray(results) || results.length !== batch.length || !results.every(isTaken)) {
    throw unreadable({ status: 200 }, "no result for each entry");
  }
  for (const row of batch) post.distrusted.delete(row.key);
  const taken = new Map(batch.map((row, at) => [row.key, results[at]!]));
  await post.live.took(await markSent(post.store, taken));
}

/** What proves the authors of entries that were accepted once; nothing of those that never were. */
function receiptsOf(batch: EntryRow[]): Pick<Push, "receipts"> {
  if (batch.every((row) => row.receipt === undefined)) return {};
  return { receipts: batch.map((row) => (row.receipt === undefined ? null : proofOf(row.receipt, row.sent_by))) };
}

function proofOf(receipt: string, sentBy: string | undefined): Proof {
  return sentBy === undefined ? { receipt } : { receipt, sent_by: sentBy };
}

function sizeOf(batch: EntryRow[]): number {
  return batch.reduce((size, row) => size + utf8Length(row.text), 0);
}

function isTaken(result: unknown): boolean {
  const { number, receipt, sent_by } = (result ?? {}) as { [Name in keyof PushResult]?: unknown };
  return isWhole(number) && isTextOrLeftOut(receipt) && isTextOrLeftOut(sent_by);
}

function standBack(post: Post, row: EntryRow): void {
  const tries = (post.distrusted.get(row.key)?.tries ?? 0) + 1;
  const until = post.now().getTime() + Math.min(STAND_BACK_MOST, STAND_BACK * 2 ** (tries - 1));
  post.distrusted.set(row.key, { until, tries });
}
