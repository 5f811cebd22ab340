/** What the vectors of core/ledger (with net, running and compare) run in TypeScript. */

import { readGarage } from "../../webapp/src/core/garage/garage";
import { compare } from "../../webapp/src/core/ledger/compare";
import { ledger } from "../../webapp/src/core/ledger/ledger";
import type { Effort, MassTotal, Total } from "../../webapp/src/core/ledger/net";
import { type Uncertain, u } from "../../webapp/src/core/numbers/uncertain";
import { plain } from "../plain";
import type { Claims, Given } from "../vectors";

/** Value and u instead of every source. */
function brief(item: Uncertain): object {
  return { value: item.value, u: u(item) };
}

/** What nothing was put into is left out. */
function massOf({ net, off, on, lines }: MassTotal): object {
  return lines.length > 0 ? { net: brief(net), off: brief(off), on: brief(on), lines } : {};
}

function effortOf(effort: Effort): object {
  return effort.jobs.length > 0 ? effort : {};
}

function totalOf(total: Total): object {
  return { ...massOf(total.mass), ...effortOf(total.effort) };
}

function totals(of: Readonly<Record<string, Total>>): object {
  return Object.fromEntries(Object.entries(of).map(([key, total]) => [key, totalOf(total)]));
}

function ledgerOf(given: Given): unknown {
  const found = ledger(readGarage(given));
  return plain({
    ...found,
    now: totalOf(found.now),
    sources: found.now.mass.net.sources,
    jobs: new Map([...found.jobs].map(([id, net]) => [id, totalOf(net.total)])),
    by_stage: found.by_stage.map(({ stage, states }) => ({ stage, states: totals(states) })),
    by_state: totals(found.by_state),
    by_trim: totals(found.by_trim),
    by_zone: found.by_zone.map(({ zone, mass }) => ({ zone, mass: massOf(mass) })),
    unsprung: massOf(found.unsprung),
    rotating: massOf(found.rotating),
    spent: effortOf(found.spent),
  });
}

function compareOf(given: Given): unknown {
  const { part, instead_of, count, difference, whole, warnings } = compare(
    readGarage(given),
    given.part,
    given.instead_of,
  );
  return plain({ part, instead_of, count, difference, whole, warnings });
}

export const claims: Claims = {
  "ledger.ledger": ledgerOf,
  "ledger.lines": (given) => plain([...ledger(readGarage(given)).jobs.values()].flatMap((net) => net.lines)),
  "compare.compare": compareOf,
};
