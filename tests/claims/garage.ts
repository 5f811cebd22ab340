/** What the vectors of core/garage run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { plain } from "../plain";
import type { Claims } from "../vectors";

export const claims: Claims = { "garage.read_garage": (given) => plain(readGarage(given)) };
