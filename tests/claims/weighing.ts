/** What the vectors of core/weighing (with scale and mean) run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { studentBeyond } from "../../webapp/src/core/numbers/student";
import type { Lesson } from "../../webapp/src/core/weighing/lessons";
import { lessonSentence } from "../../webapp/src/core/weighing/lessonWords";
import { needsThird, oddOne } from "../../webapp/src/core/weighing/outlier";
import { masses } from "../../webapp/src/core/weighing/weighing";
import { plain } from "../plain";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "student.student_beyond": ({ t, freedom }) => studentBeyond(t, freedom),
  "outlier.odd_one": ({ looks, division }) => plain(oddOne(looks, division)),
  "outlier.needs_third": ({ readings, division, repeats }) => needsThird(readings, division, repeats),
  "weighing.masses": (given) => {
    const garage = readGarage(given);
    return plain({ ...masses(garage), warnings: garage.warnings });
  },
  "lesson_words.sentence": (given) => plain(lessonSentence(given as Lesson)),
};
