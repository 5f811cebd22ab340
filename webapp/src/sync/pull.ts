/**
 * Step 2 of sync: what the home computer's journal has beyond the cursor comes in, page by page. A page and the cursor
 * after it are written together or not at all; a page that skips, repeats or breaks off is no page.
 */

import { AppError } from "../errors";
import type { PulledEntry } from "../generated/routes";
import type { Cursor } from "../store/database";
import { type Page, takePage } from "../store/entries";
import { readState } from "../store/state";
import { isText, isTextOrLeftOut, isWhole, managed, paced, requestJson, unreadable } from "../wire/request";
import type { Post } from "./post";

const LIMIT = 1000;

/** Pulls until there is no more. Rejects with AppError; pages taken until then stay taken. */
export async function pull(post: Post): Promise<void> {
  for (let more = true; more; ) {
    const { cursor, durable } = await readState(post.store);
    const page = await askPage(post, cursor);
    post.onHeard();
    post.onProven(page.proven);
    if (page.devices) post.onNames(page.devices);
    more = page.more;
    if (page.lines.length === 0 && page.durable === durable && page.epoch === cursor.epoch) continue;
    post.onPhase("pulling");
    const written = await takePage(post.store, cursor, page);
    if (written) await post.live.took(written);
    else more = true; // another tab has pulled: from its cursor on
  }
}

type Names = Record<string, string>;
type Asked = Page & { more: boolean; proven: string | null; devices: Names | null };

async function askPage(post: Post, cursor: Cursor): Promise<Asked> {
  const { epoch, number, mark } = cursor;
  const query = { epoch, since: number, since_id: mark, limit: paced(post.wire, LIMIT) };
  const body = await requestJson(post.wire, "GET /sync/pull", { query });
  if (body.more === true) managed(post.wire);
  const page = { lines: body.entries, epoch: body.epoch, mark: body.mark, durable: body.durable ?? 0, more: body.more };
  if (!isPage(page, number)) throw unreadable({ status: 200 }, "no page of the journal");
  if (epoch !== "" && page.epoch !== epoch) throw new AppError("rewound", { epoch: page.epoch });
  const proven = isText(body.proven) ? body.proven : null;
  return {
    ...page,
    proven,
    devices: (body.devices as Names) ?? null,
    heard: post.now().toISOString(),
  };
}

type AskedPage = Omit<Page, "heard"> & { more: boolean };

function isPage(page: Record<keyof AskedPage, unknown>, since: number): page is AskedPage {
  const { lines, epoch, mark, durable, more } = page;
  if (!isText(epoch) || !isWhole(durable) || typeof more !== "boolean") return false;
  if (typeof mark !== "string") return false;
  if (!Array.isArray(lines) || (more && lines.length === 0)) return false;
  let last = since;
  return lines.every((line) => {
    const follows = isLine(line) && line.number > last;
    if (follows) last = line.number;
    return follows;
  });
}

function isLine(line: unknown): line is PulledEntry {
  const { number, text, aside, id, receipt, sent_by } = (line ?? {}) as { [Name in keyof PulledEntry]?: unknown };
  if (!isWhole(number) || typeof text !== "string") return false;
  return (aside === null || typeof aside === "string") && [id, receipt, sent_by].every(isTextOrLeftOut);
}
