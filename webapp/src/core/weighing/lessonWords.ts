/** What a garage's claims have taught, in one sentence. */

import { LESSON_SENTENCES } from "../../generated/lessonSentences";
import { showPercent } from "../numbers/shown";
import { type Said, teller } from "../words/said";
import type { Lesson } from "./lessons";

const said = teller(LESSON_SENTENCES);

/** How far off claims of the basis run, of the true mass, ± 95 %. */
export function lessonSentence({ basis, parts, bias, bias_u }: Lesson): Said {
  const off = Math.expm1(bias);
  const shown = showPercent(Math.abs(off), 2 * bias_u * (1 + off));
  return said(`${basis}_${off < 0 ? "low" : "high"}`, { off: shown, parts: String(parts) });
}
