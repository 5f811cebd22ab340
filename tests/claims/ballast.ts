/** What the vectors of core/ballast (with programme and ballastRecords) run in TypeScript. */

import { ballast, type Carried, type Wanted } from "../../webapp/src/core/ballast/ballast";
import { ballastChoice } from "../../webapp/src/core/ballast/ballastRecords";
import { Effort, least, type Row } from "../../webapp/src/core/ballast/programme";
import { readGarage } from "../../webapp/src/core/garage/garage";
import { plain, settled } from "../plain";
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
  "programme.least": ({ costs, rows, limits: [low, high], left }) => {
    const effort = new Effort(left);
    const told = (rows as [number[], number, number, boolean?][]).map(
      ([weights, low, high, isWhole]): Row => ({ weights, low, high, isWhole }),
    );
    const found = least(costs, told, { low, high }, effort);
    return { counts: found?.counts ?? null, left: effort["left"], proven: effort.isProven };
  },
  "ballast_records.ballast_choice": ({ garage, question }) =>
    settled(plain(ballastChoice(readGarage(garage), question ?? {}))),
};
