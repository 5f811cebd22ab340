/** What the vectors of core/numbers/normal run in TypeScript. */

import * as normal from "../../webapp/src/core/numbers/normal";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "normal.erfc": ({ x }) => normal.erfc(x),
  "normal.density": ({ z }) => normal.density(z),
  "normal.cumulative": ({ z }) => normal.cumulative(z),
  "normal.inverse": ({ p }) => normal.inverse(p),
};
