/** Results of the core as plain JSON, alike in both languages (`tests/plain.py`), for the vectors to compare. */

import type { Quantity } from "../webapp/src/core/numbers/quantity";
import type { Ratio } from "../webapp/src/core/numbers/ratio";
import { type Uncertain, u } from "../webapp/src/core/numbers/uncertain";

/** Exact numbers as "n/d", quantities as their exact value and unit; what is null or empty is left out. */
export function plain(result: unknown): unknown {
  if (result === null || typeof result !== "object") return result;
  if (Array.isArray(result)) return result.map(plain);
  if (result instanceof Map) return filled([...result]);
  if (result instanceof Set) return [...result].sort();
  if ("n" in result && "d" in result) return text(result as Ratio);
  if ("last_digit" in result) return `${text((result as Quantity).exact)} as ${(result as Quantity).unit}`;
  return filled(Object.entries(result));
}

/** Value and u instead of every source, for results that hold too many. */
export function brief(result: unknown): unknown {
  if (result === null || typeof result !== "object") return result;
  if (Array.isArray(result)) return result.map(brief);
  if ("sources" in result) return { value: (result as Uncertain).value, u: u(result as Uncertain) };
  return Object.fromEntries(Object.entries(result).map(([key, value]) => [key, brief(value)]));
}

function text({ n, d }: Ratio): string {
  return `${n}/${d}`;
}

function filled(entries: [string, unknown][]): Record<string, unknown> {
  const all = entries.map(([key, value]) => [key, plain(value)] as const);
  return Object.fromEntries(all.filter(([, value]) => !isEmpty(value)));
}

function isEmpty(value: unknown): boolean {
  return value === null || (typeof value === "object" && Object.keys(value).length === 0);
}
