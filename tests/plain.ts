/** Results of the core as plain JSON, alike in both languages (`tests/plain.py`), for the vectors to compare. */

import type { Quantity } from "../webapp/src/core/numbers/quantity";
import type { Ratio } from "../webapp/src/core/numbers/ratio";
import { type Uncertain, u } from "../webapp/src/core/numbers/uncertain";

/** Exact numbers as "n/d", quantities as their exact value and unit, `u` beside sources. null is left out, not []. */
export function plain(result: unknown): unknown {
  if (result === null || typeof result !== "object") return result;
  if (Array.isArray(result)) return result.map(plain);
  if (result instanceof Map) return told(result);
  if (result instanceof Set) return [...result].sort();
  if ("n" in result && "d" in result) return text(result as Ratio);
  if ("last_digit" in result) return `${text((result as Quantity).exact)} as ${(result as Quantity).unit}`;
  if ("sources" in result && "value" in result) return { ...result, u: u(result as Uncertain) };
  return told(Object.entries(result));
}

function text({ n, d }: Ratio): string {
  return `${n}/${d}`;
}

function told(entries: Iterable<readonly [string, unknown]>): Record<string, unknown> {
  return Object.fromEntries([...entries].flatMap(([key, value]) => (value == null ? [] : [[key, plain(value)]])));
}
