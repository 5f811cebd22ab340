/** What the vectors of core/ledger (with net, running and compare) run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { jobsAsRead } from "../../webapp/src/core/ledger/asRead";
import { compare } from "../../webapp/src/core/ledger/compare";
import { ledger } from "../../webapp/src/core/ledger/ledger";
import { plain } from "../plain";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "ledger.ledger": (given) => plain(ledger(readGarage(given))),
  "compare.compare": (given) => plain(compare(readGarage(given), given.part, given.instead_of)),
  "ledger.as_read": (given) => {
    const garage = readGarage(given);
    return jobsAsRead(garage, ledger(garage), ["j"]);
  },
};
