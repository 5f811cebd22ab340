/** What the vectors of core/ballast (with programme and ballastRecords) run in TypeScript. */

import { ballast, type Carried, type Wanted } from "../../webapp/src/core/ballast/ballast";
import { ballastChoice } from "../../webapp/src/core/ballast/ballastRecords";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { plain } from "../plain";
import type { Claims } from "../vectors";

const UNKNOWN = {
  front: null,
  left: null,
  height: null,
  wheelbase: null,
  track_front: null,
  track_rear: null,
  roll_front: null,
};
const ANY = { most: null, front: null, left: null, prefer: "mass", more: null };

export const claims: Claims = {
  "ballast.ballast": ({ car, places, wanted }) => {
    return plain(ballast({ ...UNKNOWN, ...car } as Carried, places, { ...ANY, ...wanted } as Wanted));
  },
  "ballast_records.ballast_choice": ({ garage, question }) => plain(ballastChoice(readGarage(garage), question ?? {})),
};
