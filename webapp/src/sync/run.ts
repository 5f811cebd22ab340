/** One run of sync, in numbered steps. It may be broken off anywhere, and done again any number of times. */

import { AppError } from "../errors";
import { owesProof, returnLost, rewind } from "../store/entries";
import { readState } from "../store/state";
import { confirmPhotos, sendPhotos } from "./photos";
import type { Post } from "./post";
import { pull } from "./pull";
import { push } from "./push";

/** Rejects with AppError when not everything could be done. A restored home computer is healed on the way. */
export async function run(post: Post, onPhoto: () => Promise<void>): Promise<void> {
  try {
    await steps(post, onPhoto);
  } catch (error) {
    if (!(error instanceof AppError) || error.code !== "rewound") throw error;
    await rewind(post.store);
    await post.live.catchUp();
    await onPhoto();
    await steps(post, onPhoto);
  }
}

async function steps(post: Post, onPhoto: () => Promise<void>): Promise<void> {
  // 0. Whoever has never heard of this journal, or starts anew in it, reads before sending: what comes back need not go.
  if ((await readState(post.store)).cursor.epoch === "") await pull(post);
  // 1. What this phone wrote goes out,
  await push(post);
  // 2. what others wrote comes in, and with it the proof of what was sent,
  await pull(post);
  // what others sent of it without its proof gets that, and counts again,
  if (await owesProof(post.store)) {
    await push(post);
    await pull(post);
  }
  // and what has not come back was lost over there.
  await returnLost(post.store);
  // 3. Photos last: they are large, and an entry without its photo is worth more than the reverse.
  await confirmPhotos(post);
  await sendPhotos(post, onPhoto);
}
