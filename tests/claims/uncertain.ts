/** What the vectors of core/numbers/uncertain run in TypeScript. */

import * as uncertain from "../../webapp/src/core/numbers/uncertain";
import { plain } from "../plain";
import type { Claims } from "../vectors";

export const claims: Claims = {
  "uncertain.total": ({ items }) => plain(uncertain.total(items)),
  "uncertain.weighted_sum": ({ items, weights }) => plain(uncertain.weightedSum(items, weights)),
  "uncertain.add": ({ items: [a, b] }) => plain(uncertain.add(a, b)),
  "uncertain.subtract": ({ items: [a, b] }) => plain(uncertain.subtract(a, b)),
  "uncertain.scale": ({ items: [a], factor }) => plain(uncertain.scale(a, factor)),
  "uncertain.multiply": ({ items: [a, b] }) => plain(uncertain.multiply(a, b)),
  "uncertain.divide": ({ items: [a, b] }) => plain(uncertain.divide(a, b)),
  "uncertain.derived": ({ value, items, partials }) => plain(uncertain.derived(value, items, partials)),
  "uncertain.expanded": ({ items: [a], k }) => uncertain.expanded(a, k),
  "uncertain.rectangular": ({ half_width }) => uncertain.rectangular(half_width),
  "uncertain.resolution": ({ division }) => uncertain.resolution(division),
};
