/** What the vectors of core/normal run in TypeScript. */

import * as normal from "../../webapp/src/core/normal";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "normal.erf": ({ x }) => normal.erf(x),
  "normal.erfc": ({ x }) => normal.erfc(x),
  "normal.density": ({ z }) => normal.density(z),
  "normal.cumulative": ({ z }) => normal.cumulative(z),
  "normal.inverse": ({ p }) => normal.inverse(p),
};
