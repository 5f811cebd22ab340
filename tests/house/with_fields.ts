/** What the phone's half of this tree makes of a field (`tests/house/with_fields.py`), and what a form says of it. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { FIELDS } from "../../webapp/src/generated/fields";
import { recFrom } from "../../webapp/src/journal/board";
import { fold } from "../../webapp/src/journal/fold";
import { emptyState, setAside } from "../../webapp/src/journal/layers";
import { plain } from "../plain";

type Question = { entries: string[]; cars: object[] };

export function answers(questions: readonly Question[]): unknown[] {
  return questions.map(({ entries, cars }) => {
    const state = emptyState();
    fold(
      state,
      entries.map((text, place) => ({ number: place + 1, text, aside: null })),
    );
    return {
      folded: Object.fromEntries([...state.records].map(([id, record]) => [id, recFrom(id, record, false).values])),
      aside: Object.fromEntries(setAside(state).map(({ name, reason }) => [name, reason])),
      car: plain(readGarage({ cars }).car),
      told: FIELDS.car,
    };
  });
}
