/** What guesses or quotes of this garage have run off by, and the way to where that is switched. */

import type { Lesson } from "../../core/weighing/lessons";
import { lessonSentence } from "../../core/weighing/lessonWords";
import { to } from "../../route";

export function Learned({ of }: { of: Lesson }) {
  return (
    <p class="quiet">
      {lessonSentence(of).text} <a href={to("units")}>Corrected or as typed</a>
    </p>
  );
}
