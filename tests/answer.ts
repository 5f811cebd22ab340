/** Answers for `tests/typescript.py`: what the claims of TypeScript give for the questions Python asks. */

import type { Line } from "../webapp/src/journal/layers";
import { isCutShort, isHeic, pictureHead } from "../webapp/src/store/picture_head";
import { plainly } from "./journal/plainly";
import { twoPeople } from "./journal/two_people";
import { type Claims, claims } from "./vectors";

export type Question = { function: string; in: unknown };

// Loaded before the first question: the runner that imports this module closes once it has.
const CLAIMS: Claims = {
  ...(await claims()),
  "journal.fold": (lines) => plainly(lines as Line[]),
  "journal.two_people": (asked) => twoPeople(asked as { seed: number; steps: number }),
  picture_head: (base64) => headOf(Buffer.from(base64 as string, "base64")),
};

/** For each question what its function gives, or the refusal's code and sentences. */
export function answers(questions: readonly Question[]): unknown[] {
  return questions.map(answer);
}

function answer(question: Question): unknown {
  try {
    return CLAIMS[question.function]?.(question.in);
  } catch (refusal) {
    const { code, sentence, do: remedy } = refusal as { code?: string; sentence?: string; do?: string };
    if (code === undefined) throw refusal;
    return { code, sentence, do: remedy };
  }
}

function headOf(bytes: Uint8Array) {
  return { head: pictureHead(bytes), cut: isCutShort(bytes), heic: isHeic(bytes) };
}
