/** What the vectors of core/weighing (with scale and mean) run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import type { Lesson } from "../../webapp/src/core/weighing/lessons";
import { lessonSentence } from "../../webapp/src/core/weighing/lessonWords";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { plain } from "../plain";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "weighing.masses": (given) => {
    const garage = readGarage(given);
    return plain({ ...masses(garage), warnings: garage.warnings });
  },
  "lesson_words.sentence": (given) => plain(lessonSentence(given as Lesson)),
};
